using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Drawings;

/// <summary>Room taken out of a member.</summary>
/// <param name="Space">The room.</param>
/// <param name="For">What goes into it, such as <c>C.deck#2</c>, or the key of what is cut out; empty for what is cut away beside a tongue.</param>
internal sealed record Recess(Placement Space, string For);

/// <summary>A member with what is cut out of it: by cut-outs, by what goes into it, and beside its own tenons and tongues.</summary>
/// <param name="Part">Its part.</param>
/// <param name="Number">Which of them, from 1.</param>
/// <param name="Box">Its outline.</param>
/// <param name="Recesses">What is taken out.</param>
internal sealed record MemberShape(Part Part, int Number, Placement Box, ImmutableArray<Recess> Recesses)
{
    private const int Axes = 3;

    /// <summary>Its name in figures: <c>KEY#NUMBER</c>.</summary>
    public string Name => NameOf(Part, Number);

    /// <summary>The shapes of all members that have a place, in the order set out.</summary>
    public static ImmutableArray<MemberShape> Of(SetPiece set)
    {
        MemberShape[] plain = [.. set.Parts.SelectMany(p => p.Placements.Select((box, i) => new MemberShape(p, i + 1, box, [])))];
        ILookup<string, MemberShape> byPart = plain.ToLookup(m => m.Part.Key);
        var taken = plain.ToDictionary(m => m.Name, m => set.CutOuts.Where(c => c.Part == m.Part.Key && Sight.Meet(c.Space, m.Box)).Select(c => new Recess(c.Space, c.Key)).ToList());
        foreach (Joint joint in set.Joints.Where(j => j.Depth is not null))
            foreach (MemberShape member in byPart[joint.Part])
                foreach (MemberShape against in byPart[joint.Against].Where(a => a != member && Sight.Meet(a.Box, member.Box)))
                    Add(set, joint, member, against, taken, [.. byPart[joint.Part], .. byPart[joint.Against]]);
        return [.. plain.Select(m => m with { Recesses = [.. taken[m.Name].Distinct()] })];
    }

    private static string NameOf(Part part, int number) => $"{part.Key}#{number}";

    private static void Add(SetPiece set, Joint joint, MemberShape member, MemberShape against, Dictionary<string, List<Recess>> taken, MemberShape[] both)
    {
        Placement shared = Shared(member.Box, against.Box);
        // What goes through, as tails and fingers do, is seen at one of them: the side stands whole, and the end makes room.
        if (joint.Kind is JointKind.BoxJoint or JointKind.HalfBlindDovetail or JointKind.ThroughDovetail)
        {
            taken[member.Name].Add(new(shared, against.Name));
            return;
        }
        if (joint.Kind == JointKind.HalfLap)
        {
            Lapped(set, new QuantityKey(joint.Against).Owner, member, against, shared, taken);
            return;
        }
        if (Way(member.Box, shared) is not { } axis) return;
        ExactLength depth = set.Worked[joint.Depth!.Value];
        bool isFromAbove = Middle(member.Box, axis) > Middle(against.Box, axis);
        Placement recess = With(shared, axis, isFromAbove ? To(against.Box, axis) - depth : From(against.Box, axis), depth);
        if (joint.Thick is { } thick && !(joint.IsFirstWhole && member.Number == 1))
        {
            int thin = Enumerable.Range(0, Axes).Where(a => a != axis).MinBy(a => Size(member.Box, a).Inches), wide = Axes - axis - thin;
            ExactLength less = Size(member.Box, thin) - set.Worked[thick], inward = both.Aggregate(ExactLength.Zero, (sum, m) => sum + Middle(m.Box, thin)) / both.Length;
            ExactLength below = !joint.IsAtInside ? less / 2 : inward > Middle(member.Box, thin) ? less : ExactLength.Zero;
            taken[member.Name].AddRange([new(With(shared, thin, From(member.Box, thin), below), ""), new(With(shared, thin, To(member.Box, thin) - (less - below), less - below), "")]);
            recess = With(recess, thin, From(member.Box, thin) + below, set.Worked[thick]);
            if (joint.Shoulder is { } key)
            {
                ExactLength shoulder = set.Worked[key];
                taken[member.Name].AddRange([new(With(shared, wide, From(member.Box, wide), shoulder), ""), new(With(shared, wide, To(member.Box, wide) - shoulder, shoulder), "")]);
                recess = With(recess, wide, From(member.Box, wide) + shoulder, Size(member.Box, wide) - (shoulder * 2));
            }
        }
        taken[against.Name].Add(new(recess, member.Name));
    }

    /// <summary>Each of the two fills the notch of the other: the rail is cut at its inner face, the post at its outer one.</summary>
    private static void Lapped(SetPiece set, string frame, MemberShape rail, MemberShape post, Placement shared, Dictionary<string, List<Recess>> taken)
    {
        const int Deep = 1;
        ExactLength inRail = set.Worked[QuantityKey.Of(frame, "lap")], inPost = set.Worked[QuantityKey.Of(frame, "lap.post")];
        bool isFront = Middle(rail.Box, Deep) < Middle(post.Box, Deep);
        taken[rail.Name].Add(new(With(shared, Deep, isFront ? To(shared, Deep) - inRail : From(shared, Deep), inRail), post.Name));
        taken[post.Name].Add(new(With(shared, Deep, isFront ? From(shared, Deep) : To(shared, Deep) - inPost, inPost), rail.Name));
    }

    /// <summary>The axis along which a member goes in: they share least of it, at one of its ends. Null where it does not go in.</summary>
    private static int? Way(Placement member, Placement shared)
    {
        int[] ways = [.. Enumerable.Range(0, Axes).Where(a => Size(shared, a) < Size(member, a) && (From(shared, a) == From(member, a) || To(shared, a) == To(member, a)))];
        return ways.Length == 0 ? null : ways.MinBy(a => Size(shared, a).Inches);
    }

    private static Placement Shared(Placement a, Placement b)
    {
        for (int axis = 0; axis < Axes; axis++)
        {
            ExactLength from = ExactLength.Max(From(a, axis), From(b, axis));
            a = With(a, axis, from, ExactLength.Min(To(a, axis), To(b, axis)) - from);
        }
        return a;
    }

    private static ExactLength From(Placement box, int axis) => axis switch { 0 => box.X, 1 => box.Y, _ => box.Z };

    private static ExactLength Size(Placement box, int axis) => axis switch { 0 => box.SizeX, 1 => box.SizeY, _ => box.SizeZ };

    private static ExactLength To(Placement box, int axis) => From(box, axis) + Size(box, axis);

    private static ExactLength Middle(Placement box, int axis) => From(box, axis) + (Size(box, axis) / 2);

    private static Placement With(Placement box, int axis, ExactLength from, ExactLength size) => axis switch
    {
        0 => box with { X = from, SizeX = size },
        1 => box with { Y = from, SizeY = size },
        _ => box with { Z = from, SizeZ = size },
    };

    /// <summary>What covers a part and has no place of its own: lips and bands within its outline, laminate on the faces of a top.</summary>
    public IEnumerable<(string Word, Placement Space)> Covers(SetPiece set) => [.. Edged(set), .. Laminated(set)];

    private IEnumerable<(string Word, Placement Space)> Laminated(SetPiece set)
    {
        if (Part.Role != PartRole.Top || set.Piece.Members.OfType<Top>().FirstOrDefault(t => t.Key == new QuantityKey(Part.Key).Owner) is not { Laminate: { } laminate } top) yield break;
        // The face is on the upper layer, what is under the top on the lowest.
        Placement[] layers = [.. set.Parts.Where(p => p.Role == PartRole.Top && new QuantityKey(p.Key).Owner == top.Key).SelectMany(p => p.Placements)];
        ExactLength film = set.Worked[QuantityKey.Of(top.Key, "laminate")];
        if (!layers.Any(l => l.Z > Box.Z)) yield return ("laminate", With(Box, 2, To(Box, 2), film));
        ExactLength under = laminate.IsOnBothFaces ? film : laminate.Backer?.Value ?? ExactLength.Zero;
        if (under.Sign > 0 && !layers.Any(l => l.Z < Box.Z)) yield return (laminate.IsOnBothFaces ? "laminate" : "backer", With(Box, 2, From(Box, 2) - under, under));
    }

    private IEnumerable<(string Word, Placement Space)> Edged(SetPiece set)
    {
        if (Part.Seen == default || set.Piece.Materials.GetValueOrDefault(Part.Material) is not Panel { Edges.Work: EdgeWork.Banded or EdgeWork.Lipped } panel) yield break;
        ExactLength cover = set.Worked[QuantityKey.Of(panel.Name, "edge")];
        string word = panel.Edges.Work == EdgeWork.Lipped ? "lip" : "band";
        int thin = Enumerable.Range(0, Axes).MinBy(a => Size(Box, a).Inches);
        int along = Enumerable.Range(0, Axes).Where(a => a != thin).MinBy(a => (Size(Box, a) - set.Worked[Part.Length.Made]).Abs().Inches), across = Axes - thin - along;
        foreach ((int axis, int seen) in new[] { (across, Part.Seen.Long), (along, Part.Seen.Ends) })
        {
            if (seen > 0) yield return (word, With(Box, axis, From(Box, axis), cover));
            if (seen > 1) yield return (word, With(Box, axis, To(Box, axis) - cover, cover));
        }
    }
}
