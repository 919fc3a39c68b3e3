using System.Collections.Immutable;
using Setout.Drawing.Dimensioning;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Elevations;

/// <summary>The members, spaces, machines and inner dimensions of an elevation, on the paper.</summary>
internal sealed class ElevationBody(ElevationInput input, View view, double figureSize, double leastShrunk)
{
    private const double LeastHandle = 0.9, LeastHole = 0.7;
    private const int HoleCorners = 16;
    private readonly ImmutableArray<TextItem?> _inner = Figures(input, view, figureSize, leastShrunk);

    public IEnumerable<SceneItem> Draw()
    {
        // Names keep off the figures that stand inside; the grain keeps off both.
        ImmutableArray<Box> figures = [.. _inner.OfType<TextItem>().Select(Box.Of)];
        List<Box> taken = [.. figures];
        ImmutableArray<TextItem> Named(ModelRect area, Phrase name)
        {
            ImmutableArray<TextItem> label = Label(view.Of(area), name, taken);
            taken.AddRange(label.Select(Box.Of));
            return label;
        }
        ImmutableArray<(ElevationOpening Opening, ImmutableArray<TextItem> Label)> openings = [.. input.Openings.Select(o => (o, Named(o.Area, o.Label)))];
        ImmutableArray<(ElevationGhost Ghost, ImmutableArray<TextItem> Label)> ghosts = [.. input.Ghosts.Select(g => (g, Named(g.Area, g.Label)))];
        ImmutableArray<Box> clear = [.. figures, .. openings.SelectMany(o => o.Label).Concat(ghosts.SelectMany(g => g.Label)).Select(t => Box.Of(t).Grown(0.8))];
        foreach (ElevationPart back in input.Parts.Where(p => p.Kind == PartKind.Back).OrderBy(p => p.Order)) yield return Part(back, clear);
        // Spaces lie under what fills them and over their parents, so that what is pointed at is what is seen.
        foreach ((ElevationOpening opening, ImmutableArray<TextItem> label) in openings.OrderByDescending(o => view.Of(o.Opening.Area) is var b ? b.Width * b.Height : 0))
            yield return new GroupItem(opening.Key, opening.Title, [Rectangle(view.Of(opening.Area), null, Wash.None), .. label]);
        foreach (ElevationPart part in input.Parts.Where(p => p.Kind != PartKind.Back).OrderBy(p => p.Order)) yield return Part(part, clear);
        foreach ((ElevationGhost ghost, ImmutableArray<TextItem> label) in ghosts)
            yield return new GroupItem(ghost.Key, ghost.Title, [Rectangle(view.Of(ghost.Area), null, Wash.None), Rectangle(view.Of(ghost.Area), Ink.Hidden, Wash.None), .. label]);
        // The pencil goes over everything, or a neighbour painted later would hide half of it.
        foreach (ModelRect area in input.Parts.Where(p => p.IsMarked).Select(p => p.Area).Concat(input.Openings.Where(o => o.IsMarked).Select(o => o.Area)))
            yield return new GroupItem("", "", [Rectangle(view.Of(area), Ink.Pencil, Wash.None)]);
        for (int i = 0; i < input.Inner.Length; i++) yield return Inner(input.Inner[i], _inner[i]);
    }

    private GroupItem Part(ElevationPart part, ImmutableArray<Box> clear)
    {
        Box box = view.Of(part.Area);
        ImmutableArray<SceneItem>.Builder items = ImmutableArray.CreateBuilder<SceneItem>();
        Ink? edge = part.Kind == PartKind.Back ? null : part.IsHidden ? Ink.Hidden : Ink.Part;
        Wash wash = part.IsHidden ? Wash.None : part.Kind is PartKind.Post or PartKind.Rail or PartKind.StickEnd ? Wash.Wood : part.Kind is PartKind.Recess or PartKind.Fitting ? Wash.Paper : Wash.Panel;
        ImmutableArray<Box> taken = [.. part.Taken.Select(view.Of)];
        if (!part.Outline.IsEmpty) items.Add(new ShapeItem([.. part.Outline.Select(p => new Point(view.X(p.X), view.Y(p.Y)))], edge, wash));
        else if (taken.IsEmpty) items.Add(Rectangle(box, edge, wash));
        else items.AddRange(Cut(new Region(box, taken), edge, wash));
        ImmutableArray<Box> handles = [.. part.Handles.Select(Handle)];
        GrainRun run = part.Grain != GrainRun.ByKind ? part.Grain : part.Kind switch
        {
            PartKind.Post or PartKind.Door or PartKind.Back or PartKind.PanelFace => GrainRun.Upright,
            PartKind.Rail or PartKind.DrawerFront => GrainRun.Level,
            _ => GrainRun.None,
        };
        if (run != GrainRun.None && !part.IsHidden)
        {
            double spacing = wash == Wash.Wood ? 2.4 : 3.4;
            items.AddRange(Strokes.Grain(box, run == GrainRun.Upright, part.Key, spacing, [.. clear, .. taken, .. handles.Select(h => h.Grown(0.6))]));
        }
        items.AddRange(part.Holes.Select(h => Strokes.Ring(new(view.X(h.X), view.Y(h.Y)), Math.Max(LeastHole, view.Size(h.Diameter)) / 2, HoleCorners, h.IsHidden ? Ink.Dimension : Ink.Part, h.IsHidden ? Wash.None : Wash.Paper)));
        foreach (Box handle in handles) items.Add(Rectangle(handle, null, Wash.Metal));
        return new(part.Key, part.Title, items.ToImmutable());
    }

    private static IEnumerable<SceneItem> Cut(Region region, Ink? edge, Wash wash) =>
    [
        .. region.Cells.Select(c => Rectangle(c, null, wash)),
        .. edge is { } ink ? region.Edges.Select(e => (SceneItem)new LineItem(e.From, e.To, ink)) : [],
    ];

    private Box Handle(ModelRect area)
    {
        Box box = view.Of(area);
        double more = Math.Max(0, (LeastHandle - Math.Min(box.Width, box.Height)) / 2);
        return box.Width < box.Height
            ? box with { Left = box.Left - more, Right = box.Right + more }
            : box with { Top = box.Top - more, Bottom = box.Bottom + more };
    }

    /// <summary>A name in its space: broken into lines, smaller where it must be, left out (its group still says it) where no size fits.</summary>
    private ImmutableArray<TextItem> Label(Box box, Phrase label, List<Box> taken)
    {
        if (label.IsEmpty) return [];
        Box room = box.Grown(-1);
        foreach (double size in new[] { 0.82 * figureSize, 0.72 * figureSize, 2.47 })
        {
            ImmutableArray<Phrase> lines = TextMeasure.Wrap(label.Italic(), size, room.Width);
            double leading = size * 1.25, height = lines.Length * leading;
            if (height > room.Height || lines.Any(l => TextMeasure.Width(l, size) > room.Width)) continue;
            foreach (double share in new[] { 0.5, 0.3, 0.7, 0.15, 0.85 })
            {
                double first = room.Top + ((room.Height - height) * share) + (leading / 2) + (TextMeasure.Middle * size);
                ImmutableArray<TextItem> texts = [.. lines.Select((l, i) => new TextItem(new(box.Middle.X, first + (i * leading)), l, size, Anchor.Middle, Ink.Soft))];
                if (!texts.Any(t => taken.Any(Box.Of(t).Overlaps))) return texts;
            }
        }
        return [];
    }

    /// <summary>The figures inside, none on another nor past the edges of the model: smaller where it must be, left out (its group still says it) where no size fits.</summary>
    private static ImmutableArray<TextItem?> Figures(ElevationInput input, View view, double size, double leastShrunk)
    {
        var placed = new List<Box>();
        var figures = ImmutableArray.CreateBuilder<TextItem?>(input.Inner.Length);
        double left = input.Parts.Select(p => view.X(p.Area.Left)).DefaultIfEmpty(double.NegativeInfinity).Min(), right = input.Parts.Select(p => view.X(p.Area.Right)).DefaultIfEmpty(double.PositiveInfinity).Max();
        foreach (InnerDimension dimension in input.Inner)
        {
            TextItem? text = new[] { 1, 0.82, 0.65 }.Where(s => s >= leastShrunk).Select(share => Figure(dimension, view, share * size))
                .FirstOrDefault(t => Box.Of(t) is var ink && ink.Left >= left && ink.Right <= right && !placed.Any(ink.Overlaps));
            if (text is not null) placed.Add(Box.Of(text));
            figures.Add(text);
        }
        return figures.MoveToImmutable();
    }

    private static TextItem Figure(InnerDimension inner, View view, double size)
    {
        DimensionSpan span = Elevation.Span(inner.Span, view, inner.IsUpright);
        double middle = (span.From + span.To) / 2, drop = TextMeasure.Middle * size;
        Ink ink = span.IsMarked ? Ink.Pencil : Ink.Dimension;
        Phrase figure = span.IsMarked ? span.Figure.Bold() : span.Figure;
        if (!inner.IsUpright) return new(new(middle, view.Y(inner.At) - (0.3 * size)), figure, size, Anchor.Middle, ink, 0, true);
        bool isLong = TextMeasure.Width(figure, size) + 2.8 <= span.To - span.From;
        double x = view.X(inner.At) - (0.3 * size);
        // Upright along its line where it fits, else level beside it.
        return isLong ? new(new(x, middle), figure, size, Anchor.Middle, ink, 90, true) : new(new(x, middle + drop), figure, size, Anchor.End, ink, 0, true);
    }

    private GroupItem Inner(InnerDimension inner, TextItem? text)
    {
        const double tick = 1.1;
        DimensionSpan span = Elevation.Span(inner.Span, view, inner.IsUpright);
        double at = inner.IsUpright ? view.X(inner.At) : view.Y(inner.At);
        Point a = inner.IsUpright ? new(at, span.From) : new(span.From, at), b = inner.IsUpright ? new(at, span.To) : new(span.To, at);
        LineItem Tick(Point p) => new(new(p.X - tick, p.Y + tick), new(p.X + tick, p.Y - tick), Ink.Part);
        return new(span.Key, span.Title, [new LineItem(a, b, span.IsMarked ? Ink.Pencil : Ink.Dimension), Tick(a), Tick(b), .. text is null ? Array.Empty<SceneItem>() : [text]]);
    }

    private static ShapeItem Rectangle(Box box, Ink? edge, Wash wash) => ShapeItem.Rectangle(box.Left, box.Top, box.Width, box.Height, edge, wash);
}
