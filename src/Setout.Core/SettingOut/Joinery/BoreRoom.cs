using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>
/// No two holes of a member in one place, and none where something goes into it. Of a screw's hole nothing is said: it is taken as 5 mm wide and half the
/// panel deep, as the system screws of hinge plates are (common practice, no source).
/// </summary>
internal static class BoreRoom
{
    private static readonly JointKind[] s_cuts = [JointKind.Dado, JointKind.Groove, JointKind.Rabbet, JointKind.SlidIn];

    /// <summary>Notes holes that meet, once for each two owners in a part.</summary>
    public static void Look(Book book)
    {
        var said = new HashSet<(string, string, string)>();
        // What rails and ties of a frame do to one another in its posts is said already.
        bool areDowelsSaid = book.Findings.Any(f => f.Code == "frame.dowels-meet");
        foreach (IGrouping<(string Part, int Number), Bore> member in book.Bores.GroupBy(b => (b.Part, b.Number)))
        {
            if (book.Parts.Find(p => p.Key == member.Key.Part) is not { } part) continue;
            Placement box = part.Placements[member.Key.Number - 1];
            Bore[] bores = [.. member.Distinct()];
            for (int i = 0; i < bores.Length; i++)
                for (int j = i + 1; j < bores.Length; j++)
                    if (!(areDowelsSaid && bores[i].Name == "dowel" && bores[j].Name == "dowel") && Meet(bores[i], bores[j], box) && said.Add((part.Key, bores[i].Key, bores[j].Key))) Note(book, part, box, bores[i], bores[j]);
            Cuts(book, part, box, bores);
        }
    }

    /// <summary>Whether two holes of a member share room, or leave less than is usual between their ends.</summary>
    /// <param name="a">A hole.</param>
    /// <param name="b">Another.</param>
    /// <param name="box">The member.</param>
    public static bool Meet(Bore a, Bore b, Placement box)
    {
        if (a.Along != b.Along) return Space(a, box).Within(Space(b, box)).Sign > 0;
        (Along u, Along v) = a.Along switch { Along.X => (Along.Y, Along.Z), Along.Y => (Along.X, Along.Z), _ => (Along.X, Along.Y) };
        // Most are further apart one way already.
        ExactLength reach = (Wide(a) + Wide(b)) / 2;
        if ((At(a, u) - At(b, u)).Abs() >= reach || (At(a, v) - At(b, v)).Abs() >= reach) return false;
        static Rational Square(ExactLength side) => side.Millimetres * side.Millimetres;
        if (Square(At(a, u) - At(b, u)) + Square(At(a, v) - At(b, v)) >= Square(reach)) return false;
        return At(a, a.Along) == At(b, b.Along) || Deep(a, box) + Deep(b, box) > Size(box, a.Along) - (IsSaid(a) && IsSaid(b) ? TradeRules.Get("SH8").Length : Zero);
    }

    private static void Note(Book book, Part part, Placement box, Bore a, Bore b)
    {
        bool areOpposite = a.Along == b.Along && At(a, a.Along) != At(b, b.Along), arePins = IsPin(a) && IsPin(b);
        string deep = areOpposite && IsSaid(a) && IsSaid(b) ? $" {book.Say(a.Depth)} and {book.Say(b.Depth)} deep" : "", thick = book.Say(Size(box, a.Along));
        if (arePins && areOpposite)
            book.Note("shelf.holes-meet", Severity.Warn, b.Key, $"Holes{deep} for {a.Name} and for {b.Name} meet from both sides of {part.Name}, {thick} thick.",
                $"Set the shelves of one of them back by 1 in or more, so that its rows stand beside the others, or use a thicker {part.Name}.");
        else
            book.Note("holes.meet", Severity.Warn, b.Key, $"A hole for the {Word(b)} of {b.Key} meets one for the {Word(a)} of {a.Key} in {part.Name}{(areOpposite ? $", from its other side; it is {thick} thick" : "")}.",
                areOpposite ? $"Use shorter screws, a thicker {part.Name}, or move one of the two by {book.Say((Wide(a) + Wide(b)) / 2)} or more: a setback for shelves, another height for hinges." : $"Move one of the two by {book.Say((Wide(a) + Wide(b)) / 2)} or more.");
    }

    private static void Cuts(Book book, Part part, Placement box, Bore[] bores)
    {
        foreach (Joint joint in book.Joints.Where(j => j.Against == part.Key && j.Depth is not null && s_cuts.Contains(j.Kind)).ToList())
            foreach (Placement held in book.Parts.Find(p => p.Key == joint.Part)?.Placements ?? [])
            {
                // A cup beside the groove of its stile has a finding of its own.
                if (held.Within(box).Sign <= 0 || bores.FirstOrDefault(b => b.Name != "cup" && b.Key != joint.Part && Space(b, box).Within(Overlap(held, box)).Sign > 0) is not { } bore) continue;
                book.NoteOnce("holes.meet-cut", Severity.Warn, bore.Key, $"A hole for the {Word(bore)} of {bore.Key} runs into the {joint.Kind.Word()} for {joint.Part} in {part.Name}.",
                    $"Move one of the two by {book.Say(Space(bore, box).Within(Overlap(held, box)))} or more.", default);
                break;
            }
    }

    private static Placement Overlap(Placement a, Placement b)
    {
        (ExactLength x, ExactLength y, ExactLength z) = a.Shared(b);
        return new(Max(a.X, b.X), Max(a.Y, b.Y), Max(a.Z, b.Z), x, y, z);
    }

    /// <summary>The box round a hole.</summary>
    private static Placement Space(Bore bore, Placement box)
    {
        ExactLength half = Wide(bore) / 2, deep = Deep(bore, box);
        (ExactLength From, ExactLength Size) Side(Along axis) => axis != bore.Along ? (At(bore, axis) - half, Wide(bore)) : (At(bore, axis) == Low(box, axis) ? At(bore, axis) : At(bore, axis) - deep, deep);
        ((ExactLength x, ExactLength sx), (ExactLength y, ExactLength sy), (ExactLength z, ExactLength sz)) = (Side(Along.X), Side(Along.Y), Side(Along.Z));
        return new(x, y, z, sx, sy, sz);
    }

    private static bool IsSaid(Bore bore) => bore.Diameter.Sign > 0;

    private static bool IsPin(Bore bore) => bore.Name.StartsWith("pins", StringComparison.Ordinal);

    private static string Word(Bore bore) => IsPin(bore) ? "shelf pins" : bore.Name == "plate" ? "hinge plates" : bore.Name;

    private static ExactLength Wide(Bore bore) => IsSaid(bore) ? bore.Diameter : FromMillimetres(5);

    private static ExactLength Deep(Bore bore, Placement box) => bore.Depth.Sign > 0 ? bore.Depth : IsSaid(bore) ? Size(box, bore.Along) : Size(box, bore.Along) / 2;

    private static ExactLength At(Bore bore, Along axis) => axis switch { Along.X => bore.X, Along.Y => bore.Y, _ => bore.Z };

    private static ExactLength Low(Placement box, Along axis) => axis switch { Along.X => box.X, Along.Y => box.Y, _ => box.Z };

    private static ExactLength Size(Placement box, Along axis) => axis switch { Along.X => box.SizeX, Along.Y => box.SizeY, _ => box.SizeZ };
}
