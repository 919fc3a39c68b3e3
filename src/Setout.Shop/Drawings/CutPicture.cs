using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Drawing.Scenes;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Run = Setout.Cutting.Runs.Run;

namespace Setout.Shop.Drawings;

/// <summary>One cut as it lies before one: the wood, what stands at which of its sides, the line of the blade, what comes off and what remains.</summary>
public static class CutPicture
{
    private const double Margin = 9, Letters = 4.2, Small = 3.4, Gauge = 1.6;

    /// <summary>Draws a cut of a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="run">The run it belongs to.</param>
    /// <param name="cut">The cut.</param>
    /// <param name="width">Of the paper, in millimetres.</param>
    /// <param name="most">The greatest height of the paper, in millimetres.</param>
    public static Scene Of(Plan plan, Run run, RunCut cut, double width, double most)
    {
        RunBlank blank = plan.Runs.Blanks[cut.Blank];
        LengthFormat bare = LengthFormat.For(plan.Set.Piece.Shown).Bare;
        double along = blank.Along.ApproximateMillimetres, across = blank.Across.ApproximateMillimetres;
        double scale = Math.Min((width - (2 * Margin)) / along, (most - (2 * Margin)) / across);
        // A thin strip is drawn wide enough to hold its words.
        double w = Math.Max(along * scale, 14), h = Math.Max(across * scale, 7), x = (width - w) / 2, y = Margin;
        var names = BlankNames.Of(plan);
        var items = ImmutableArray.CreateBuilder<SceneItem>();
        items.Add(ShapeItem.Rectangle(x, y, w, h, Ink.Outline, Wash.Panel));
        bool isRip = cut.Axis == GrainAxis.Across;
        double extent = isRip ? across : along, size = isRip ? h : w, at = Math.Clamp(cut.Figure.ApproximateMillimetres / extent, 0, 1) * size;
        bool isNear = cut.From is BlankSide.NearEdge or BlankSide.NearEnd;
        double line = isNear ? at : size - at;
        (double from, double to) off = isNear ? (0, line) : (line, size), rest = isNear ? (line, size) : (0, line);
        Piece(items, plan, names, cut.Off, off, isRip, x, y, w, h);
        Piece(items, plan, names, cut.Rest, rest, isRip, x, y, w, h);
        items.Add(isRip ? new LineItem(new(x - 4, y + line), new(x + w + 4, y + line), Ink.Pencil) : new LineItem(new(x + line, y - 4), new(x + line, y + h + 4), Ink.Pencil));
        Side(items, cut.From, x, y, w, h, run.Way != SawWay.Guide);
        if (cut.Against is { } against) Side(items, against, x, y, w, h, isFence: true);
        Phrase figure = Phrase.Of(bare.Format(cut.Figure));
        items.Add(isRip ? new TextItem(new(x + w + 4.5, y + line + 1.4), figure, Small, Anchor.Start, Ink.Pencil) : new TextItem(new(x + line, y - 5), figure, Small, Anchor.Middle, Ink.Pencil));
        string held = run.Way switch { SawWay.Fence => "the fence", SawWay.Guide => "measured from here", _ => "the stop" };
        string words = $"{names.Spoken(cut.Blank)}, {bare.Text(blank.Along)} by {bare.Text(blank.Across)}; the figure {bare.Text(cut.Figure)} is measured from its {Named(cut.From)}: {held}.";
        return new(width, y + h + Margin, "The cut", words, items.ToImmutable());
    }

    // What one side of the blade is: named where it has a name, hatched where it is waste.
    private static void Piece(ImmutableArray<SceneItem>.Builder items, Plan plan, BlankNames names, int? id, (double From, double To) span, bool isRip, double x, double y, double w, double h)
    {
        double size = span.To - span.From;
        if (size <= 0.2) return;
        (double left, double top, double wide, double high) = isRip ? (x, y + span.From, w, size) : (x + span.From, y, size, h);
        bool isWaste = id is null || plan.Runs.Blanks[id.Value].Use == BlankUse.Waste;
        if (isWaste)
        {
            items.Add(new HatchItem(new(left, top), wide, high));
            return;
        }
        double letters = Math.Min(Letters, high * 0.8);
        if (letters >= 2 && wide > 6) items.Add(new TextItem(new(left + (wide / 2), top + (high / 2) + (letters * 0.35)), Phrase.Of(names[id!.Value]).Bold(), letters, Anchor.Middle, Ink.Part, HasGround: true));
    }

    // A fence or a stop is solid; a side that is only measured from is an open strip.
    private static void Side(ImmutableArray<SceneItem>.Builder items, BlankSide side, double x, double y, double w, double h, bool isFence)
    {
        Wash wash = isFence ? Wash.Metal : Wash.None;
        items.Add(side switch
        {
            BlankSide.NearEdge => ShapeItem.Rectangle(x - 2, y - Gauge - 0.4, w + 4, Gauge, Ink.Part, wash),
            BlankSide.FarEdge => ShapeItem.Rectangle(x - 2, y + h + 0.4, w + 4, Gauge, Ink.Part, wash),
            BlankSide.NearEnd => ShapeItem.Rectangle(x - Gauge - 0.4, y - 1, Gauge, h + 2, Ink.Part, wash),
            _ => ShapeItem.Rectangle(x + w + 0.4, y - 1, Gauge, h + 2, Ink.Part, wash),
        });
    }

    private static string Named(BlankSide side) => side switch { BlankSide.NearEdge => "edge at 0", BlankSide.FarEdge => "edge away from 0", BlankSide.NearEnd => "end at 0", _ => "end away from 0" };
}
