using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Doors;

/// <summary>
/// Doors over or in an opening: their sizes and gaps close to what they cover, exactly. How each is made is for <see cref="DoorMaking"/>, on
/// what it hangs for <see cref="HingeRule"/>.
/// </summary>
internal static class DoorRule
{
    /// <summary>What doors of a kind cover in an opening.</summary>
    /// <param name="Across">The width they fill, with the gaps between them.</param>
    /// <param name="Up">Their height.</param>
    /// <param name="Gap">The gap.</param>
    /// <param name="Left">How far they lie over the left, or the gap there.</param>
    /// <param name="Right">The same at the right.</param>
    /// <param name="Bottom">The same below.</param>
    private sealed record Cover(Sum Across, Sum Up, QuantityKey Gap, QuantityKey Left, QuantityKey Right, QuantityKey Bottom);

    /// <summary>Writes the doors and gives the space behind them; null where they cannot be set out (a finding says why).</summary>
    /// <param name="book">Where to write.</param>
    /// <param name="within">The opening behind a face frame; the same as <paramref name="space"/> where there is none.</param>
    /// <param name="space">The opening as it is at the face.</param>
    /// <param name="doors">Its doors.</param>
    public static Space? Write(Book book, Space within, Space space, DoorFilling doors)
    {
        if (!book.Piece.DoorKinds.TryGetValue(doors.Like.Text, out DoorKind? kind))
        {
            book.Note("door.unknown-kind", Severity.Stop, space.Owner, $"There is no kind of door '{doors.Like.Text}'.",
                book.Piece.DoorKinds.Count == 0 ? $"Describe it under {book.Hand.Key("doors")} of the piece." : $"Name one of: {string.Join(", ", book.Piece.DoorKinds.Keys.Order(StringComparer.Ordinal))}.", doors.Like.Place);
            return null;
        }
        if (DoorMaking.ThicknessOf(book, space, kind) is not { } thickness) return null;
        bool inset = kind.Lie == DoorLie.Inset;
        SlabRoom? swells = SlabRoom.Define(book, space, kind, doors.Keys.Length);
        Cover cover = inset ? Inside(book, space, kind) : Over(book, space, kind);
        QuantityKey whole = book.Define(space.Prefix, "door-cover", $"{space.Name}, width its doors cover", cover.Across);
        // Doors of a pair are cut alike, at one setting: the gap where they meet takes up what is left.
        int count = doors.Keys.Length;
        var share = new Sum([Term.From("width they cover", 1, whole), .. count > 1 ? [Term.From("gap where they meet", 1 - count, cover.Gap)] : ImmutableArray<Term>.Empty, .. swells?.Less ?? []], Rational.Of(1, count));

        ExactLength thick = book.Value(thickness), gap = book.Value(cover.Gap);
        ExactLength x = space.X + (inset ? gap : -book.Value(cover.Left)), z = space.Z + (inset ? gap : -book.Value(cover.Bottom)), y = inset ? space.Y : space.Y - thick;
        ExactLength wide = book.Value(share), high = book.Value(cover.Up);
        if (wide.Sign <= 0 || high.Sign <= 0)
        {
            book.Note("door.no-size", Severity.Stop, space.Owner, $"Nothing is left for the doors of {space.Name}: they come out at {book.Say(wide)} x {book.Say(high)}.", "Make the opening larger, or leave its doors out.", doors.Like.Place);
            return null;
        }
        var made = ImmutableArray.CreateBuilder<MadeDoor>(count);
        for (int i = 0; i < count; i++)
        {
            Named key = doors.Keys[i];
            // At its hinges a door does not give way: one hung on the right leaves its room at the left.
            if (count == 1 && doors.HingesRight) x += book.ValueOr0(swells?.Room);
            var spot = new DoorSpot(key.Text, $"door {key.Text}", key.Place, share, cover.Up, x, y, z, inset ? [space.Width] : [], inset, count > 1);
            if (DoorMaking.Write(book, kind, spot) is not { } door) return null;
            made.Add(door);
            bool onLeft = count > 1 ? i == 0 : !doors.HingesRight;
            Term lower = inset ? Term.From("gap below", 1, cover.Gap) : Term.From("over the bottom", -1, cover.Bottom);
            HingeRule.Write(book, space, kind, spot, door, onLeft, onLeft ? cover.Left : cover.Right, lower, within.FaceFrame);
            DoorHandleRule.Write(book, kind, spot, door, onLeft);
            book.Show(new(door.Width, true, x, x + book.Value(door.Width), 0));
            CheckWidth(book, spot, door, count);
            x += book.Value(door.Width) + gap + book.ValueOr0(swells?.Room);
        }
        ImmutableArray<MadeDoor> all = made.MoveToImmutable();
        swells?.Check(book, space, kind, all);
        QuantityKey left = inset ? InsetGaps(book, space, cover, doors, all, swells?.Room) : OverlayGaps(book, space, cover, doors, all, swells?.Room);
        book.Chains.Add(new($"{space.Name}, doors and gaps in the width", inset ? space.Width : whole, [.. Widths(doors, all).Select(t => t with { Times = 1 }), Term.From("gaps", 1, left)], left));
        DoorsBefore before = Open(book, space, kind, doors, thickness);
        if (!inset) return within with { Doors = before };
        book.Steps.Add(new(Stage.Reading, $"Read the clear width and height of {space.Name} where its doors go, at both ends of each, before they are cut{book.Hand.Say($": setout record FILE {space.Width} WIDTH, WIDTH and {space.Height} HEIGHT, HEIGHT", $", and enter them at {Hands.Place(book.NameOf(space.Width))} and {Hands.Place(book.NameOf(space.Height))}")}. The narrowest counts.", [], null, ""));
        CheckGap(book, space, kind, gap);
        if (book.Value(left).Sign < 0)
            book.Note("door.grid-too-coarse", Severity.Stop, space.Owner, $"On a grid of {book.Say(book.Grid.Step)} the doors of {space.Name} come out {book.Say(-book.Value(left))} wider than it.", $"{book.Hand.Write("grid", book.Say(book.Piece.Unit == LengthUnit.Inch ? ExactLength.FromInches(Rational.Of(1, 32)) : ExactLength.FromMillimetres(Rational.Of(1, 2))))} in the piece.", doors.Like.Place);
        // Behind a face frame only what a door is thicker than the frame.
        QuantityKey takes = within.FaceFrame is { } frame ? Beyond(book, space, frame, thickness) : thickness;
        QuantityKey behind = book.Define(space.Prefix, "depth-behind", $"{space.Name}, clear depth behind its doors",
            new Sum(Term.From("clear depth", 1, within.Depth), Term.From(within.FaceFrame is null ? "door" : "door behind the frame", -1, takes)), Combining.Narrowest);
        if (book.Value(behind).Sign < 0)
        {
            book.Note("door.no-depth", Severity.Stop, space.Owner, $"Doors of {book.Say(thick)} do not go into {space.Name}, {book.Say(book.Value(within.Depth))} deep.", $"Make it {book.SayAtLeast(-book.Value(behind))} deeper, {book.Hand.OrWrite("lies", "overlay")}.", doors.Like.Place);
            return null;
        }
        return within with { Depth = behind, Y = within.Y + book.Value(takes), Door = takes, Doors = before };
    }

    private static QuantityKey Beyond(Book book, Space space, FaceFrameSetting frame, QuantityKey thickness)
    {
        QuantityKey past = book.Define(space.Prefix, "door-past-frame", $"{space.Name}, doors thicker than the face frame", new Sum(Term.From("door", 1, thickness), Term.From("face frame", -1, frame.Thickness)));
        return book.Define(space.Prefix, "door-beyond", $"{space.Name}, doors behind the back of the face frame",
            new Extreme([Term.From("thicker than the frame", 1, past), Term.From("the back of the frame", 1, ExactLength.Zero, new(OriginKind.Worked, "where they are no thicker"))], IsLeast: false));
    }

    /// <summary>How far open doors stand into the opening at either side; worked out where there are drawers to keep clear of them.</summary>
    private static DoorsBefore Open(Book book, Space space, DoorKind kind, DoorFilling doors, QuantityKey thickness)
    {
        if (!doors.Behind.Within().OfType<DrawerBank>().Any()) return new(null, null);
        bool isCup = HingeRule.IsCup(kind), isPair = doors.Keys.Length > 1;
        QuantityKey clear = book.Define(space.Prefix, "door-clear", $"{space.Name}, an open door and its hinges inside of the opening", kind.Clear?.Stated
            ?? (Working)(isCup ? Usual.Or(book, null, "HG9", "cup hinges; read their leaflet")
            : kind.Lie == DoorLie.Inset ? new Sum(Term.From("door, opened square", 1, thickness))
            : new Stated(ExactLength.Zero, new(OriginKind.Rule, "it swings clear", "geometry"))));
        return new(isPair || !doors.HingesRight ? clear : null, isPair || doors.HingesRight ? clear : null);
    }

    private static Cover Over(Book book, Space space, DoorKind kind)
    {
        TradeRule rule = TradeRules.Get(book.Piece.Unit == LengthUnit.Inch ? "RV1" : "RV2");
        QuantityKey gap = book.Define(space.Prefix, "door-gap", $"{space.Name}, gap between doors",
            kind.Gap?.Stated ?? new Stated(rule.Length, new(OriginKind.Rule, "usual gap between fronts", rule.Cited)));
        QuantityKey Side(Edge edge, string side) =>
            OverlayRule.Of(book, space, kind.Overlay, kind.Lie == DoorLie.HalfOverlay && (edge.Kind == EdgeKind.CaseOutside || edge.Frame is not null) ? edge with { Kind = EdgeKind.Shared } : edge, gap, side);
        QuantityKey left = Side(space.Edges.Left, "left"), right = Side(space.Edges.Right, "right"), top = Side(space.Edges.Top, "top"), bottom = Side(space.Edges.Bottom, "bottom");
        return new(
            new(Term.From("clear width at the face", 1, space.Face.Width), Term.From("over the left", 1, left), Term.From("over the right", 1, right)),
            new(Term.From("clear height at the face", 1, space.Face.Height), Term.From("over the top", 1, top), Term.From("over the bottom", 1, bottom)), gap, left, right, bottom);
    }

    /// <summary>An inset door goes by the opening as it is read, less its gaps.</summary>
    private static Cover Inside(Book book, Space space, DoorKind kind)
    {
        TradeRule rule = TradeRules.Get("DO1");
        QuantityKey gap = book.Define(space.Prefix, "door-gap", $"{space.Name}, gap round its doors",
            kind.Gap?.Stated ?? new Stated((rule.Series[0] + rule.Series[1]) / 2, new(OriginKind.Rule, "middle of 1/16 to 3/32 in", rule.Cited)));
        return new(new(Term.From("clear width", 1, space.Width), Term.From("gaps, left and right", -2, gap)),
            new(Term.From("clear height", 1, space.Height), Term.From("gaps, above and below", -2, gap)), gap, gap, gap, gap);
    }

    private static QuantityKey OverlayGaps(Book book, Space space, Cover cover, DoorFilling doors, ImmutableArray<MadeDoor> made, QuantityKey? room)
    {
        TradeRule seen = TradeRules.Get("FR1");
        string limits = $"within 1/16 in of what was meant: {seen.Cited}";
        ExactLength meant = made.Length > 1 ? book.Value(cover.Gap) + book.ValueOr0(room) : ExactLength.Zero;
        bool isPair = made.Length > 1;
        QuantityKey beside = Gap(book, space, space.Prefix, "door-beside", $"{space.Name}, {(isPair ? "gap where its doors meet" : "door narrower than what it covers")}",
            new([.. cover.Across.Terms, .. Widths(doors, made)]), isPair ? ExactLength.Max(ExactLength.Zero, meant - seen.Length) : -seen.Length, meant + seen.Length, limits);
        for (int i = 0; i < made.Length; i++)
            Gap(book, space, doors.Keys[i].Text, "lower", $"door {doors.Keys[i].Text}, lower than what it covers", new([.. cover.Up.Terms, Term.From("door, as made", -1, made[i].Height)]), -seen.Length, seen.Length, limits);
        return beside;
    }

    private static QuantityKey InsetGaps(Book book, Space space, Cover cover, DoorFilling doors, ImmutableArray<MadeDoor> made, QuantityKey? room)
    {
        TradeRule rule = TradeRules.Get("DO1");
        ExactLength half = (rule.Series[1] - rule.Series[0]) / 2, meant = book.Value(cover.Gap);
        string limits = $"within 1/64 in of the gap meant, at each side: {rule.Cited}";
        QuantityKey Add(string owner, string what, string name, Sum sum, int sides, ExactLength more = default) =>
            Gap(book, space, owner, what, name, sum, ExactLength.Max(ExactLength.Zero, (meant - half) * sides) + more, ((meant + half) * sides) + more, limits);
        QuantityKey beside = Add(space.Prefix, "door-gaps", $"{space.Name}, gaps beside its doors, all together", new([Term.From("clear width", 1, space.Width), .. Widths(doors, made)]), made.Length + 1, book.ValueOr0(room));
        for (int i = 0; i < made.Length; i++)
            Add(doors.Keys[i].Text, "gaps-in-height", $"door {doors.Keys[i].Text}, gaps above and below together", new(Term.From("clear height", 1, space.Height), Term.From("door, as made", -1, made[i].Height)), 2);
        return beside;
    }

    private static IEnumerable<Term> Widths(DoorFilling doors, ImmutableArray<MadeDoor> made) => made.Select((m, i) => Term.From($"door {doors.Keys[i].Text}, as made", -1, m.Width));

    private static QuantityKey Gap(Book book, Space space, string owner, string what, string name, Sum sum, ExactLength least, ExactLength most, string limits)
    {
        QuantityKey key = book.Define(owner, what, name, sum);
        book.Gaps.Add(new(key, name, least, most, limits) { Group = space.Owner });
        return key;
    }

    private static void CheckWidth(Book book, DoorSpot spot, MadeDoor door, int count)
    {
        TradeRule most = TradeRules.Get("DO6");
        ExactLength wide = book.Value(door.Width);
        if (wide > most.Length)
            book.Note("door.wide", Severity.Warn, spot.Key, $"{spot.Name} is {book.Say(wide)} wide: it hangs heavy on its hinges.",
                $"{(count == 1 ? "Use a pair" : "Divide the opening")}: up to {book.Say(most.Length)} is usual. ({most.Cited})", spot.Place);
    }

    private static void CheckGap(Book book, Space space, DoorKind kind, ExactLength gap)
    {
        ExactLength least = ExactLength.FromInches(Rational.Of(1, 32));
        if (gap < least && kind.Gap is { } given)
            book.NoteOnce("door.no-gap", Severity.Warn, space.Owner, $"Inset doors with a gap of {book.Say(gap)} bind as soon as anything moves.",
                $"Give them {book.Say(TradeRules.Get("DO1").Series[0])} or more, or plane them to fit as they are hung. ({TradeRules.Get("DO1").Cited})", given.Place);
    }
}
