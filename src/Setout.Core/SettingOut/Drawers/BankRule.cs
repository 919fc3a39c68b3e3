using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>
/// A bank of drawers in an opening: fronts over it or in it with even gaps, closing exactly; behind each front a box.
/// </summary>
internal static class BankRule
{
    public static void Write(Book book, Space space, DrawerBank bank)
    {
        if (!book.Piece.DrawerKinds.TryGetValue(bank.Like.Text, out DrawerKind? kind))
        {
            book.Note("drawer.unknown-kind", Severity.Stop, space.Owner, $"There is no kind of drawer '{bank.Like.Text}'.",
                $"Name one of: {string.Join(", ", book.Piece.DrawerKinds.Keys.Order(StringComparer.Ordinal))}.", bank.Like.Place);
            return;
        }
        bool isOnRails = kind.Slides == SlideWay.Runners && space.Below is not null && bank.Drawers.Length == 1;
        if (!isOnRails && (!space.TakesSlides || (kind.Slides == SlideWay.Runners && space.Bearers is not null)))
        {
            bool runs = kind.Slides == SlideWay.Runners;
            book.Note("frame.nothing-to-screw-to", Severity.Stop, space.Owner, runs ? $"The runners in {space.Name} have nothing to screw to between the posts, and only one drawer runs on rails." : $"The slides in {space.Name} have nothing to screw to between the posts.",
                runs ? "Divide the opening with rails, one drawer above each pair, or add 'slide panels: MATERIAL' to the opening of the frame." : "Add 'slide panels: MATERIAL' or 'bearers: STICK' to the opening of the frame.", space.Place);
            return;
        }
        if (!FrontedBoxRule.IsPossible(book, kind) || book.PanelOf(kind.Front, space.Owner) is not { } front) return;
        bool isInset = kind.Fronts == FrontWay.Inset, isInch = book.Piece.Unit == Measures.Text.LengthUnit.Inch;
        TradeRule gapRule = TradeRules.Get(isInset ? (isInch ? "RV4" : "RV4M") : isInch ? "RV1" : "RV2");
        QuantityKey gap = book.Define(space.Prefix, "front-gap", $"{space.Name}, gap {(isInset ? "round its" : "between")} fronts",
            kind.Gap?.Stated ?? new Stated(gapRule.Length, new(OriginKind.Rule, isInset ? "usual gap round inset fronts" : "usual gap between false fronts", gapRule.Cited)));
        if (space.Doors is not null && !isInset)
        {
            book.Note("drawer.front-behind-door", Severity.Stop, space.Owner, $"The fronts of the drawers in {space.Name} lie on the face, where the doors before them are.",
                $"Give drawers behind doors a kind of their own with {book.Hand.Key("fronts", "inset")}.", bank.Like.Place);
            return;
        }
        QuantityKey left = OverlayRule.Of(book, space, kind.Overlay, space.Edges.Left, gap, "left", kind.Fronts), right = OverlayRule.Of(book, space, kind.Overlay, space.Edges.Right, gap, "right", kind.Fronts);
        QuantityKey top = OverlayRule.Of(book, space, kind.Overlay, space.Edges.Top, gap, "top", kind.Fronts), bottom = OverlayRule.Of(book, space, kind.Overlay, space.Edges.Bottom, gap, "bottom", kind.Fronts);

        QuantityKey cover = book.Define(space.Prefix, "cover-height", $"{space.Name}, height the fronts cover",
            new Sum(isInset ? Term.From("clear height", 1, space.Height) : Term.From("clear height at the face", 1, space.Face.Height), Term.From("over the top", 1, top), Term.From("over the bottom", 1, bottom)));
        ExactLength lower = book.Value(space.Face.Height) - book.Value(space.Height);
        if (!isInset && book.IsRead(space.Height) && lower >= book.Grid.Step.ToExact())
            book.Note("opening.lower-than-set", Severity.Warn, space.Owner, $"{space.Name} reads {book.Say(lower)} lower than it was set out; its drawers were shared out over {book.Say(book.Value(space.Face.Height))}.",
                $"Move the deck or rail back to its place, or give the opening a height of {book.Say(book.Value(space.Height))} in the piece file.", space.Place);
        // An inset front may come down before a rail that stands back for it.
        bool isOverBottom = !isInset || space.Edges.Bottom.IsCovered;
        if (space.Edges.Bottom.IsCovered) BedRule.CheckCovered(book, space, isInset, Book.ThicknessOf(front.Name));
        int count = bank.Drawers.Length;
        ImmutableArray<Sharer> sharers = [.. bank.Drawers.Select(d => new Sharer(d.Key, "front.height", $"drawer {d.Key}, front height", d.Front))];
        ImmutableArray<Term> gaps = count > 1 ? [Term.From("gaps between fronts", count - 1, gap)] : [];
        string closes = $"{space.Name}, fronts and gaps in the height";
        if ((bank.Graduated is { } by ? Graduated.Share(book, closes, by, cover, gaps, sharers) : Sharing.Share(book, closes, cover, gaps, sharers, restIsCut: true)) is not { } shared) return;
        ImmutableArray<PartSize> heights = [.. shared.Select((h, i) => book.Core(h, bank.Drawers[i].Key, "front.core.height", $"drawer {bank.Drawers[i].Key}, front height", PartRole.FalseFront, front, 2))];
        // What is inset must go in where the opening is narrowest.
        Sum across = new(isInset ? Term.From("clear width", 1, space.Width) : Term.From("clear width at the face", 1, space.Face.Width), Term.From("over the left", 1, left), Term.From("over the right", 1, right));

        if (!HasWidth(book, space, kind, book.Value(across), bank.Like.Place)) return;
        ImmutableArray<PartSize>.Builder widths = ImmutableArray.CreateBuilder<PartSize>(count);
        ExactLength gapValue = book.Value(gap), x = space.X - book.Value(left);
        ExactLength down = space.Z + book.Value(space.Height) + book.Value(top);
        for (int i = 0; i < count; i++)
        {
            Drawer drawer = bank.Drawers[i];
            PartSize width = book.DefineSize(drawer.Key, "front.width", $"drawer {drawer.Key}, front width", across, PartRole.FalseFront, front, 2, isInset ? (Rounding.Down, "down: it must go inside") : null);
            widths.Add(width);
            ExactLength high = book.Value(heights[i].Made), wide = book.Value(width.Made), thick = book.Value(Book.ThicknessOf(front.Name));
            down -= high;
            // The figure of a front runs across, as its width is cut along the grain.
            book.Add(new($"{drawer.Key}.front", $"{drawer.Key}f", $"drawer {drawer.Key} {(!kind.HasFalseFront ? "" : isInset ? "inset " : "false ")}front", PartRole.FalseFront, front.Name, width, heights[i],
                Book.ThicknessOf(front.Name), 1, front.Grain, [new(x, isInset ? space.Y : space.Y - thick, down, wide, thick, high)], drawer.Place, BoxRule.Held(space, drawer.Key))
            { Seen = new(2, 2) });
            book.Show(new(heights[i].Made, false, down, down + high, 0, space.X));

            Sum slot = new([
                Term.From(EdgeRule.Covers(front) ? "front, with its edges" : "front, as cut", 1, heights[i].Made),
                .. i == 0 && !isInset ? [Term.From("over the top", -1, top)] : ImmutableArray<Term>.Empty,
                .. i == count - 1 && isOverBottom ? [Term.From("over the bottom", -1, bottom)] : ImmutableArray<Term>.Empty,
            ]);
            QuantityKey slotKey = book.Define(drawer.Key, "slot", $"drawer {drawer.Key}, height behind its front within the opening", slot);
            ExactLength slotZ = i == count - 1 && isOverBottom ? down + book.Value(bottom) : down;
            var behind = new DrawerSlot(slotKey, slotZ, i == 0, isOnRails);
            if (kind.HasFalseFront) BoxRule.Write(book, space, kind, drawer, behind);
            else FrontedBoxRule.Write(book, space, kind, drawer, front, width, behind);
            BearerRule.Write(book, space, kind, drawer);
            HandleRule.Write(book, kind, drawer, width, heights[i]);
            down -= gapValue;
        }
        FrontGaps.Write(book, space, bank, cover, gap, across, heights, widths.ToImmutable());
        FrontRoom.Check(book, space, kind, bank, front, gap, heights);
        // The lowest front stands by its own figure; spacers only come between fronts.
        ExactLength below = space.Z - (down + gapValue);
        string ledge = below.Sign >= 0 ? $"{book.Say(below)} below the {space.Ground}" : $"{book.Say(-below)} above the {space.Ground}";
        book.Steps.Add(new(Stage.Fronts, !kind.HasFalseFront
            ? $"Try the drawers of {space.Name} in, wax what rubs, and plane the edges of the fronts until their gaps are even."
            : isInset ? $"Set the fronts of {space.Name} into the opening flush with {(space.Doors is null ? "the face" : "the edges beside them")}, on shims of {book.Say(gapValue)} all round and between them, the lowest first. Clamp each to its box and screw it from inside the box; plane what rubs."
            : $"Fix the false fronts of {space.Name} from the bottom up: clamp a level ledge with its upper edge {ledge} and rest the lowest front on it, the others on spacers of {book.Say(gapValue)}. Clamp each to its box and screw it from inside the box.",
            kind.HasFalseFront ? [.. bank.Drawers.Reverse().Select(d => $"{d.Key}.front")] : [], null, kind.HasFalseFront ? "screws" : ""));
        book.Steps.Add(new(Stage.Reading, $"Read the clear width of {space.Name} along each slide line, front and back, before its boxes are cut{book.Enter(space.Width, "WIDTH, WIDTH, WIDTH")}. The narrowest counts.", [], null, ""));
    }

    /// <summary>False where the gaps, or fronts that lie short of their edges, leave nothing of the width; a finding says so.</summary>
    private static bool HasWidth(Book book, Space space, DrawerKind kind, ExactLength wide, Place place)
    {
        if (wide >= book.Grid.Step || book.HasUnknown) return true;
        book.Note("front.no-size", Severity.Stop, space.Owner, $"Nothing is left for the fronts of {space.Name}: they come out {book.Say(wide)} wide.", $"Make the opening {book.SayAtLeast(book.Grid.Step - wide)} wider{(kind.Gap is null ? "" : $", or give a smaller {book.Hand.Key("gap")}")}.", kind.Gap?.Place ?? place);
        return false;
    }
}
