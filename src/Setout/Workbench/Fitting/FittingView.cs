using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Fits;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Workbench.Noting;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Fitting;

/// <summary>The chance of a bank, or of the piece.</summary>
/// <param name="Name">Which.</param>
/// <param name="Gaps">How many gaps, in words.</param>
/// <param name="Now">As it stands.</param>
/// <param name="Then">Once what is to be measured first has been.</param>
public sealed record ChanceLine(Phrase Name, string Gaps, string Now, string Then);

/// <summary>Something to measure first.</summary>
/// <param name="Name">What.</param>
/// <param name="Href">Its working.</param>
/// <param name="Key">What it is recorded as.</param>
/// <param name="With">The instrument, in words.</param>
/// <param name="Brings">What it brings, in words.</param>
public sealed record MeasureLine(Phrase Name, string Href, string Key, string With, string Brings)
{
    /// <summary>To type it right there; null where it cannot be read.</summary>
    public ReadForm? Form { get; init; }
}

/// <summary>A gap among those alike.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Href">Its working.</param>
public sealed record GapLink(string Key, string Href);

/// <summary>A row of the drawing in words.</summary>
/// <param name="Name">The gaps.</param>
/// <param name="Chances">The chance now and then.</param>
/// <param name="Words">Its figures.</param>
/// <param name="Cause">What moves it most; empty where nothing does.</param>
/// <param name="Source">Where the window comes from.</param>
/// <param name="IsOut">Whether it stands outside its window: in red pencil, and the words say so.</param>
/// <param name="Links">Each gap with its working.</param>
public sealed record GapLine(string Name, string Chances, Phrase Words, Phrase Cause, Phrase Source, bool IsOut, ImmutableArray<GapLink> Links);

/// <summary>The stage of fitting: what will fit, before it is cut.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="Notes">What stops the plan.</param>
/// <param name="Whole">The whole piece; null when there is no gap.</param>
/// <param name="Banks">Each bank.</param>
/// <param name="Measure">What to measure first, the most useful first.</param>
/// <param name="Allowances">What is kept and what would be best, a line each.</param>
/// <param name="Desk">Drawings for a desk.</param>
/// <param name="Phone">The same for a phone.</param>
/// <param name="Gaps">The drawing as text.</param>
public sealed record FittingView(
    PieceHead Head, ImmutableArray<Note> Notes, ChanceLine? Whole, ImmutableArray<ChanceLine> Banks, ImmutableArray<MeasureLine> Measure,
    ImmutableArray<Phrase> Allowances, ImmutableArray<string> Desk, ImmutableArray<string> Phone, ImmutableArray<GapLine> Gaps)
{
    /// <summary>What the last change moved.</summary>
    public MovedView? Moved { get; init; }

    // As high as it takes: a page on a screen has no foot.
    private static readonly GapPaper s_wide = new(180, 4000), s_narrow = new(92, 4000);

    /// <summary>Makes the page.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="report">What will fit; null for a piece that is stopped.</param>
    internal static FittingView Of(OpenPiece piece, FitReport? report)
    {
        SetPiece set = piece.Set;
        var head = PieceHead.Of(piece, "fit");
        if (report is null) return new(head, Note.Of(set.Findings.Where(f => f.Severity == Severity.Stop), set, piece.Name, piece.File.FileName), null, [], [], [], [], [], []);
        if (report.Gaps.Length == 0) return new(head, [], null, [], [], [], [], [], []);
        ImmutableArray<AlikeGaps> alike = AlikeGaps.Of(report);
        ImmutableArray<string> Drawn(GapPaper paper) => [.. GapPictures.Of(set, alike, paper).Select(s => SvgWriter.Write(s, SvgOptions.Inline))];
        return new(head, [], Line(Phrase.Of("the whole piece"), report.Whole), [.. report.Groups.Select(g => Line(Figures.Phrase(FitLines.OpeningName(set, g.Key)), g))],
            [.. report.Measure.Select((m, i) => Line(piece, m) with { Form = ReadForm.Of(piece, [m.Key], Links.Stage(piece.Name, "fit"), $"measure-{i}", isShort: true, m.Instrument) })], [.. FitLines.Allowances(set, report).Select(Figures.Phrase)], Drawn(s_wide), Drawn(s_narrow), [.. alike.Select(a => Line(piece, a))])
        {
            Moved = MovedView.Of(piece),
        };
    }

    private static ChanceLine Line(Phrase name, GroupFit group) =>
        new(name, group.Gaps == 1 ? "1 gap" : $"{group.Gaps} gaps", Held(FitLines.Percent(group.Chance)), Held(FitLines.Percent(group.ChanceMeasured)));

    private static MeasureLine Line(OpenPiece piece, MeasureFirst reading)
    {
        string waits = reading.Kind == MeasureKind.Awaited ? " Parts wait for it." : "";
        return new(Figures.Phrase(reading.Name), Links.Size(piece.Name, reading.Key.Text), reading.Key.Text, $"with a {reading.Instrument}",
            Held($"{FitLines.Brings(reading)}; the whole piece then {FitLines.Percent(reading.ChanceThen)}.{waits}"));
    }

    /// <summary>The sign of a percentage goes to no line of its own.</summary>
    private static string Held(string words) => words.Replace(" %", "\u00A0%", StringComparison.Ordinal);

    private static GapLine Line(OpenPiece piece, AlikeGaps alike)
    {
        GapFit fit = alike.First;
        return new(alike.Name, Held(GapPictures.Chances(fit.Chance, fit.ChanceMeasured)), Figures.Phrase(GapPictures.Words(piece.Set, fit)),
            fit.Largest.FirstOrDefault() is { Cause: { } cause } ? Figures.Phrase(cause.Words) : Phrase.Empty, Figures.Phrase(fit.Gap.Source), GapPictures.OutBy(fit) is not null,
            [.. alike.Gaps.Select(g => new GapLink(g.Gap.Key.Text, Links.Size(piece.Name, g.Gap.Key.Text)))]);
    }
}
