using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>
/// What dowels want of the stock: a dowel is half of what it stands in at most, so that as much wood stays beside it as it is thick (a third to half is usual,
/// common practice, no source); a hole goes into the face at least as far as the dowel's own half; and holes from both ends do not meet.
/// </summary>
internal static class DowelChecks
{
    // A 1/2 in sheet reads a little less.
    private static readonly ExactLength s_underLabel = ExactLength.FromInches(Rational.Of(1, 32));

    // Less than 1/32 in beside a hole on either side breaks out as it is bored.
    private static readonly ExactLength s_breaksOut = ExactLength.FromInches(Rational.Of(1, 16));

    /// <summary>Notes what is out of bounds, the worst of each kind.</summary>
    public static void Look(Book book, DowelRow row, (QuantityKey Diameter, QuantityKey End, QuantityKey Face, QuantityKey First, QuantityKey Left) keys, ImmutableArray<(string Part, QuantityKey Thickness, string Where)> into)
    {
        ExactLength thick = book.Value(row.Thickness), dowel = book.Value(keys.Diameter), face = book.Value(keys.Face), least = dowel * 2;
        Part? ended = book.Parts.Find(p => p.Key == row.Ended);
        if (book.HasUnknown || thick.Sign <= 0 || into.Any(i => book.Value(i.Thickness).Sign <= 0)) return;
        Place place = row.Place.IsKnown ? row.Place : ended?.Place ?? default;
        void Say(string code, bool stops, string words, string remedy) => book.NoteOnce(code, stops ? Severity.Stop : Severity.Warn, row.Owner, words, $"{remedy} (common practice, no source)", place);
        string usual = $"Use stock of {book.Say(least)}, or another joint: a dowel is a third to half of what it stands in.";
        if (thick < dowel + s_breaksOut) Say("dowel.too-thick", true, $"Dowels of {book.Say(dowel)} do not go into the ends of {row.Name}, {book.Say(thick)} thick.", usual);
        else if (least > thick + s_underLabel) Say("dowel.too-thick", false, $"Dowels of {book.Say(dowel)} leave {book.Say((thick - dowel) / 2)} beside them in the ends of {row.Name}, {book.Say(thick)} thick.", usual);
        string thinnest = into.MinBy(i => book.Value(i.Thickness)).Part, deeper = $"Use stock of {book.SayAtLeast(book.Value(keys.Left) + (dowel / 2))} there, or another joint.";
        if (face.Sign <= 0) Say("dowel.no-depth", true, $"Nothing is left for dowels in the face of {thinnest}: {book.Say(book.Value(keys.Left))} stay behind a hole.", deeper);
        else if (face * 2 < dowel) Say("dowel.no-depth", false, $"Dowels of {book.Say(dowel)} go {book.Say(face)} into the face of {thinnest}: less than half of what they are thick.", deeper);
        ExactLength first = book.Value(keys.First), wide = book.Value(row.Width);
        if (wide.Sign > 0 && first < dowel)
            Say("dowel.near-edge", first * 2 <= dowel, $"Two dowels of {book.Say(dowel)} in a width of {book.Say(wide)} leave {book.Say(first - (dowel / 2))} to the edges of {row.Name}.", $"Make it {book.SayAtLeast(dowel * 4)} wide, or use another joint.");
        // What is not the width of the row lies between the two ends.
        ExactLength deep = book.Value(keys.End) * 2;
        if (ended is not null && book.Value(wide == book.Value(ended.Width.AsCut) ? ended.Length.AsCut : ended.Width.AsCut) is { Sign: > 0 } longest && longest <= deep)
            Say("dowel.holes-meet", true, $"Holes of {book.Say(deep / 2)} from both ends of {row.Name} meet: it is {book.Say(longest)} long.", $"Make it longer than {book.Say(deep)}, or use another joint.");
    }
}
