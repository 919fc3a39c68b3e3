using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;

namespace Setout.Core.SettingOut.Finishes;

/// <summary>Faces or edges of one size.</summary>
/// <param name="Name">Such as <c>face</c>, <c>long edge</c> or <c>end</c>, in the singular.</param>
/// <param name="Count">How many of them one member has to be finished; 1 or 2.</param>
/// <param name="Along">The one size.</param>
/// <param name="Across">The other.</param>
public readonly record struct Flat(string Name, int Count, ExactLength Along, ExactLength Across)
{
    /// <summary>All of them together.</summary>
    public ExactArea Area => ExactArea.Of(Along, Across) * Count;
}

/// <summary>
/// What of a part can be finished: its six sides, as it was cut or read, less what is covered for good. Of what lies against another part only that is left out which lies there with a whole
/// side: under laminate, between glued layers, behind lips, strips and bands. Joints, grooves and holes are not taken off.
/// </summary>
/// <param name="Part">The part.</param>
/// <param name="Flats">What is finished of one member; empty where it takes none.</param>
/// <param name="Without">What was left out and why, in words; empty for nothing.</param>
public sealed record Surface(Part Part, ImmutableArray<Flat> Flats, string Without)
{
    /// <summary>Of one member.</summary>
    public ExactArea OfOne => Flats.Aggregate(ExactArea.Zero, (sum, f) => sum + f.Area);

    /// <summary>Of all members.</summary>
    public ExactArea OfAll => OfOne * Part.Count;

    /// <summary>A kind of sheet whose faces come finished from the factory.</summary>
    public const string FacedBoard = "melamine-faced board";

    /// <summary>The surface of a part.</summary>
    public static Surface Of(SetPiece set, Part part)
    {
        Panel? panel = set.Piece.Materials.GetValueOrDefault(part.Material) as Panel;
        if (panel?.Kind == FacedBoard) return new(part, [], "it comes with finished faces");
        ExactLength length = set.Worked[part.Length.AsCut], width = set.Worked[part.Width.AsCut], thickness = set.Worked[part.Thickness];
        // A size that comes out at nothing or less has a finding of its own.
        if (length.Sign <= 0 || width.Sign <= 0 || thickness.Sign <= 0) return new(part, [], "it has no size");
        Covered covered = Covered.Of(set, part, panel);
        Flat[] all = [new("face", 2 - covered.Faces, length, width), new("long edge", 2 - covered.Longs, length, thickness), new("end", 2 - covered.Ends, width, thickness)];
        return new(part, [.. all.Where(f => f.Count > 0)], string.Join(", ", covered.Why.Distinct()));
    }

    /// <summary>How many sides of a part are covered for good.</summary>
    private sealed record Covered(int Faces, int Longs, int Ends, ImmutableArray<string> Why)
    {
        public static Covered Of(SetPiece set, Part part, Panel? panel)
        {
            var why = ImmutableArray.CreateBuilder<string>();
            int faces = 0, longs = 0, ends = 0;
            if (part.Role is PartRole.Lip or PartRole.EdgeStrip)
            {
                faces++;
                why.Add("the face that is glued on");
            }
            if (panel is not null && part.Seen != default && EdgeRule.Covers(panel))
            {
                (longs, ends) = (part.Seen.Long, part.Seen.Ends);
                why.Add(panel.Edges.Work == EdgeWork.Banded ? "the edges under bands" : "the edges under lips");
            }
            if (part.Role == PartRole.Top && set.Piece.Members.OfType<Top>().FirstOrDefault(t => t.Key == part.Key.Split('.')[0]) is { } top)
            {
                (int first, int last) = (top.Layers.IsEmpty ? 1 : Layer(part), Math.Max(1, top.Layers.Length));
                if (first > 1 || last > first) why.Add("what is glued to another layer");
                faces += (first > 1 ? 1 : 0) + (first < last ? 1 : 0);
                if (top.Laminate is { } laminate)
                {
                    why.Add("what is under laminate");
                    faces += (first == 1 ? 1 : 0) + (first == last && (laminate.IsOnBothFaces || laminate.Backer is not null) ? 1 : 0);
                    longs += laminate.Edges.Count(e => e is TopSide.Front or TopSide.Back);
                    // Where a layer is pieced together, its ends are not those of the top.
                    if (!IsPiece(part)) ends += laminate.Edges.Count(e => e is TopSide.Left or TopSide.Right);
                }
                Joint[] strips = [.. set.Joints.Where(j => j.Kind == JointKind.Edging && j.Against.Split('.')[0] == top.Key)];
                if (strips.Length > 0) why.Add("the edges behind strips");
                longs += strips.Count(j => j.On is Face.FrontEdge or Face.BackEdge);
                if (!IsPiece(part)) ends += strips.Count(j => j.On == Face.Ends);
            }
            return new(Math.Min(2, faces), Math.Min(2, longs), Math.Min(2, ends), why.ToImmutable());
        }

        // T.layer-2, or T.layer-2.piece-1 of one that is pieced together.
        private static int Layer(Part part) => part.Key.Split('.')[1]["layer-".Length..] is var number && int.TryParse(number, out int layer) ? layer : 1;

        private static bool IsPiece(Part part) => part.Key.Split('.').Length > 2;
    }
}
