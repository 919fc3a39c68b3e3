using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Drawing.Sections;

namespace Setout.Shop.Drawings;

/// <summary>What a section shows: where the plane lies, what stands in the middle of it, what is named, which figures stand on it.</summary>
/// <param name="Caption">What it shows, in a few words.</param>
/// <param name="From">From where one looks at the plane.</param>
/// <param name="Through">The plane: through the middle of a member, such as <c>C.deck#2</c>, or a share of its size from its near or lower side on: <c>C.side#1@1/4</c>.</param>
/// <param name="Round">What is drawn, each member as <c>KEY#NUMBER</c>, with a name of its own after <c>=</c>. Their meeting is shown, one alone is shown whole; what has a <c>+</c>
/// before it is drawn as far as it comes into that; <c>~</c> before the key of a drawer draws its slide at the left, as thick as it is, and of no height in particular;
/// <c>.</c> before an edge's owner, as in <see cref="Figures"/>, only says where to look.</param>
/// <param name="Figures">Each <c>KEY: EDGE > EDGE</c>: the quantity, and the two edges between which it lies. An edge is that of a member, <c>C.side#1.right</c>, or of what is
/// cut into it for another, <c>C.side#1/C.deck#2.right</c>; edges are left, right, top and bottom as drawn.</param>
public sealed record Detail(string Caption, Views From, string Through, ImmutableArray<string> Round, ImmutableArray<string> Figures)
{
    /// <summary>How much of the model is shown round the meeting, in millimetres.</summary>
    public int Reach { get; init; } = 45;

    /// <summary>As <see cref="Reach"/>, up and down; null for the same.</summary>
    public int? ReachUp { get; init; }
}

/// <summary>A figure of a section: the quantity, and how far apart the edges lie in the drawing.</summary>
/// <param name="Key">The quantity.</param>
/// <param name="Value">What stands on the drawing.</param>
/// <param name="Drawn">What is drawn.</param>
public sealed record DetailFigure(QuantityKey Key, ExactLength Value, Length Drawn);

/// <summary>Sections through a piece set out: the plane cuts the boxes of its members, less what is cut out of them.</summary>
public static class PieceSection
{
    /// <summary>Draws sections side by side, each from its own piece.</summary>
    /// <param name="title">What is shown.</param>
    /// <param name="details">The sections.</param>
    /// <param name="paper">The paper.</param>
    /// <exception cref="ArgumentException">A section names what is not there.</exception>
    public static Scene Draw(string title, ImmutableArray<(SetPiece Set, Detail Detail)> details, PaperBox paper)
    {
        ImmutableArray<(SectionInput Input, ImmutableArray<DetailFigure> Figures, string Words)> made = [.. details.Select(d => new Cutter(d.Set, d.Detail).Make())];
        return SectionSheet.Draw(title, string.Join(" ", made.Select(m => m.Words)), [.. made.Select(m => m.Input)], paper);
    }

    /// <summary>The figures of a section with what is drawn between their edges: the two must agree.</summary>
    public static ImmutableArray<DetailFigure> Figures(SetPiece set, Detail detail) => new Cutter(set, detail).Make().Figures;

    private sealed class Cutter(SetPiece set, Detail detail)
    {
        // As a common slide is; nothing goes by it.
        private const int SlideHeight = 45;
        private readonly ImmutableArray<MemberShape> _shapes = MemberShape.Of(set);

        public (SectionInput Input, ImmutableArray<DetailFigure> Figures, string Words) Make()
        {
            (MemberShape Shape, string Label, bool IsMeeting)[] round =
                [.. detail.Round.Where(r => r[0] is not ('~' or '.')).Select(r => r.Split('=', 2)).Select(r => (Shape(r[0].TrimStart('+').Trim()), r.Length > 1 ? r[1].Trim() : "", r[0][0] != '+'))];
            ExactLength plane = Plane();
            ModelRect window = Window([.. round.Where(r => r.IsMeeting).Select(r => Area(r.Shape.Box)), .. detail.Round.Where(r => r[0] == '.').Select(r => Area(Box(r[1..])))]);
            var cut = round.Where(s => Holds(s.Shape.Box, plane) && Sight.Meet(Area(s.Shape.Box), window)).ToList();
            if (cut.Count == 0) throw new InvalidOperationException($"The plane of '{detail.Caption}' cuts nothing that is named.");
            window = Cropped(window, [.. cut.SelectMany(c => c.Shape.Covers(set).Select(o => o.Space).Prepend(c.Shape.Box)).Select(Area)]);
            var parts = ImmutableArray.CreateBuilder<SectionPart>();
            foreach ((MemberShape shape, string label, bool _) in cut)
            {
                ImmutableArray<ModelRect> taken = [.. shape.Recesses.Where(r => Holds(r.Space, plane)).Select(r => Area(r.Space))];
                bool isFalling = Sight.IsFalling(parts, Area(shape.Box));
                parts.Add(new(shape.Name, shape.Part.Name, Said(label), Area(shape.Box), taken) { IsFalling = isFalling });
                foreach ((string word, Placement space) in shape.Covers(set).Where(c => Holds(c.Space, plane)))
                    parts.Add(new($"{shape.Name}.{word}", $"{shape.Part.Name}, {word}", Said(label.Length > 0 ? word : ""), Area(space), taken) { IsFalling = !isFalling });
            }
            foreach (string[] slide in detail.Round.Where(r => r[0] == '~').Select(r => r.Split('=', 2)))
                parts.Add(new(slide[0], $"slide of drawer {slide[0][1..]}", Said(slide.Length > 1 ? slide[1].Trim() : ""), Area(Slide(slide[0][1..].Trim())), []) { IsGhost = true });
            (SectionFigure Figure, DetailFigure Checked)[] figures = [.. detail.Figures.Select(Figure)];
            string said = string.Join(", ", figures.Select(f => f.Figure.Span.Title));
            return (new(detail.Caption, window, parts.ToImmutable(), [.. figures.Select(f => f.Figure)]), [.. figures.Select(f => f.Checked)], $"{detail.Caption}: {said}.");
        }

        private static Phrase Said(string label) => label.Length > 0 ? Phrase.Of(label) : Phrase.Empty;

        /// <summary>The slide at the left of a drawer whose slides are at its sides.</summary>
        private Placement Slide(string drawer)
        {
            Placement side = Shape($"{drawer}.side#1").Box;
            SetOpening opening = set.Openings.First(o => o.Content == "drawers" && Sight.Meet(o.Space, side));
            QuantityKey thickness = set.Worked.Order.First(k => k.Text.EndsWith(".slide.thickness", StringComparison.Ordinal) && set.Piece.DrawerKinds.TryGetValue(k.Owner, out DrawerKind? kind) && kind.Slides == SlideWay.Side);
            ExactLength high = ExactLength.FromMillimetres(SlideHeight);
            return new(opening.Space.X, side.Y, opening.Space.Z + set.Worked[QuantityKey.Of(drawer, "slide.up")] - (high / 2), set.Worked[thickness], side.SizeY, high);
        }

        private ModelRect Area(Placement place) => Sight.Area(detail.From, place);

        private MemberShape Shape(string name) => _shapes.FirstOrDefault(s => s.Name == name) ?? throw new ArgumentException($"There is no member '{name}' with a place.", nameof(name));

        private ExactLength Plane()
        {
            string[] through = detail.Through.Split('@');
            Placement box = Shape(through[0]).Box;
            Rational share = through.Length > 1 ? Rational.Of(int.Parse(through[1].Split('/')[0], System.Globalization.CultureInfo.InvariantCulture), int.Parse(through[1].Split('/')[1], System.Globalization.CultureInfo.InvariantCulture)) : Rational.Of(1, 2);
            (ExactLength from, ExactLength size) = Deep(box);
            return from + (size * share);
        }

        private (ExactLength From, ExactLength Size) Deep(Placement box) => detail.From switch
        {
            Views.Above => (box.Z, box.SizeZ),
            Views.Right => (box.X, box.SizeX),
            _ => (box.Y, box.SizeY),
        };

        private bool Holds(Placement box, ExactLength plane)
        {
            (ExactLength from, ExactLength size) = Deep(box);
            return from < plane && plane < from + size;
        }

        private ModelRect Window(ModelRect[] areas)
        {
            Length across = Length.FromMillimetres(detail.Reach), up = Length.FromMillimetres(detail.ReachUp ?? detail.Reach);
            (Length left, Length right) = Between(areas.Max(a => a.Left), areas.Min(a => a.Right));
            (Length bottom, Length top) = Between(areas.Max(a => a.Bottom), areas.Min(a => a.Top));
            return new(left - across, bottom - up, right - left + across + across, top - bottom + up + up);

            static (Length, Length) Between(Length a, Length b) => a <= b ? (a, b) : (b, a);
        }

        /// <summary>No more of the window than there is something in.</summary>
        private static ModelRect Cropped(ModelRect window, ModelRect[] areas)
        {
            Length left = Length.Max(window.Left, areas.Min(a => a.Left)), bottom = Length.Max(window.Bottom, areas.Min(a => a.Bottom));
            return new(left, bottom, Length.Min(window.Right, areas.Max(a => a.Right)) - left, Length.Min(window.Top, areas.Max(a => a.Top)) - bottom);
        }

        private (SectionFigure, DetailFigure) Figure(string text)
        {
            string[] halves = text.Split(':', 2), edges = halves[1].Split('>', 2);
            (bool isUpright, Length from, ModelRect one) = Edge(edges[0].Trim());
            (bool other, Length to, ModelRect two) = Edge(edges[1].Trim());
            if (isUpright != other) throw new ArgumentException($"'{text}' lies between a level and an upright edge.", nameof(text));
            Worked worked = set.Worked.Values.TryGetValue(new(halves[0].Trim()), out Worked? found) ? found : throw new ArgumentException($"There is no quantity '{halves[0]}'.", nameof(text));
            (Length low, Length high) = from <= to ? (from, to) : (to, from);
            // The figure belongs to the side where the smaller of the two things lies.
            ModelRect small = (isUpright ? one.Width <= two.Width : one.Height <= two.Height) ? one : two;
            Length at = (isUpright ? (small.Left.ToExact() + small.Right.ToExact()) / 2 : (small.Bottom.ToExact() + small.Top.ToExact()) / 2).ToNearestTick();
            LengthFormat format = LengthFormat.For(set.Piece.Shown);
            var span = new ElevationSpan(low, high, Phrase.Of(format.Bare.Format(worked.Value)), worked.Quantity.Key.Text, $"{worked.Quantity.Name}, {format.Text(worked.Value)}");
            return (new(span, isUpright, at), new(worked.Quantity.Key, worked.Value, high - low));
        }

        private (bool IsUpright, Length At, ModelRect Of) Edge(string text)
        {
            int dot = text.LastIndexOf('.');
            (string name, string edge) = (text[..dot], text[(dot + 1)..]);
            ModelRect area = Area(Box(name));
            return edge switch
            {
                "left" => (false, area.Left, area),
                "right" => (false, area.Right, area),
                "top" => (true, area.Top, area),
                "bottom" => (true, area.Bottom, area),
                _ => throw new ArgumentException($"'{edge}' is no edge: left, right, top or bottom.", nameof(text)),
            };
        }

        /// <summary>A member, what is cut into it for another, or a cover on its edge: <c>KEY#1/lip</c>.</summary>
        private Placement Box(string name)
        {
            if (name[0] == '~') return Slide(name[1..]);
            string[] names = name.Split('/');
            MemberShape shape = Shape(names[0]);
            if (names.Length == 1) return shape.Box;
            return shape.Recesses.FirstOrDefault(r => r.For == names[1])?.Space ?? shape.Covers(set).Where(c => c.Word == names[1]).Select(c => c.Space).FirstOrDefault()
                ?? throw new ArgumentException($"Nothing is cut into '{names[0]}' for '{names[1]}'.", nameof(name));
        }
    }
}
