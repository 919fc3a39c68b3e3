using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Tops;

/// <summary>What a well wants of the rest: top beside it to feed the work over, and wood that it does not cut away.</summary>
internal static class WellChecks
{
    /// <summary>Top beside the opening, where so much of it is wanted.</summary>
    public static void Feed(Book book, Well well, string name, ReadOnlySpan<(string Side, QuantityKey Has, Given? Wanted)> sides)
    {
        foreach ((string side, QuantityKey has, Given? wanted) in sides)
        {
            if (wanted is not { } w || book.Value(has) >= w.Value) continue;
            string where = side is "left" or "right" ? $"on the {side}" : side == "front" ? "in front" : "behind";
            book.Note("well.feed-short", Severity.Warn, well.Key, $"The top supports the work for {book.Say(book.Value(has))} {where} of {name}; {book.Say(w.Value)} is wanted.",
                $"Move the well by {book.Say(w.Value - book.Value(has))}, or make the top so much longer.", w.Place);
        }
    }

    /// <summary>Top left round the opening, so that it does not break off.</summary>
    public static void Strips(Book book, Well well, string name, ReadOnlySpan<(string Side, QuantityKey Has)> sides)
    {
        TradeRule least = TradeRules.Get("WL6");
        foreach ((string side, QuantityKey has) in sides)
        {
            ExactLength left = book.Value(has);
            // Past the edge has its own finding.
            if (left.Sign < 0 || left >= least.Length) continue;
            book.Note("well.thin-strip", Severity.Warn, well.Key, left.Sign == 0 ? $"The opening of {name} cuts through the {side} of the top." : $"Only {book.Say(left)} of the top is left between the opening of {name} and its {side}.",
                $"Move the well by {book.Say(least.Length - left)} or make the top so much larger; where the machine must stand there, screw a rail under what is left. ({least.Cited})", (side is "left end" or "right end" ? well.FromLeft : well.FromFront).Place);
        }
    }

    /// <summary>Two openings in one place.</summary>
    public static void Apart(Book book, LaidTop laid)
    {
        ExactLength At(Well well, string what) => book.Value(QuantityKey.Of(well.Key, what));
        for (int i = 1; i < laid.Top.Wells.Length; i++)
        {
            Well well = laid.Top.Wells[i];
            foreach (Well other in laid.Top.Wells.Take(i))
            {
                ExactLength across = Shared("from-left", "width"), along = Shared("from-front", "depth");
                if (across.Sign > 0 && along.Sign > 0)
                    book.Note("well.overlap", Severity.Stop, well.Key, $"The openings of wells {other.Key} and {well.Key} overlap by {book.Say(ExactLength.Min(across, along))}.",
                        $"Move one of them {book.Say(ExactLength.Min(across, along))} or more.", well.FromLeft.Place);

                ExactLength Shared(string from, string size) => ExactLength.Min(At(well, from) + At(well, size), At(other, from) + At(other, size)) - ExactLength.Max(At(well, from), At(other, from));
            }
        }
    }

    /// <summary>What stands where the well will be. It was there first: something else must carry what it carried.</summary>
    /// <param name="room">What the well takes, in the frame of the piece.</param>
    public static void Interrupts(Book book, Well well, string name, Placement room, LaidTop laid)
    {
        foreach (Part part in book.Parts.Where(p => !laid.Parts.Contains(p.Key) && p.Role != PartRole.EdgeStrip).ToList())
        {
            if (!part.Placements.Any(p => p.Within(room).Sign > 0)) continue;
            string instead = part.Role is PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom or PartRole.FalseFront or PartRole.Door or PartRole.Shelf
                ? $"Take what fills the opening under the well out of the piece, or move the well clear of it."
                : well.Bay is not null ? $"Let the opening begin clear of it, with {book.Hand.Key("from front")} and {book.Hand.Key("depth")}, or take the {part.Name} out and see what carries the top there."
                : part.Role is PartRole.Rail or PartRole.Tie
                ? $"Let the sides of the well go from the next rail or post on its left to that on its right and screw the ends of the {part.Name} to them: they carry the top there instead."
                : $"Move the well clear of it, or end the {part.Name} at the sides of the well and screw it to them.";
            book.Note("well.interrupts", Severity.Warn, well.Key, $"The {name} cuts into the {part.Name}.", instead, well.FromLeft.Place);
        }
    }

    /// <summary>A machine that two do not lift is more than is looked into here.</summary>
    public static void Heavy(Book book, Well well, string name)
    {
        if (!IsForMore(book, well)) return;
        book.Note("well.heavy", Severity.Note, well.Key, $"The platform of {name} carries {Weight(book, well)} and more as it works; whether it and what it hangs on bend too much is not worked out here.",
            "Stand a post or a leg under the bearers, or carry the machine on a stand of its own on the floor.", well.Place);
    }

    /// <summary>A load as it was given, such as <c>900 lb</c>.</summary>
    public static string Weight(Book book, Well well) => $"{well.Load} {(book.Piece.Unit == LengthUnit.Inch ? "lb" : "kg")}";

    /// <summary>The same in words that follow its name; empty where that is not said.</summary>
    public static string WhichWeighs(Book book, Well well) => well.Load == 0 ? "" : $", which weighs {Weight(book, well)}";

    /// <summary>Whether one person lifts the machine: up to 51 lb (23 kg), the load constant of the NIOSH lifting equation. A machine of no known weight is for two.</summary>
    public static bool IsForOne(Book book, Well well) => well.Load > 0 && well.Load <= One(book);

    /// <summary>Whether it is more than two lift.</summary>
    public static bool IsForMore(Book book, Well well) => well.Load > 2 * One(book);

    private static int One(Book book) => book.Piece.Unit == LengthUnit.Inch ? 51 : 23;

    /// <summary>What carries the machine: bearers on the sides, and the sides on what stands beside them.</summary>
    /// <param name="sides">The sides of the well, in the frame of the piece.</param>
    public static void Load(Book book, Well well, string name, bool hasBearers, ReadOnlySpan<Placement> sides)
    {
        string weight = WhichWeighs(book, well);
        int hanging = 0;
        foreach (Placement side in sides)
        {
            // What a shim or a shaving brings together counts as touching.
            ExactLength hair = ExactLength.FromInches(Rational.Of(1, 32));
            Placement near = side with { X = side.X - hair, Y = side.Y - hair, SizeX = side.SizeX + (hair * 2), SizeY = side.SizeY + (hair * 2) };
            if (!book.Parts.Any(p => p.Role is PartRole.Post or PartRole.Rail or PartRole.Tie or PartRole.SlidePanel or PartRole.Side or PartRole.Partition or PartRole.Deck or PartRole.Back && p.Placements.Any(b => b.Within(near).Sign > 0))) hanging++;
        }
        if (hanging > 0)
            book.Note("well.sides-hang", well.Load > 0 ? Severity.Warn : Severity.Note, well.Key, $"{(hanging == 2 ? "Both sides" : "One side")} of {name} touch{(hanging == 2 ? "" : "es")} no post, rail or panel: {(hanging == 2 ? "they hang" : "it hangs")} from the top with the {well.Machine}{weight}.",
                "Let the opening reach from the front rail to the back rail, set the well beside a post or a partition, or screw cleats into the corner of sides and top and let this stand.", well.Place);
        Heavy(book, well, name);
        if (hasBearers) return;
        book.Note("well.no-bearers", Severity.Warn, well.Key, $"Nothing but screws into its edges carries the platform of {name} with the {well.Machine}{weight}.", "Name the sticks of its bearers, as in 'bearers: NAME'.", well.Place);
    }
}
