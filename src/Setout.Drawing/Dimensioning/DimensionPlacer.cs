using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Dimensioning;

/// <summary>
/// Places chains of dimensions round an outline. A figure stands on the middle of its line with paper under it; where its span is too short it
/// moves to the next row outwards, at a leader. Figures of one row keep clear of each other, rows and chains are stacked, and the upright
/// chains step further out when a figure of theirs would reach into a corner that a level chain uses: so no two figures ever touch.
/// </summary>
public static class DimensionPlacer
{
    private const double PadAlong = 1.2;

    /// <summary>Places the chains.</summary>
    /// <param name="outline">What the figures keep clear of.</param>
    /// <param name="chains">Those of one side nearest first.</param>
    /// <param name="style">Sizes.</param>
    /// <exception cref="ArgumentException">Spans of a chain overlap, or one runs backwards.</exception>
    public static DimensionLayout Place(Box outline, IEnumerable<DimensionChain> chains, DimensionStyle style)
    {
        var lines = new List<SceneItem>();
        var figures = new List<PlacedFigure>();
        Box bounds = outline;
        ImmutableArray<DimensionChain> all = [.. chains];
        foreach (Side side in new[] { Side.Above, Side.Below })
        {
            double offset = style.Clearance;
            foreach (DimensionChain chain in all.Where(c => c.Side == side))
                Add(new ChainRows(chain, style, outline), ref offset);
        }
        Box level = bounds;
        foreach (Side side in new[] { Side.Left, Side.Right })
        {
            ImmutableArray<ChainRows> rows = [.. all.Where(c => c.Side == side).Select(c => new ChainRows(c, style, outline))];
            double offset = style.Clearance;
            if (rows.Any(r => r.Low < outline.Top || r.High > outline.Bottom))
                offset += side == Side.Left ? outline.Left - level.Left : level.Right - outline.Right;
            foreach (ChainRows row in rows) Add(row, ref offset);
        }
        IEnumerable<SceneItem> groups = figures.Select(f => (SceneItem)new GroupItem(f.Span.Key, f.Span.Title, [f.Text]));
        return new([new GroupItem("", "", [.. lines]), .. groups], [.. figures], bounds);

        void Add(ChainRows rows, ref double offset)
        {
            (ImmutableArray<SceneItem> drawn, ImmutableArray<PlacedFigure> placed) = rows.Draw(offset);
            lines.AddRange(drawn);
            figures.AddRange(placed);
            foreach (PlacedFigure figure in placed) bounds = bounds.With(figure.Ink);
            bounds = bounds.With(rows.Reach(offset));
            offset += rows.Depth;
        }
    }

    /// <summary>One chain with its figures dealt to the row on the line and the row beside it, before its distance from the outline is known.</summary>
    private sealed class ChainRows
    {
        private readonly DimensionChain _chain;
        private readonly DimensionStyle _style;
        private readonly Box _outline;
        private readonly ImmutableArray<(DimensionSpan Span, Phrase Figure, double Middle, bool IsAside)> _figures;

        public ChainRows(DimensionChain chain, DimensionStyle style, Box outline)
        {
            (_style, _outline) = (style, outline);
            _chain = chain with { Spans = [.. chain.Spans.OrderBy(s => s.From)] };
            for (int i = 0; i < _chain.Spans.Length; i++)
            {
                if (_chain.Spans[i].To < _chain.Spans[i].From || (i > 0 && _chain.Spans[i].From < _chain.Spans[i - 1].To - 1e-9))
                    throw new ArgumentException("Spans of a chain run forwards and never overlap.", nameof(chain));
            }
            _figures = Deal();
            Low = _figures.Select(f => f.Middle - (WidthOf(f.Figure) / 2)).DefaultIfEmpty(double.MaxValue).Min();
            High = _figures.Select(f => f.Middle + (WidthOf(f.Figure) / 2)).DefaultIfEmpty(double.MinValue).Max();
        }

        /// <summary>Least reach of the figures along the chain.</summary>
        public double Low { get; }

        /// <summary>Greatest reach of the figures along the chain.</summary>
        public double High { get; }

        /// <summary>How much room the chain takes outwards.</summary>
        public double Depth => (_figures.Any(f => f.IsAside) ? 2 : 1) * (RowHeight + _style.RowGap);

        private bool IsLevel => _chain.Side is Side.Above or Side.Below;

        private double RowHeight => (TextMeasure.Ascent + TextMeasure.Descent) * _style.FigureSize;

        private double WidthOf(Phrase figure) => TextMeasure.Width(figure, _style.FigureSize);

        private ImmutableArray<(DimensionSpan, Phrase, double, bool)> Deal()
        {
            ImmutableArray<DimensionSpan> named = [.. _chain.Spans.Where(s => !s.Figure.IsEmpty)];
            Phrase Shown(DimensionSpan s) => s.IsMarked ? s.Figure.Bold() : s.Figure;
            bool Fits(DimensionSpan s) => WidthOf(Shown(s)) + (2 * PadAlong) <= s.To - s.From;
            ImmutableArray<DimensionSpan> aside = [.. named.Where(s => !Fits(s))];
            double[] wanted = [.. aside.Select(s => (s.From + s.To) / 2)];
            double[] sizes = [.. aside.Select(s => WidthOf(Shown(s)))];
            (double low, double high) = IsLevel ? (_outline.Left, _outline.Right) : (_outline.Top, _outline.Bottom);
            // A little past the ends is better than a slanted leader at a thin end part.
            double past = 1.5 * _style.FigureSize;
            double[] middles = Spread.Along(wanted, sizes, PadAlong * 1.2, low - past, high + past);
            int next = 0;
            return [.. named.Select(s => Fits(s) ? (s, Shown(s), (s.From + s.To) / 2, false) : (s, Shown(s), middles[next++], true))];
        }

        /// <summary>The strip that the chain's lines and ticks need.</summary>
        public Box Reach(double offset)
        {
            double end = offset + Depth - _style.RowGap;
            return _chain.Side switch
            {
                Side.Above => new(_outline.Left - _style.Tick, _outline.Top - end, _outline.Right + _style.Tick, _outline.Top),
                Side.Below => new(_outline.Left - _style.Tick, _outline.Bottom, _outline.Right + _style.Tick, _outline.Bottom + end),
                Side.Left => new(_outline.Left - end, _outline.Top - _style.Tick, _outline.Left, _outline.Bottom + _style.Tick),
                _ => new(_outline.Right, _outline.Top - _style.Tick, _outline.Right + end, _outline.Bottom + _style.Tick),
            };
        }

        public (ImmutableArray<SceneItem> Lines, ImmutableArray<PlacedFigure> Figures) Draw(double offset)
        {
            double line = offset + (RowHeight / 2), row = line + RowHeight + (_style.RowGap / 2), tick = _style.Tick;
            ImmutableArray<SceneItem>.Builder lines = ImmutableArray.CreateBuilder<SceneItem>();
            var stations = new SortedSet<double>(_chain.Spans.SelectMany(s => new[] { s.From, s.To }));
            foreach (double at in stations) lines.Add(new LineItem(Place(at, 0.8 - FootOf(at)), Place(at, line + tick), Ink.Dimension));
            foreach (DimensionSpan span in _chain.Spans.Where(s => !s.Figure.IsEmpty).OrderBy(s => s.IsMarked))
                lines.Add(new LineItem(Place(span.From, line), Place(span.To, line), span.IsMarked ? Ink.Pencil : Ink.Dimension));
            foreach (double at in stations)
            {
                Point p = Place(at, line);
                lines.Add(new LineItem(new(p.X - tick, p.Y + tick), new(p.X + tick, p.Y - tick), Ink.Part));
            }
            ImmutableArray<PlacedFigure>.Builder figures = ImmutableArray.CreateBuilder<PlacedFigure>();
            foreach ((DimensionSpan span, Phrase figure, double middle, bool isAside) in _figures)
            {
                double size = _style.FigureSize, reach = isAside ? row : line;
                if (isAside)
                {
                    // Straight out of its own span, past the figures on the line, then over to its figure: leaders keep the order and never cross.
                    double from = (span.From + span.To) / 2, elbow = line + (RowHeight / 2);
                    Ink ink = span.IsMarked ? Ink.Pencil : Ink.Dimension;
                    lines.Add(new LineItem(Place(from, line), Place(from, elbow), ink));
                    lines.Add(new LineItem(Place(from, elbow), Place(middle, row - (TextMeasure.Middle * size)), ink));
                }
                Point at = Place(middle, reach);
                double drop = TextMeasure.Middle * size;
                Ink figureInk = span.IsMarked ? Ink.Pencil : Ink.Dimension;
                TextItem text = IsLevel
                    ? new(new(at.X, at.Y + drop), figure, size, Anchor.Middle, figureInk, 0, true)
                    : new(new(at.X + drop, at.Y), figure, size, Anchor.Middle, figureInk, 90, true);
                figures.Add(new(span, text, Box.Of(text), isAside));
            }
            return (lines.ToImmutable(), figures.ToImmutable());
        }

        /// <summary>How far inside the outline the edge lies that a station measures.</summary>
        private double FootOf(double station)
        {
            double? foot = _chain.Spans.Select(s => s.From == station ? s.FromFoot : s.To == station ? s.ToFoot : null).FirstOrDefault(f => f is not null);
            return foot is not { } at ? 0 : Math.Max(0, _chain.Side switch
            {
                Side.Above => at - _outline.Top,
                Side.Below => _outline.Bottom - at,
                Side.Left => at - _outline.Left,
                _ => _outline.Right - at,
            });
        }

        private Point Place(double along, double outwards) => _chain.Side switch
        {
            Side.Above => new(along, _outline.Top - outwards),
            Side.Below => new(along, _outline.Bottom + outwards),
            Side.Left => new(_outline.Left - outwards, along),
            _ => new(_outline.Right + outwards, along),
        };
    }
}
