using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Dimensioning;

/// <summary>
/// Places chains of dimensions round an outline. A figure stands on the middle of its line with paper under it, clear of the strokes at the ends;
/// where one of an upright chain has no room along the line, all of that chain stand level. Where a span is still too short its figure
/// moves to the next row outwards, at a leader. Figures of one row keep clear of each other, rows and chains are stacked, and the upright
/// chains step further out when a figure of theirs would reach into a corner that a level chain uses: so no two figures ever touch.
/// </summary>
public static class DimensionPlacer
{
    // From a figure to the end stroke beside it; the paper under it is a tenth of its size.
    private const double Clear = 0.6, Ground = 0.1;

    // How far a level figure reaches from its middle, up or down, in ems.
    private const double HalfHeight = TextMeasure.Middle + TextMeasure.Descent;

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
        private readonly bool _isAlong;

        public ChainRows(DimensionChain chain, DimensionStyle style, Box outline)
        {
            (_style, _outline) = (style, outline);
            _chain = chain with { Spans = [.. chain.Spans.OrderBy(s => s.From)] };
            for (int i = 0; i < _chain.Spans.Length; i++)
            {
                if (_chain.Spans[i].To < _chain.Spans[i].From || (i > 0 && _chain.Spans[i].From < _chain.Spans[i - 1].To - 1e-9))
                    throw new ArgumentException("Spans of a chain run forwards and never overlap.", nameof(chain));
            }
            _isAlong = IsLevel || _chain.Spans.All(s => s.Figure.IsEmpty || Fits(s, WidthOf(Shown(s))));
            _figures = Deal();
            OnLine = Across(f => !f.IsAside, RowHeight);
            Beside = Across(f => f.IsAside, 0);
            Low = _figures.Select(f => f.Middle - (Along(f.Figure) / 2)).DefaultIfEmpty(double.MaxValue).Min();
            High = _figures.Select(f => f.Middle + (Along(f.Figure) / 2)).DefaultIfEmpty(double.MinValue).Max();
        }

        /// <summary>Least reach of the figures along the chain.</summary>
        public double Low { get; }

        /// <summary>Greatest reach of the figures along the chain.</summary>
        public double High { get; }

        /// <summary>How much room the chain takes outwards.</summary>
        public double Depth => OnLine + _style.RowGap + (Beside > 0 ? Beside + _style.RowGap : 0);

        private double OnLine { get; }

        private double Beside { get; }

        private bool IsLevel => _chain.Side is Side.Above or Side.Below;

        private double RowHeight => (TextMeasure.Ascent + TextMeasure.Descent) * _style.FigureSize;

        private double WidthOf(Phrase figure) => TextMeasure.Width(figure, _style.FigureSize);

        private static Phrase Shown(DimensionSpan span) => span.IsMarked ? span.Figure.Bold() : span.Figure;

        private bool Fits(DimensionSpan span, double along) => along + (2 * (_style.Tick + (Ground * _style.FigureSize) + Clear)) <= span.To - span.From;

        /// <summary>What a figure takes of the chain.</summary>
        private double Along(Phrase figure) => _isAlong ? WidthOf(figure) : 2 * HalfHeight * _style.FigureSize;

        private double Across(Func<(DimensionSpan Span, Phrase Figure, double Middle, bool IsAside), bool> which, double least) =>
            _figures.Where(which).Select(f => _isAlong ? RowHeight : WidthOf(f.Figure) + (2 * Ground * _style.FigureSize)).DefaultIfEmpty(least).Max();

        private ImmutableArray<(DimensionSpan, Phrase, double, bool)> Deal()
        {
            ImmutableArray<DimensionSpan> named = [.. _chain.Spans.Where(s => !s.Figure.IsEmpty)];
            bool Stays(DimensionSpan s) => Fits(s, Along(Shown(s)));
            ImmutableArray<DimensionSpan> aside = [.. named.Where(s => !Stays(s))];
            double[] wanted = [.. aside.Select(s => (s.From + s.To) / 2)];
            double[] sizes = [.. aside.Select(s => Along(Shown(s)))];
            (double low, double high) = IsLevel ? (_outline.Left, _outline.Right) : (_outline.Top, _outline.Bottom);
            // A little past the ends is better than a slanted leader at a thin end part.
            double past = 1.5 * _style.FigureSize;
            double[] middles = Spread.Along(wanted, sizes, _isAlong ? 1.4 : 0, low - past, high + past);
            int next = 0;
            return [.. named.Select(s => Stays(s) ? (s, Shown(s), (s.From + s.To) / 2, false) : (s, Shown(s), middles[next++], true))];
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
            double line = offset + (OnLine / 2), elbow = line + (OnLine / 2), row = elbow + (_style.RowGap / 2) + (Beside / 2), tick = _style.Tick;
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
                double size = _style.FigureSize, reach = isAside ? row : line, drop = TextMeasure.Middle * size;
                Ink ink = span.IsMarked ? Ink.Pencil : Ink.Dimension;
                // Level figures beside an upright chain begin on one line, the nearer to it.
                bool isListed = isAside && !_isAlong;
                if (isAside)
                {
                    // Straight out of its own span, past the figures on the line, then over to its figure: leaders keep the order and never cross.
                    double from = (span.From + span.To) / 2;
                    lines.Add(new LineItem(Place(from, line), Place(from, elbow), ink));
                    lines.Add(new LineItem(Place(from, elbow), Place(middle, isListed ? row - (Beside / 2) : row - drop), ink));
                }
                Point at = Place(middle, isListed ? row - (Beside / 2) + (Ground * size) : reach);
                TextItem text = _isAlong && !IsLevel
                    ? new(new(at.X + drop, at.Y), figure, size, Anchor.Middle, ink, 90, true)
                    : new(new(at.X, at.Y + drop), figure, size, !isListed ? Anchor.Middle : _chain.Side == Side.Left ? Anchor.End : Anchor.Start, ink, 0, true);
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
