using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Openings;

/// <summary>Mullions before partitions and rails before decks, and how any member of a face frame is joined.</summary>
internal static class FaceFrameMembers
{
    /// <summary>The member before a partition or deck, as an edge of the openings beside it.</summary>
    public static FrameEdge Before(Book book, Space space, FaceFrameSetting frame, Divider divider, QuantityKey thickness, bool isAcross)
    {
        QuantityKey width = Book.SectionWidthOf((isAcross ? frame.Mullion : frame.Rail).Name);
        QuantityKey inside = In(book, divider.Key, "frame.in", $"{frame.Name}, edge of its {Word(isAcross)} beside {divider.Key}", frame, isAcross ? frame.Described.Mullions : frame.Described.Rails, [Term.From(Word(isAcross), 1, width), Term.From(divider.Key, -1, thickness)], Rational.Of(1, 2));
        FrameEdge before = (isAcross ? space.Edges.Bottom : space.Edges.Left).Frame!;
        return new(inside, width, $"{divider.Key}.{Word(isAcross)}", [.. frame.OneTenon, Term.From("edge of what it stands against", -1, before.In)], thickness);
    }

    /// <summary>True where the frame leaves nothing of an opening, with a finding.</summary>
    public static bool Closes(Book book, Space space)
    {
        if (space.FaceFrame is not { } frame) return false;
        ExactLength In(Edge edge) => edge.Frame is { } before ? book.Value(before.In) : Zero;
        ExactLength wide = book.Value(space.Face.Width) - In(space.Edges.Left) - In(space.Edges.Right), high = book.Value(space.Face.Height) - In(space.Edges.Top) - In(space.Edges.Bottom);
        if (wide.Sign > 0 && high.Sign > 0) return false;
        book.Note("frame.no-opening", Severity.Stop, space.Owner, $"The face frame leaves nothing of {space.Name}: {book.Say(wide)} x {book.Say(high)}.", "Make the opening larger, or use narrower sticks.", frame.Described.Place);
        return true;
    }

    /// <summary>Writes the mullion before a partition or the rail before a deck.</summary>
    public static void Member(Book book, Space space, FaceFrameSetting frame, DividingMember member, bool isAcross, ExactLength at, ImmutableArray<Term> from)
    {
        (string key, string word, QuantityKey thickness) = (member.Divider.Key, Word(isAcross), member.Size);
        string name = $"{frame.Name} {word} before {key}";
        Stick stick = isAcross ? frame.Mullion : frame.Rail;
        QuantityKey width = Book.SectionWidthOf(stick.Name), inside = QuantityKey.Of(key, "frame.in");
        (FrameEdge before, FrameEdge after) = isAcross ? (space.Edges.Bottom.Frame!, space.Edges.Top.Frame!) : (space.Edges.Left.Frame!, space.Edges.Right.Frame!);
        QuantityKey clear = book.Define(key, "frame.between", $"{name}, clear between what it stands against", new Sum(
            Term.From(isAcross ? "clear height at the face" : "clear width at the face", 1, isAcross ? space.Face.Height : space.Face.Width), Term.From("frame inside it, before", -1, before.In), Term.From("frame inside it, after", -1, after.In)));
        PartSize length = book.DefineSize(key, "frame.length", $"{name}, length", new Sum([Term.From("clear between", 1, clear), .. frame.Tenons]), Rounding.Down, "down: it must go between");
        Joints.Between(book, $"{key}.frame", name, clear, length, frame.Tenons);
        ExactLength t = book.Value(frame.Thickness), w = book.Value(width), long_ = book.Value(length.AsCut), tenon = book.ValueOr0(frame.Tenon?.AsCut), into = book.Value(before.In) - tenon;
        Add(book, frame, $"{key}.{word}", $"{key}{word[0]}", name, stick, length,
            [isAcross ? new(at - book.Value(inside), Zero, space.Z + into, w, t, long_) : new(space.X + into, Zero, at - book.Value(thickness) - book.Value(inside), long_, t, w)]);
        ImmutableArray<Term> Place(FrameEdge edge) => [.. edge.Start, .. from, Term.From("edge before the middle", -1, inside)];
        Join(book, frame, $"{key}.frame", $"{key}.{word}", name, 2, width, before.Part == after.Part
            ? [(before.Part, before.Width, "both inner edges", new Sum(Place(before)))]
            : [(before.Part, before.Width, "the edge that faces it, left or below", new Sum(Place(before))), (after.Part, after.Width, "the edge that faces it, right or above", new Sum(Place(after)))]);
        foreach (string part in member.Parts) book.Joints.Add(new(JointKind.Butt, $"{key}.{word}", Face.Inside, part, Face.FrontEdge, "glue and clamps"));
    }

    private static string Word(bool isAcross) => isAcross ? "mullion" : "face-rail";

    // A member narrower than what it covers would leave the edge of the sheet bare.
    internal static QuantityKey In(Book book, string owner, string what, string name, FaceFrameSetting frame, Named? sticks, ImmutableArray<Term> terms, Rational share)
    {
        QuantityKey key = book.Define(owner, what, name, new Sum(terms, share));
        if (book.Value(key).Sign < 0)
            book.NoteOnce("frame.narrower-than-case", Severity.Stop, owner, $"{name}: a member of the frame is {book.Say(-book.Value(key))} too narrow to cover the edge behind it.", "Name wider sticks for it.", (sticks ?? frame.Described.Of).Place);
        return key;
    }

    internal static void Add(Book book, FaceFrameSetting frame, string part, string mark, string name, Stick stick, PartSize length, ImmutableArray<Placement> places) =>
        book.Add(new(part, mark, name, PartRole.FaceFrame, stick.Name, length, Book.Uncut(Book.SectionWidthOf(stick.Name)), Book.ThicknessOf(stick.Name), places.Length, Grain.Keep, places, frame.Described.Place));

    internal static void Join(Book book, FaceFrameSetting frame, string owner, string part, string name, int ends, QuantityKey width, ImmutableArray<(string Part, QuantityKey Width, string Where, Sum? At)> into)
    {
        switch (frame.Described.Joint)
        {
            case FaceFrameJoint.Tenon when frame.Tenon is { } tenon:
                TenonSet set = TenonRule.Of(book, frame.Case, "frame.tenon-", frame.Name, tenon, frame.Thickness);
                QuantityKey long_ = TenonRule.MortiseLength(book, owner, "mortise-length", name, set, width, [], frame.Described.Place);
                TenonRule.Cut(book, part, "Tenon in the middle of both ends", set);
                foreach ((int i, (string against, QuantityKey _, string where, Sum? at)) in into.Index())
                {
                    QuantityKey from = book.Define(owner, i == 0 ? "mortise-from" : "mortise-from-2", $"{name}, its mortise in {against} from the end", new Sum([.. at?.Terms ?? [], Term.From("shoulder", 1, set.Shoulder)]));
                    book.Machinings.Add(new(against, $"Mortise in {where} for {name}, in the middle of its thickness", [("depth", set.Mortise), ("width", set.Thickness), ("length", long_), ("from the end", from)]) { By = [part] });
                    book.Joints.Add(new(JointKind.MortiseAndTenon, part, Face.Ends, against, Face.Inside, "glue") { Depth = tenon.AsCut, Thick = set.Thickness, Shoulder = set.Shoulder });
                }
                return;
            case FaceFrameJoint.Dowels:
                DowelRule.Write(book, new(owner, name, part, "both ends", ends, width, frame.Thickness), [.. into.Select(i => (i.Part, i.Width, $"{i.Where} for {name}"))]);
                break;
            default:
                (string pocket, string source) = Fastening.PocketScrew(book, book.Value(frame.Thickness));
                Fastening.CheckPocket(book, owner, name, book.Value(frame.Thickness), frame.Described.Of.Place);
                book.Hardware.Add(new(frame.Case, pocket, 2 * ends, "piece", $"face frame, 2 at each of {ends} ends; {source}"));
                break;
        }
        bool isPocket = frame.Described.Joint == FaceFrameJoint.Pocket;
        foreach ((string against, QuantityKey _, string _, Sum? _) in into)
            book.Joints.Add(new(isPocket ? JointKind.Butt : JointKind.Dowels, part, Face.Ends, against, Face.Inside, isPocket ? "glue and pocket screws from behind" : "glue and dowels"));
    }
}
