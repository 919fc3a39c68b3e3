using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>What lies inside the outline of a sheet. Places every mark and figure first, then draws the wood round them.</summary>
internal sealed class SheetBody
{
    /// <summary>No more figures than this are said under a drawing: nobody reads on.</summary>
    private const int MostSaid = 60;

    private readonly SheetGround _sheet;
    private readonly SheetMarks _marks;
    private readonly InnerFigures _figures;
    private readonly InnerLetters _letters;
    private readonly KeptNames _kept;
    private readonly OriginMarks _origins;

    public SheetBody(SheetInput input, BreakdownPaper paper, SheetView view, Box outline)
    {
        _sheet = new(input, paper, view, outline);
        _marks = new(_sheet);
        _figures = new(_sheet);
        _letters = new(_sheet);
        _kept = new(_sheet);
        _origins = new(_sheet);
        _origins.Place();
        _letters.Place();
        _marks.PlaceInside();
        _figures.Place();
        _marks.PlaceOutside();
        _kept.Place();
    }

    /// <summary>The lowest ink, labels under the _sheet included.</summary>
    public double Lowest => _marks.Lowest;

    /// <summary>How many running figures, words and marks found no room, as they are said under the drawing.</summary>
    public int LeftOut => _letters.Dropped.Count + _figures.Dropped.Count + _kept.Dropped.Count + _marks.Unmarked.Count;

    /// <summary>How many marks stand outside their part, and how many figures have no room for their arrow.</summary>
    public int Cramped => _marks.Outside + _figures.WithoutArrow;

    /// <summary>Running figures and words that found no room in the drawing, for the lines under it.</summary>
    public IEnumerable<Phrase> LeftOver(double width, double size)
    {
        // A figure is named by the part that its cut frees: the one that ends at its line.
        IEnumerable<Phrase> figures = _figures.Dropped.Select(cut => _sheet.OwnerOf(cut) is >= 0 and int owner
            ? Phrase.Of($"{_sheet.Input.Parts[owner].Mark}\u00A0to\u00A0").Add(cut.Figure)
            : cut.Figure);
        // Equal strips have equal figures: each is said once.
        ImmutableArray<Phrase> said = [.. _letters.Dropped.Concat(figures).Concat(_kept.Dropped).DistinctBy(p => p.PlainText)];
        if (said.Length > MostSaid) said = [.. said[..MostSaid], Phrase.Of($"and {said.Length - MostSaid} more: plan.json has every cut")];
        Phrase all = said.Concat(_marks.Unmarked).Aggregate(Phrase.Empty, (line, next) => line.IsEmpty ? next : line.Add("\u00A0· ").Add(next));
        return all.IsEmpty ? [] : TextMeasure.Wrap(Phrase.Of("not drawn for want of room: ").Add(all), size, width);
    }

    public IEnumerable<SceneItem> Draw()
    {
        yield return ShapeItem.Rectangle(_sheet.Outline.Left, _sheet.Outline.Top, _sheet.Outline.Width, _sheet.Outline.Height, null, Wash.Panel);
        foreach (Box waste in _sheet.Waste) yield return new GroupItem("", "waste", [new HatchItem(new(waste.Left, waste.Top), waste.Width, waste.Height)]);
        for (int i = 0; i < _sheet.Kept.Length; i++)
            yield return new GroupItem(_sheet.Input.Kept[i].Key, _sheet.Input.Kept[i].Words.PlainText, [Clear(_sheet.Kept[i]), .. Grain(_sheet.Kept[i], _sheet.Input.Kept[i].Key + i), .. _kept.Of(i)]);
        for (int i = 0; i < _sheet.Parts.Length; i++)
        {
            Box box = _sheet.Parts[i];
            yield return new GroupItem(_sheet.Input.Parts[i].Key, _sheet.Input.Parts[i].Title,
                [ShapeItem.Rectangle(box.Left, box.Top, box.Width, box.Height, _sheet.Input.Parts[i].IsHeld ? Ink.Dimension : Ink.Part, Wash.None), Clear(box), .. Grain(box, _sheet.Input.Parts[i].Key), .. _marks.Of(i)]);
        }
        yield return new GroupItem("", "", [.. _sheet.Input.InnerCuts.Select(Line), .. _figures.Placed, .. _letters.Placed]);
        yield return new GroupItem("", "", [ShapeItem.Rectangle(_sheet.Outline.Left, _sheet.Outline.Top, _sheet.Outline.Width, _sheet.Outline.Height, Ink.Outline, Wash.None)]);
    }

    /// <summary>Where the small figures run from: over every line of the drawing.</summary>
    public IEnumerable<SceneItem> DrawOrigins() => _origins.Placed;

    /// <summary>What the key must tell of this sheet.</summary>
    public static IEnumerable<(KeySign, string)> Key(SheetInput input)
    {
        if (input.PrimaryCuts.Any(c => !c.IsWaiting) || input.InnerCuts.Any(c => !c.IsWaiting)) yield return (KeySign.Cut, "cut");
        if (input.PrimaryCuts.Any(c => c.IsWaiting) || input.InnerCuts.Any(c => c.IsWaiting)) yield return (KeySign.Waiting, "waits for a reading");
        if (input.InnerCuts.Any(c => !c.Figure.IsEmpty))
        {
            yield return (KeySign.Origin, "small figures run from this edge");
            yield return (KeySign.Arrow, "to this cut");
        }
        if (!input.Waste.IsEmpty) yield return (KeySign.Hatch, "waste");
    }

    private SceneItem Line(InnerCut cut) => cut.Axis == SheetAxis.Across
        ? new LineItem(new(_sheet.View.X(cut.At), _sheet.View.Y(cut.From)), new(_sheet.View.X(cut.At), _sheet.View.Y(cut.To)), InkOf(cut))
        : new LineItem(new(_sheet.View.X(cut.From), _sheet.View.Y(cut.At)), new(_sheet.View.X(cut.To), _sheet.View.Y(cut.At)), InkOf(cut));

    private static Ink InkOf(InnerCut cut) => cut.IsWaiting ? Ink.Hidden : Ink.Pencil;

    /// <summary>Nothing to see, but the whole face can be pointed at.</summary>
    private static ShapeItem Clear(Box box) => ShapeItem.Rectangle(box.Left, box.Top, box.Width, box.Height, null, Wash.None);

    private ImmutableArray<SceneItem> Grain(Box box, string seed) =>
        _sheet.Input.Grain is { } run ? Strokes.Grain(box, run == SheetAxis.Across, seed, 5.5, [.. _sheet.Book.TakenNear(box).Select(t => t.Grown(0.9))]) : [];
}
