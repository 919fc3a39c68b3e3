using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>What stands in grooves or rabbets with play.</summary>
/// <param name="Owner">The key of the finding.</param>
/// <param name="Code">Of the finding.</param>
/// <param name="Words">For people: what stands in them, such as <c>The back of case</c>.</param>
/// <param name="Play">What it is smaller than its place, in all.</param>
/// <param name="Depth">Of the groove or rabbet.</param>
/// <param name="IsLoose">True where it may move to one side; false where it is glued or screwed in the middle of its place.</param>
internal sealed record Held(string Owner, string Code, string Words, QuantityKey Play, QuantityKey Depth, bool IsLoose);

/// <summary>
/// Whether a panel stays in its grooves. A loose one may lie against the bottom of one groove: it is then out of the other by all of its play, and ought to stay
/// in it by half of the depth (common practice, no source). One that is fixed in the middle is short by half of its play at both ends.
/// </summary>
internal static class GrooveHold
{
    /// <summary>Notes one that falls out, which stops the plan, or hardly holds.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="held">What is held.</param>
    /// <param name="play">The play where it was given; null for the usual one.</param>
    /// <param name="depth">The depth where it was given; null for the usual one.</param>
    /// <param name="place">Where neither was given.</param>
    public static void Look(Book book, Held held, Given? play, Given? depth, Place place)
    {
        ExactLength slack = book.Value(held.Play), deep = book.Value(held.Depth), most = held.IsLoose ? deep : deep * 2;
        // Too deep or too shallow to be cut at all has its own finding; what is usual on both sides is not for the writer to answer for.
        if (book.HasUnknown || (slack < most && (slack * 2 <= most || (play is null && depth is null)))) return;
        bool falls = slack >= most;
        ExactLength least = held.IsLoose ? slack * 2 : slack;
        string words = deep.Sign <= 0 ? $"{held.Words} has no groove to stand in: it comes out at {book.Say(deep)}."
            : falls ? $"{held.Words} falls out of its grooves: they are {book.Say(deep)} deep, and it has {book.Say(slack)} of play."
            : $"{held.Words} hardly holds in its grooves: they are {book.Say(deep)} deep, and it has {book.Say(slack)} of play.";
        string remedy = play is not null && deep >= book.Grid.Step ? $"Leave {book.SayAtMost(most / 2)} of play at most, or make the grooves {book.SayAtLeast(least)} deep or more." : $"Make the grooves {book.SayAtLeast(least)} deep or more.";
        book.NoteOnce(held.Code, falls ? Severity.Stop : Severity.Warn, held.Owner, words, $"{remedy} (common practice, no source)", (play ?? depth)?.Place ?? place);
    }
}
