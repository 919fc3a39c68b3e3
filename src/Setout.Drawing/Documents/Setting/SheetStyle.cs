using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Setting;

/// <summary>Sizes of bench sheets in millimetres, in one place. Chosen for reading at a bench; common practice, no source.</summary>
internal static class SheetStyle
{
    /// <summary>One typographic point: 1/72 in.</summary>
    public const double Point = 25.4 / 72;

    public const double Small = 9 * Point, Body = 10.5 * Point, Step = 11.5 * Point, Figure = 14 * Point, Large = 24 * Point;
    public const double Foot = 8.5 * Point, Heading = 13 * Point, SectionTitle = 18 * Point, Title = 26 * Point;

    /// <summary>From baseline to baseline, in em.</summary>
    public const double Leading = 1.36;

    /// <summary>Room for the clip of a board at the top, for a hand and for holes at the left.</summary>
    public const double MarginTop = 22, MarginLeft = 20, MarginRight = 15, MarginBottom = 24;

    /// <summary>Least distance of the footer from the paper's lower edge: outside what printers leave white.</summary>
    public const double FootFromEdge = 10;

    public const double CellPad = 1.3, ColumnGap = 4;
    public const double TickBox = 4.6, TickColumn = 8;
    public const double RuleHeavy = 0.5, Rule = 0.3, RuleThin = 0.15;

    /// <summary>Upper edge of a box to tick, so that its middle lies at the middle of the capitals beside it.</summary>
    public static double TickBoxTop(double baseline, double size) => baseline - (TextMeasure.Middle * size) - (TickBox / 2);

    /// <summary>Smallest em of a drawing's text that counts as legible.</summary>
    public const double SmallestInDrawing = 6.5 * Point;

    public static double SizeOf(TextSize size) => size switch
    {
        TextSize.Small => Small,
        TextSize.Figure => Figure,
        TextSize.Large => Large,
        _ => Body,
    };

    public static (double Width, double Height) SizeOf(Paper paper) => paper == Paper.Letter ? (215.9, 279.4) : (210, 297);
}
