using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Doors;

/// <summary>
/// Where the hinges sit along a door: the outer ones a figure of their own from its ends, those between them evenly. On a door too low for that each has an
/// even share of the height; on one too low for that too, there is no room for them.
/// </summary>
internal static class HingePlaces
{
    /// <summary>Writes the place of each hinge above the lower end of the door.</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="space">The opening, which decides how high its doors are.</param>
    /// <param name="kind">The kind of door.</param>
    /// <param name="spot">The door.</param>
    /// <param name="door">As it comes out.</param>
    /// <param name="length">Of a butt hinge; null for cups.</param>
    /// <param name="count">How many hinges, two or more.</param>
    public static IEnumerable<(string Name, QuantityKey Key)> Of(Book book, Space space, DoorKind kind, DoorSpot spot, MadeDoor door, QuantityKey? length, int count)
    {
        TradeRule rule = TradeRules.Get(length is null ? "HG3" : "HG6"), least = TradeRules.Get(length is null ? "HG10" : "HG11");
        // A butt ends its own length from the end of the door.
        Working usual = length is { } leaf
            ? new Sum(Term.From("length of the hinge, and half of it", Rational.Of(3, 2), leaf))
            : new Stated(rule.Length, new(OriginKind.Rule, "a starting point", rule.Cited));
        ExactLength high = book.Value(door.Height), apart = length is { } long_ ? book.Value(long_) * least.Share : least.Length;
        ExactLength from = length is { } own ? book.Value(own) * Rational.Of(3, 2) : rule.Length;
        bool isLow = high - (from * 2) < apart * (count - 1);
        QuantityKey end = book.Define(spot.Key, "hinge-end", $"{spot.Name}, middle of its outer hinges from its ends",
            isLow ? new Sum([Term.From("low door: half of the share of each hinge", 1, door.Height)], Rational.Of(1, 2 * count)) : usual);
        if (high < apart * count && high.Sign > 0) TooLow(book, space, kind, spot, (high, apart * count), length is not null, least);
        for (int i = 0; i < count; i++)
        {
            Rational up = Rational.Of(i, count - 1), ends = Rational.One - (up * 2);
            ImmutableArray<Term> terms = [.. up.Sign == 0 ? Array.Empty<Term>() : [Term.From("height of the door", up, door.Height)], .. ends.Sign == 0 ? Array.Empty<Term>() : [Term.From("from the end", ends, end)]];
            PartSize place = book.DefineSize(spot.Key, $"hinge-{i + 1}", $"{spot.Name}, hinge {i + 1} above its lower end", new Sum(terms), Rounding.Nearest, "to the nearest step", Scatter.Placed);
            yield return ($"hinge {i + 1} above the lower end", place.ToCut);
        }
    }

    private static void TooLow(Book book, Space space, DoorKind kind, DoorSpot spot, (ExactLength Is, ExactLength Wants) high, bool isButt, TradeRule least)
    {
        string hinges = isButt ? "butts" : "cup hinges", other = isButt ? $", or read the length of smaller ones{book.Enter(QuantityKey.Of(kind.Name, "hinge.length"), "LENGTH")}" : "";
        book.NoteOnce("door.too-low", Severity.Stop, spot.Key, $"{spot.Name} is {book.Say(high.Is)} high: its {hinges} want {book.Say(high.Wants)}.",
            $"Make the opening {book.SayAtLeast(high.Wants - high.Is)} higher{other}. ({least.Cited})", space.Place);
    }
}
