using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Dimensioning;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Elevations;

/// <summary>Draws a piece from one side, at the largest round scale that fits the paper with its dimensions.</summary>
public static class Elevation
{
    private const double Margin = 2, FloorOverhang = 5, NoteSize = 2.9;

    /// <summary>Draws.</summary>
    /// <param name="input">What is shown; at least one part, opening or ghost.</param>
    /// <param name="paper">The room.</param>
    /// <exception cref="ArgumentException">There is nothing to draw.</exception>
    public static ElevationDrawing Draw(ElevationInput input, PaperBox paper)
    {
        ImmutableArray<ModelRect> areas = [.. input.Parts.Select(p => p.Area), .. input.Openings.Select(o => o.Area), .. input.Ghosts.Select(g => g.Area)];
        if (areas.IsEmpty) throw new ArgumentException("There is nothing to draw.", nameof(input));
        Length left = areas.Min(a => a.Left), right = areas.Max(a => a.Right), top = areas.Max(a => a.Top), bottom = areas.Min(a => a.Bottom);
        if (input.HasFloor) bottom = Length.Min(bottom, Length.Zero);
        var style = new DimensionStyle { FigureSize = paper.FigureSize };
        Box Extent(View view) => new(view.X(left), view.Y(top), view.X(right), view.Y(bottom));
        DimensionLayout Around(View view) => DimensionPlacer.Place(Extent(view), input.Chains.Select(c => Chain(c, view, input)), style);
        // Each scale is asked for up to three times, and placing the figures is most of the work.
        var wholes = new Dictionary<int, Box>();
        Box Whole(int scale)
        {
            if (wholes.TryGetValue(scale, out Box known)) return known;
            var view = new View(scale, 0, 0);
            Box all = Around(view).Bounds;
            if (input.HasFloor) all = all.With(new(view.X(left) - FloorOverhang, view.Y(Length.Zero), view.X(right) + FloorOverhang, view.Y(Length.Zero)));
            return wholes[scale] = all with { Bottom = all.Bottom + (NoteSize * 1.8) };
        }
        bool Fits(int scale)
        {
            if ((right - left).ApproximateMillimetres / scale > paper.Width || (top - bottom).ApproximateMillimetres / scale > paper.Height) return false;
            Box whole = Whole(scale);
            return whole.Width <= paper.Width - (2 * Margin) && whole.Height <= paper.Height - (2 * Margin);
        }
        // Figures stay as large as they are. Where they leave the model no room worth having, the drawing that is the largest once it is shrunk to the paper.
        double Shown(int scale)
        {
            Box whole = Whole(scale);
            return Math.Min(1, Math.Min((paper.Width - (2 * Margin)) / whole.Width, (paper.Height - (2 * Margin)) / whole.Height)) / scale;
        }
        int chosen = Scales.Largest(s => s >= paper.Scale && Fits(s)), best = Scales.Denominators.Where(s => s >= paper.Scale && Shown(s) * s >= paper.LeastShrunk).DefaultIfEmpty(chosen).MaxBy(Shown);
        if (Shown(best) > 2 * Shown(chosen)) chosen = best;
        Box atNought = Whole(chosen);
        double width = Math.Max(paper.Width, atNought.Width + (2 * Margin)), height = atNought.Height + (2 * Margin);
        var final = new View(chosen, ((width - atNought.Width) / 2) - atNought.Left, Margin - atNought.Top);
        DimensionLayout dimensions = Around(final);
        ImmutableArray<SceneItem>.Builder items = ImmutableArray.CreateBuilder<SceneItem>();
        items.AddRange(new ElevationBody(input, final, paper.FigureSize, paper.LeastShrunk).Draw());
        if (input.HasFloor)
        {
            double floor = final.Y(Length.Zero);
            items.Add(new GroupItem("", "", [new LineItem(new(final.X(left) - FloorOverhang, floor), new(final.X(right) + FloorOverhang, floor), Ink.Outline)]));
        }
        items.AddRange(dimensions.Items);
        items.Add(new TextItem(new(width - Margin, height - Margin - (0.25 * NoteSize)), Phrase.Of(input.Caption.Length > 0 ? $"{input.Caption}, scale 1:{chosen}" : $"scale 1:{chosen}"), NoteSize, Anchor.End, Ink.Soft));
        return new(new(width, height, input.Title, input.Description, items.ToImmutable()), chosen, new(final.X(Length.Zero), final.Y(Length.Zero)));
    }

    private static DimensionChain Chain(ElevationChain chain, View view, ElevationInput input)
    {
        bool isUpright = chain.Side is Side.Left or Side.Right;
        return new(chain.Side, [.. chain.Spans.Select(s =>
        {
            (double? from, double? to) = (Foot(s.From, chain.Side, view, input), Foot(s.To, chain.Side, view, input));
            DimensionSpan span = Span(s, view, isUpright);
            return isUpright ? span with { FromFoot = to, ToFoot = from } : span with { FromFoot = from, ToFoot = to };
        })]);
    }

    /// <summary>The outermost member that has the station in its extent: there the extension line begins. Under the piece it begins at the floor.</summary>
    private static double? Foot(Length station, Side side, View view, ElevationInput input)
    {
        bool isUpright = side is Side.Left or Side.Right;
        ImmutableArray<ModelRect> met =
        [
            .. input.Parts.Select(p => p.Area)
                .Where(a => isUpright ? a.Bottom <= station && station <= a.Top : a.Left <= station && station <= a.Right),
        ];
        if (met.IsEmpty || (side == Side.Below && input.HasFloor)) return null;
        return side switch
        {
            Side.Above => view.Y(met.Max(a => a.Top)),
            Side.Below => view.Y(met.Min(a => a.Bottom)),
            Side.Left => view.X(met.Min(a => a.Left)),
            _ => view.X(met.Max(a => a.Right)),
        };
    }

    /// <summary>Upright positions turn round on the paper: the higher end comes first.</summary>
    internal static DimensionSpan Span(ElevationSpan s, View view, bool isUpright) => isUpright
        ? new(view.Y(s.To), view.Y(s.From), s.Figure, s.IsMarked, s.Key, s.Title)
        : new(view.X(s.From), view.X(s.To), s.Figure, s.IsMarked, s.Key, s.Title);
}

/// <summary>Takes model lengths to the paper.</summary>
/// <param name="Scale">1 to this.</param>
/// <param name="Dx">Paper x of model x = 0.</param>
/// <param name="Dy">Paper y of the floor.</param>
internal readonly record struct View(int Scale, double Dx, double Dy)
{
    public double X(Length x) => Dx + (x.ApproximateMillimetres / Scale);

    public double Y(Length y) => Dy - (y.ApproximateMillimetres / Scale);

    public double Size(Length length) => length.ApproximateMillimetres / Scale;

    public Box Of(ModelRect area) => new(X(area.Left), Y(area.Top), X(area.Right), Y(area.Bottom));
}
