using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Readings;

/// <summary>
/// Draws where an opening or a box is read across, seen from above with its front at the foot. How the widths differ is drawn larger than
/// it is; the figures are as read. The reading that counts is heavy, in pencil, and says so.
/// </summary>
public static class WidthReadings
{
    private const double Tick = 1.3, Apart = 2.5;

    /// <summary>Draws.</summary>
    /// <exception cref="ArgumentException">Fewer than two readings, not from front to back within the depth, or drawn smaller than they are.</exception>
    public static Scene Draw(WidthsInput input, ReadingPaper paper)
    {
        if (input.Reads.IsDefault || input.Reads.Length < 2) throw new ArgumentException("Two readings or more tell of a taper.", nameof(input));
        if (input.Reads.Zip(input.Reads.Skip(1)).Any(p => p.Second.FromFront <= p.First.FromFront) || input.Reads[0].FromFront.Ticks < 0 || input.Reads[^1].FromFront > input.Depth)
            throw new ArgumentException("Readings run from front to back, within the depth.", nameof(input));
        ArgumentOutOfRangeException.ThrowIfLessThan(input.Exaggerated, 1, nameof(input));
        var body = new Body(input, paper);
        var items = ImmutableArray.CreateBuilder<SceneItem>();
        items.AddRange(body.Walls());
        foreach (WidthRead read in input.Reads) items.Add(body.Across(read));
        items.AddRange(body.Words());
        string larger = input.Exaggerated > 1 ? $" Differences are drawn {input.Exaggerated} times as large as they are." : "";
        double height = Notes.Put(items, input.Note.Add(larger), paper, body.Bottom);
        return new(paper.Width, height, input.Title, input.Description, items.ToImmutable());
    }

    /// <summary>What is drawn, with the scale that fits it.</summary>
    private sealed class Body
    {
        private readonly WidthsInput _input;
        private readonly ReadingPaper _paper;
        private readonly WidthRead _counts;
        private readonly double _scale, _middle, _top, _front;

        public Body(WidthsInput input, ReadingPaper paper)
        {
            (_input, _paper, _counts) = (input, paper, input.Counts);
            double spots = input.Reads.Max(r => TextMeasure.Width(SpotWords(r), paper.SmallSize)), wall = TextMeasure.Width(input.WallWords, paper.SmallSize);
            double wood = input.Reads.Max(Shown) + (2 * (input.Seen == SeenFromAbove.Opening ? input.Wall : input.Slide).ApproximateMillimetres);
            // The words of the wall stand at the left, those of the spots at the right, and all of it is in the middle of the paper.
            _scale = Math.Min((paper.Width - wall - spots - (2 * (Apart + SheetReadings.Margin))) / wood, paper.Height / input.Depth.ApproximateMillimetres);
            _middle = (paper.Width + wall - spots) / 2;
            _top = SheetReadings.Margin + (paper.SmallSize * 1.5);
            _front = _top + (input.Depth.ApproximateMillimetres * _scale);
        }

        public double Bottom => _front + (_paper.SmallSize * 1.5);

        /// <summary>The panels beside a bay with their slides, or the sides and ends of a box.</summary>
        public IEnumerable<SceneItem> Walls()
        {
            double wall = _input.Wall.ApproximateMillimetres * _scale, slide = _input.Slide.ApproximateMillimetres * _scale;
            bool isBox = _input.Seen == SeenFromAbove.Box;
            if (isBox)
            {
                foreach ((double from, double to) in new[] { (_top, _top + wall), (_front - wall, _front) })
                {
                    double half = Math.Min(Half(from), Half(to)) - wall;
                    yield return ShapeItem.Rectangle(_middle - half, from, 2 * half, to - from, Ink.Part, Wash.Panel);
                }
            }
            foreach (int side in new[] { -1, 1 })
            {
                double inner = isBox ? -wall : 0, outer = isBox ? 0 : wall;
                yield return Strip(side, inner, outer, Ink.Outline, Wash.Wood, 0);
                if (slide > 0) yield return Strip(side, isBox ? 0 : -slide, isBox ? slide : 0, Ink.Hidden, Wash.None, 2);
            }
        }

        /// <summary>One reading across, with its figure.</summary>
        public GroupItem Across(WidthRead read)
        {
            bool counts = read == _counts;
            double y = Y(read), half = Half(y);
            Ink ink = counts ? Ink.Pencil : Ink.Dimension;
            var items = ImmutableArray.CreateBuilder<SceneItem>();
            items.Add(new LineItem(new(_middle - half, y), new(_middle + half, y), ink));
            foreach (double x in new[] { _middle - half, _middle + half }) items.Add(new LineItem(new(x - Tick, y + Tick), new(x + Tick, y - Tick), Ink.Outline));
            Phrase figure = counts ? read.Figure.Bold() : read.Figure;
            items.Add(new TextItem(new(_middle, y + (TextMeasure.Middle * _paper.TextSize)), figure, _paper.TextSize, Anchor.Middle, ink, HasGround: true));
            return new("", $"{read.Spot}: {read.Figure.PlainText}{(counts ? $", {Counting}" : "")}", items.ToImmutable());
        }

        /// <summary>What is said beside it: the spots at the right, the front and the back, the wall at the left.</summary>
        public IEnumerable<SceneItem> Words()
        {
            foreach (WidthRead read in _input.Reads)
            {
                double y = Y(read);
                yield return new TextItem(new(Right + Apart, y + (TextMeasure.Middle * _paper.SmallSize)), SpotWords(read), _paper.SmallSize, Anchor.Start, read == _counts ? Ink.Pencil : Ink.Soft);
            }
            yield return new TextItem(new(_middle, _top - 1.4), Phrase.Of("back").Italic(), _paper.SmallSize, Anchor.Middle, Ink.Soft);
            yield return new TextItem(new(_middle, _front + (_paper.SmallSize * 1.2)), Phrase.Of("front").Italic(), _paper.SmallSize, Anchor.Middle, Ink.Soft);
            double at = (_top + _front) / 2;
            yield return new TextItem(new(_middle - (Right - _middle) - Apart, at + (TextMeasure.Middle * _paper.SmallSize)), _input.WallWords, _paper.SmallSize, Anchor.End, Ink.Soft);
        }

        private string Counting => _input.Seen == SeenFromAbove.Opening ? "the narrowest counts" : "the widest counts";

        /// <summary>The furthest that anything reaches to the right of the middle.</summary>
        private double Right
        {
            get
            {
                double beyond = _input.Seen == SeenFromAbove.Opening ? _input.Wall.ApproximateMillimetres : _input.Slide.ApproximateMillimetres;
                return _middle + (((_input.Reads.Max(Shown) / 2) + beyond) * _scale);
            }
        }

        private Phrase SpotWords(WidthRead read) => read == _counts ? Phrase.Of($"{read.Spot}: {Counting}").Bold() : Phrase.Of(read.Spot);

        private double Y(WidthRead read) => _front - (read.FromFront.ApproximateMillimetres * _scale);

        /// <summary>The width as drawn, in millimetres of wood: what it differs by from the one that counts is larger.</summary>
        private double Shown(WidthRead read)
        {
            double counts = _counts.Width.ApproximateMillimetres;
            return counts + ((read.Width.ApproximateMillimetres - counts) * _input.Exaggerated);
        }

        /// <summary>Half the width at a height of the paper: straight from reading to reading, and on beyond the outer two.</summary>
        private double Half(double y)
        {
            int i = 0;
            while (i + 2 < _input.Reads.Length && Y(_input.Reads[i + 1]) > y) i++;
            (WidthRead a, WidthRead b) = (_input.Reads[i], _input.Reads[i + 1]);
            double part = (y - Y(a)) / (Y(b) - Y(a));
            return (Shown(a) + ((Shown(b) - Shown(a)) * part)) / 2 * _scale;
        }

        /// <summary>A strip that follows a wall, from its face inwards or outwards.</summary>
        private ShapeItem Strip(int side, double inner, double outer, Ink ink, Wash wash, double shorter)
        {
            double[] ys = [_front, .. _input.Reads.Select(Y).Where(y => y > _top + shorter && y < _front), _top + shorter];
            Point At(double y, double off) => new(_middle + (side * (Half(y) + off)), y);
            return new([.. ys.Distinct().Select(y => At(y, outer)), .. ys.Distinct().Reverse().Select(y => At(y, inner))], ink, wash);
        }
    }
}
