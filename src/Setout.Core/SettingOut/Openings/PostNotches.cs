using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Openings;

/// <summary>Shelves that go past the posts beside them, towards the outside of a frame, with a notch round each.</summary>
/// <param name="Past">How far they go past the inner faces.</param>
/// <param name="Sides">On how many sides.</param>
/// <param name="Left">How far at the left.</param>
internal sealed record PostNotches(QuantityKey Past, int Sides, ExactLength Left)
{
    /// <summary>What they are longer, as a term.</summary>
    public ImmutableArray<Term> Terms => [Term.From("past the posts", Sides, Past)];

    /// <summary>The notches of shelves; null where they stop at the posts.</summary>
    public static PostNotches? Of(Book book, Space space, Shelves shelves, QuantityKey setback)
    {
        if (shelves.PastPosts is not { } given) return null;
        bool IsPost(Edge edge) => edge.Kind == EdgeKind.Frame && edge.Part.Length == 0 && space.Railing is not null;
        (bool left, bool right) = (IsPost(space.Edges.Left), IsPost(space.Edges.Right));
        if (!left && !right)
        {
            book.Note("shelf.past-idle", Severity.Stop, space.Owner, $"There is no bare post beside {space.Name} to go past.", $"Leave {book.Hand.Key("past posts")} out.", given.Place);
            return null;
        }
        QuantityKey past = book.Define(space.Prefix, "past-posts", $"{space.Name}, its shelves past the inner faces of the posts", given.Stated);
        ExactLength wide = book.Value(space.Railing!.PostWidth);
        if (book.Value(past) > wide)
            book.Note("shelf.past-too-far", Severity.Stop, space.Owner, $"Shelves that go {book.Say(book.Value(past))} past posts {book.Say(wide)} wide stand out of the frame.", $"Make it {book.Say(wide)} at most.", given.Place);
        book.Define(space.Prefix, "notch", $"{space.Name}, notches in its shelves, front to back", new Sum(Term.From("post, front to back", 1, space.Railing.PostDepth),
            Term.From("behind the face of the posts", -1, space.Y - space.Railing.Y, new(OriginKind.Worked, "setback of the bay")), Term.From("setback", -1, setback)));
        return new(past, (left ? 1 : 0) + (right ? 1 : 0), left ? book.Value(past) : Zero);
    }

    /// <summary>Writes those of one shelf.</summary>
    public void Write(Book book, Space space, string shelf)
    {
        book.Machinings.Add(new(shelf, "notch the corners round the posts, front and back", [("across", Past), ("front to back", QuantityKey.Of(space.Prefix, "notch"))]) { On = Face.Ends });
        book.Joints.Add(new(JointKind.Notch, shelf, Face.Ends, space.Railing!.Post, Face.Inside, "glue and a screw into each post") { Depth = Past });
    }
}
