using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Dimensioning;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Sections;

/// <summary>One section on the paper: cut parts hatched within the window, their names, the figures round it.</summary>
internal sealed class SectionView
{
    private const double NameSize = 3.1, CaptionSize = 3.2, LineGap = 1.9, Outside = 16, FloorOverhang = 5;
    private readonly SectionInput _input;
    private readonly View _view;
    private readonly DimensionLayout _dimensions;
    private readonly ImmutableArray<(SectionPart Part, Region Region, Box Seen)> _parts;
    private readonly ImmutableArray<(Box Ink, SceneItem[] Items)> _names;

    public SectionView(SectionInput input, View view, double figureSize)
    {
        (_input, _view) = (input, view);
        Window = view.Of(input.Window);
        _dimensions = DimensionPlacer.Place(Window, Chains(), new() { FigureSize = figureSize, Clearance = 2 });
        Caption = TextMeasure.Wrap(Phrase.Of(input.Caption), CaptionSize, Math.Max(_dimensions.Bounds.Width, 34));
        double words = Caption.Select(l => TextMeasure.Width(l, CaptionSize)).DefaultIfEmpty(0).Max(), more = Math.Max(0, (words - _dimensions.Bounds.Width) / 2);
        _parts = [.. _input.Parts.Select(Shown).Where(p => p.Seen.Width > 0 && p.Seen.Height > 0 && !p.Region.IsEmpty)];
        _names = Names(_parts);
        Box bounds = _names.Aggregate(_dimensions.Bounds, (all, name) => all.With(name.Ink));
        if (Floor is { } floor) bounds = bounds.With(new(floor.From.X, floor.From.Y, floor.To.X, floor.To.Y));
        Bounds = new(bounds.Left - more, bounds.Top, bounds.Right + more, bounds.Bottom + LineGap + (Caption.Length * CaptionSize * 1.3));
    }

    /// <summary>The window on the paper.</summary>
    public Box Window { get; }

    /// <summary>Everything drawn.</summary>
    public Box Bounds { get; }

    private ImmutableArray<Phrase> Caption { get; }

    private LineItem? Floor => _input.HasFloor ? new(new(Window.Left - FloorOverhang, _view.Y(Core.Measures.Length.Zero)), new(Window.Right + FloorOverhang, _view.Y(Core.Measures.Length.Zero)), Ink.Outline) : null;

    public IEnumerable<SceneItem> Draw()
    {
        foreach ((SectionPart part, Region region, Box _) in _parts)
        {
            var items = ImmutableArray.CreateBuilder<SceneItem>();
            items.AddRange(region.Cells.Select(c => ShapeItem.Rectangle(c.Left, c.Top, c.Width, c.Height, null, part.IsGhost ? Wash.None : Wash.Panel)));
            // Hatching keeps off the names.
            if (!part.IsGhost && !part.IsBeyond)
                items.AddRange(region.Cells.SelectMany(c => new Region(c, [.. _names.Select(n => n.Ink.Grown(0.5))]).Cells).Select(c => new HatchItem(new(c.Left, c.Top), c.Width, c.Height) { IsFalling = part.IsFalling }));
            Ink ink = part.IsGhost ? Ink.Hidden : part.IsBeyond ? Ink.Soft : Ink.Part;
            items.AddRange(region.Edges.Where(e => !IsBreak(e.From, e.To, part)).Select(e => new LineItem(e.From, e.To, ink)));
            yield return new GroupItem(part.Key, part.Title, items.ToImmutable());
        }
        if (Floor is { } floor) yield return floor;
        foreach ((Box _, SceneItem[] items) in _names) foreach (SceneItem item in items) yield return item;
        foreach (SceneItem item in _dimensions.Items) yield return item;
        double y = Bounds.Bottom - (Caption.Length * CaptionSize * 1.3);
        foreach (Phrase line in Caption)
        {
            y += CaptionSize * 1.3;
            yield return new TextItem(new((Bounds.Left + Bounds.Right) / 2, y - (CaptionSize * 0.3)), line, CaptionSize, Anchor.Middle, Ink.Part);
        }
    }

    private (SectionPart Part, Region Region, Box Seen) Shown(SectionPart part)
    {
        Box whole = _view.Of(part.Area);
        Box seen = new(Math.Max(whole.Left, Window.Left), Math.Max(whole.Top, Window.Top), Math.Min(whole.Right, Window.Right), Math.Min(whole.Bottom, Window.Bottom));
        return (part, seen.Width > 0 && seen.Height > 0 ? new Region(seen, [.. part.Taken.Select(_view.Of)]) : new Region(whole, [whole]), seen);
    }

    /// <summary>Where the window cuts a part off it goes on: there is no line.</summary>
    private bool IsBreak(Point from, Point to, SectionPart part)
    {
        Box whole = _view.Of(part.Area);
        const double near = 1e-6;
        bool On(double a, double b, double edge, double end) => Math.Abs(a - edge) < near && Math.Abs(b - edge) < near && Math.Abs(end - edge) > near;
        return On(from.X, to.X, Window.Left, whole.Left) || On(from.X, to.X, Window.Right, whole.Right) || On(from.Y, to.Y, Window.Top, whole.Top) || On(from.Y, to.Y, Window.Bottom, whole.Bottom);
    }

    /// <summary>Names inside their parts, level or upright; where a part is too small, beside it in the open, at a line.</summary>
    private ImmutableArray<(Box, SceneItem[])> Names(ImmutableArray<(SectionPart Part, Region Region, Box Seen)> parts)
    {
        var placed = new List<(Box Ink, SceneItem[] Items)>();
        foreach ((SectionPart part, Region region, Box _) in parts.Where(p => !p.Part.Label.IsEmpty))
        {
            double wide = TextMeasure.Width(part.Label, NameSize), high = NameSize * 0.95;
            TextItem Level(Point middle) => new(new(middle.X, middle.Y + (TextMeasure.Middle * NameSize)), part.Label, NameSize, Anchor.Middle, Ink.Part);
            TextItem Upright(Point middle) => new(new(middle.X + (TextMeasure.Middle * NameSize), middle.Y), part.Label, NameSize, Anchor.Middle, Ink.Part, 90);
            (Box Ink, SceneItem[] Items)? found = null;
            foreach (Box cell in region.Cells.OrderByDescending(c => c.Width * c.Height))
            {
                foreach (double share in new[] { 0.5, 0.3, 0.7 })
                {
                    Point At(bool isLevel) => isLevel ? new(cell.Left + (cell.Width * share), cell.Middle.Y) : new(cell.Middle.X, cell.Top + (cell.Height * share));
                    foreach (TextItem text in new[] { Level(At(cell.Width >= cell.Height)), Upright(At(cell.Width >= cell.Height)) })
                    {
                        Box ink = Tight(text);
                        if (cell.Grown(-0.4).Holds(ink) && !placed.Any(p => p.Ink.Grown(0.6).Overlaps(ink))) { found = (ink, [text]); break; }
                    }
                    if (found is not null) break;
                }
                if (found is not null) break;
            }
            found ??= Beside(part, region, wide, high, Level, [.. placed.Select(p => p.Ink), .. parts.SelectMany(p => p.Region.Cells)]);
            if (found is { } name) placed.Add(name);
        }
        return [.. placed];
    }

    private (Box, SceneItem[])? Beside(SectionPart part, Region region, double wide, double high, Func<Point, TextItem> text, ImmutableArray<Box> taken)
    {
        // Outside the window too, where no figures stand.
        ImmutableHashSet<Side> figured = [.. _input.Figures.Select(SideOf)];
        double Free(Side side) => figured.Contains(side) ? 0 : Outside;
        Box room = new(Window.Left - Free(Side.Left), Window.Top - Free(Side.Above), Window.Right + Free(Side.Right), Window.Bottom + Free(Side.Below));
        Box cell = region.Cells.MaxBy(c => c.Width * c.Height);
        foreach (double away in new[] { 3.0, 6, 9, 13, 18 })
        {
            foreach ((double x, double y) in new[] { (1.0, -1.0), (1, 1), (-1, -1), (-1, 1), (1, 0), (-1, 0), (0, -1), (0, 1) })
            {
                Point from = new(x > 0 ? cell.Right - 0.4 : x < 0 ? cell.Left + 0.4 : cell.Middle.X, y > 0 ? cell.Bottom - 0.4 : y < 0 ? cell.Top + 0.4 : cell.Middle.Y);
                Point to = new(from.X + (x * away), from.Y + (y * away));
                Point middle = new(to.X + (x * ((wide / 2) + 0.6)), to.Y + (x == 0 ? y * ((high / 2) + 0.4) : 0));
                Box ink = Tight(text(middle));
                if (room.Holds(ink) && !taken.Any(t => t.Grown(0.4).Overlaps(ink))) return (ink, [new LineItem(from, to, Ink.Dimension), text(middle)]);
            }
        }
        return null;
    }

    private static Box Tight(TextItem text)
    {
        Box box = Box.Of(text);
        double spare = NameSize * 0.12;
        return text.Turn == 0 ? box with { Top = box.Top + spare } : box with { Left = box.Left + spare };
    }

    /// <summary>Each figure on the side of the window that it is nearer to; what overlaps goes into a further row.</summary>
    private IEnumerable<DimensionChain> Chains()
    {
        foreach (var group in _input.Figures.GroupBy(SideOf))
        {
            var rows = new List<List<SectionFigure>>();
            foreach (SectionFigure figure in group.OrderBy(f => f.Span.To - f.Span.From).ThenBy(f => f.Span.From))
            {
                List<SectionFigure>? row = rows.FirstOrDefault(r => r.All(o => o.Span.To <= figure.Span.From || figure.Span.To <= o.Span.From));
                if (row is null) rows.Add([figure]);
                else row.Add(figure);
            }
            foreach (List<SectionFigure> row in rows)
                yield return new(group.Key, [.. row.Select(f =>
                {
                    DimensionSpan span = Elevation.Span(f.Span, _view, f.IsUpright);
                    double foot = f.IsUpright ? _view.X(f.At) : _view.Y(f.At);
                    return span with { FromFoot = foot, ToFoot = foot };
                })]);
        }
    }

    private Side SideOf(SectionFigure figure)
    {
        ModelRect w = _input.Window;
        if (figure.IsUpright) return figure.At - w.Left <= w.Right - figure.At ? Side.Left : Side.Right;
        return figure.At - w.Bottom <= w.Top - figure.At ? Side.Below : Side.Above;
    }
}
