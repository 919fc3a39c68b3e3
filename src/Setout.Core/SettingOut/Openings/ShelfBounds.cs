using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Openings;

/// <summary>Whether anything is left of a shelf behind its setback, and of its length beside its play; and whether it stays on its pins.</summary>
internal static class ShelfBounds
{
    /// <summary>How far a pin stands out, so that a shelf pushed against one end stays on those at the other: common practice, no source.</summary>
    private static readonly ExactLength s_pin = ExactLength.FromInches(Rational.Of(1, 4));

    /// <summary>True where the setback leaves a shelf, with its strip where it has one; else a finding says how much it may be.</summary>
    public static bool HasDepth(Book book, Space space, Shelves shelves, QuantityKey setback)
    {
        ExactLength deep = book.Value(space.Depth), back = book.Value(setback), strip = Strip(book, shelves), wants = ExactLength.Max(strip, book.Grid.Step.ToExact());
        if (book.HasUnknown) return true;
        if (book.Value(space.Width) < book.Grid.Step)
        {
            book.Note("shelf.no-width", Severity.Stop, space.Owner, $"{space.Name} is {book.Say(book.Value(space.Width))} wide: no shelf goes in on a grid of {book.Say(book.Grid.Step)}.", $"Make it {book.Say(book.Grid.Step)} wide or more.", space.Place);
            return false;
        }
        if (deep - back >= wants) return true;
        string words = strip.Sign > 0 ? $"A strip {book.Say(strip)} thick does not go under shelves of {space.Name}: they are {book.Say(deep - back)} deep." : $"Shelves of {space.Name}, {book.Say(deep)} deep and set back by {book.Say(back)}, have no depth left.";
        book.Note("shelf.no-depth", Severity.Stop, space.Owner, words,
            shelves.Setback is not null && deep >= wants ? $"Set them back by {book.SayAtMost(deep - wants)} or less." : $"Make {space.Name} {book.SayAtLeast(wants + back - deep)} deeper{(strip.Sign > 0 ? ", or use a thinner strip" : "")}.",
            shelves.Setback?.Place ?? shelves.Strip?.Place ?? space.Place);
        return false;
    }

    private static ExactLength Strip(Book book, Shelves shelves) =>
        shelves.Strip is { } strip && book.Piece.Materials.ContainsKey(strip.Of.Text) ? book.Value(Book.ThicknessOf(strip.Of.Text)) : ExactLength.Zero;

    /// <summary>True where the play leaves a shelf; else a finding. One with more play than its pins stand out may fall, which is warned of.</summary>
    public static bool HasLength(Book book, Space space, Shelves shelves, QuantityKey play)
    {
        ExactLength wide = book.Value(space.Width), slack = book.Value(play);
        bool isLeft = wide - slack >= book.Grid.Step;
        if (isLeft && slack <= s_pin) return true;
        book.Note("shelf.off-its-pins", isLeft ? Severity.Warn : Severity.Stop, space.Owner,
            isLeft ? $"Shelves of {space.Name} with {book.Say(slack)} of play, pushed against one end, fall off the pins at the other." : $"A play of {book.Say(slack)} leaves nothing of the shelves of {space.Name}, {book.Say(wide)} wide.",
            wide > s_pin ? $"Leave {book.SayAtMost(s_pin)} at most{(isLeft ? $", or pack the sides out by {book.SayAtLeast((slack - s_pin) / 2)} where the pins are" : "")}. (common practice, no source)" : $"Make {space.Name} wider.", shelves.Play?.Place ?? shelves.Keys[0].Place);
        return isLeft;
    }

    /// <summary>True where the holes of a row stand apart; else a finding. With less wood between them than they are wide it is a warning.</summary>
    public static bool HasPitch(Book book, Space space, Shelves shelves, QuantityKey pitch, ExactLength hole)
    {
        ExactLength apart = book.Value(pitch);
        if (apart >= hole * 2) return true;
        bool meet = apart <= hole;
        book.Note("shelf.pitch-too-fine", meet ? Severity.Stop : Severity.Warn, space.Owner, meet ? $"Holes of {book.Say(hole)} on a pitch of {book.Say(apart)} run into one another." : $"Holes of {book.Say(hole)} on a pitch of {book.Say(apart)} leave {book.Say(apart - hole)} between them.",
            $"Make {book.Hand.Key("pitch")} {book.SayAtLeast(hole * 2)} or more. (common practice, no source)", shelves.Pitch?.Place ?? shelves.Keys[0].Place);
        return !meet;
    }

    /// <summary>True where two rows of holes stand on what carries the shelves, the one before the other; else a finding.</summary>
    public static bool HasRows(Book book, Space space, Shelves shelves, QuantityKey front, QuantityKey back, ExactLength hole)
    {
        ExactLength wants = book.Value(front) + book.Value(back) + (hole * 2);
        foreach (Edge edge in Carriers.Beside(space))
        {
            if (book.Parts.Find(p => p.Key == edge.Part) is not { Placements: [var box, ..] } || box.SizeY >= wants) continue;
            book.Note("shelf.rows-meet", Severity.Stop, space.Owner, $"The rows of holes for the shelves of {space.Name} want {book.Say(wants)} from front to back; {edge.Part} has {book.Say(box.SizeY)}.",
                $"Make it {book.SayAtLeast(wants - box.SizeY)} deeper, {book.Hand.OrWrite("fit", "fixed")}{(shelves.Setback is null ? "" : ", or set them back less")}. ({TradeRules.Get("SH7").Cited})", shelves.Setback?.Place ?? shelves.Keys[0].Place);
            return false;
        }
        return true;
    }
}
