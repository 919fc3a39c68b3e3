using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut.Drawers;

/// <summary>What can be wrong with a drawer box: its width against its slides, its height, its bottom, and what slides under it want.</summary>
internal static class BoxChecks
{
    public static void Width(Box box, (QuantityKey Opening, QuantityKey Built, QuantityKey Play) keys, PartSize end, SlideRoom window)
    {
        (Book book, Drawer drawer, string key, string name) = (box.Book, box.Drawer, box.Key, box.Name);
        (QuantityKey opening, QuantityKey built, QuantityKey play) = keys;
        ExactLength room = book.Value(opening), wide = book.Value(built), over = book.Value(play), fits = over + wide - window.Least, tight = window.Least - over;
        if (over < window.Least)
        {
            string words = wide >= room
                ? $"{name} is {book.Say(wide)} wide, wider than its opening of {book.Say(room)}."
                : $"{name} is {book.Say(wide)} wide; with its slides it is {book.Say(tight)} too wide for the opening of {book.Say(room)}.";
            // A box that stands on the bench is a fact to deal with; it does not stop the plan of all the rest.
            if (!book.IsRead(built) && (book.IsRead(end.ToCut) || book.IsRead(end.AsCut)))
                book.Note("drawer.too-wide", Severity.Warn, key, words, $"It is {book.Say(tight)} too wide; {book.Hand.Fit} lists what can be done about it.", drawer.Place);
            else if (book.IsRead(built))
                book.Note("drawer.too-wide", Severity.Warn, key, words, $"It is {book.Say(tight)} too wide, {book.Say(tight / 2)} a side; {book.Hand.Fit} lists what can be done about it.", drawer.Place);
            else
                book.Note("drawer.too-wide", Severity.Stop, key, words, $"The box may be {book.Say(fits)} at most. Leave its width out to have it worked out.", drawer.BoxWidth?.Place ?? drawer.Place);
        }
        else if (NoWidth(box, wide)) return;
        else if (over > window.Most)
        {
            string takes = box.Kind.Slides == SlideWay.Runners ? "its runners want" : "the slides take", shim = box.Kind.Slides == SlideWay.Runners ? "Glue a strip to each side, of" : "Shim each slide by";
            book.Note("drawer.too-narrow", Severity.Warn, key, $"{name} leaves {book.Say(over)} of side play; {takes} {book.Say(window.Most)} at most.",
                book.IsRead(built) || book.IsRead(end.ToCut) || book.IsRead(end.AsCut) ? $"To the middle it is {book.Say((over - window.Middle) / 2)} a side; {book.Hand.Fit} lists what can be done about it." : $"{shim} {book.Say((over - window.Middle) / 2)}, or leave {(drawer.BoxWidth is null ? "'play'" : "the width")} out to have it worked out.", drawer.BoxWidth?.Place ?? box.Kind.Play?.Place ?? drawer.Place);
        }
    }

    /// <summary>True where two sides leave nothing between them, with a finding.</summary>
    public static bool NoWidth(Box box, ExactLength wide)
    {
        (Book book, Drawer drawer) = (box.Book, box.Drawer);
        ExactLength least = (book.Value(box.SideThickness) * 2) + book.Grid.Step;
        if (wide >= least) return false;
        Place place = drawer.BoxWidth?.Place ?? box.Kind.Play?.Place ?? box.Kind.Sheet.Clearance?.Place ?? drawer.Place;
        book.Note("drawer.no-width", Severity.Stop, box.Key, $"{box.Name} comes out {book.Say(wide)} wide in its opening of {book.Say(book.Value(box.Space.Width))}: its two sides take {book.Say(least - book.Grid.Step)}.",
            $"{(drawer.BoxWidth is not null ? $"Make it {book.SayAtLeast(least)} wide or more" : $"Make the opening {book.SayAtLeast(least - wide)} wider, or give its slides and their play so much less")}.", place);
        return true;
    }

    /// <summary>True where front and back leave nothing between them, with a finding.</summary>
    public static bool NoLength(Box box, PartSize length, BoxCorners corners)
    {
        Book book = box.Book;
        ExactLength inside = book.Value(length.AsCut) + book.Value(new Sum(corners.InsideLengthLess)), whole = book.Value(length.AsCut);
        if (inside >= book.Grid.Step) return false;
        Place place = (box.Kind.SlideLength ?? box.Kind.Sheet.Length)?.Place ?? box.Drawer.Place;
        book.Note("drawer.no-length", Severity.Stop, box.Key, $"The sides of {box.Name} are {book.Say(whole)} long: front and back leave {book.Say(inside)} between them.",
            box.Kind.Slides == SlideWay.Runners ? $"Make the opening {book.SayAtLeast(book.Grid.Step - inside)} deeper." : $"Use slides {book.SayAtLeast(book.Grid.Step - inside)} longer.", place);
        return true;
    }

    /// <summary>No figure on the grid is sure to land inside the play wanted: what grid does, or whether the usual play would.</summary>
    public static void Grid(Box box, SlideRoom window)
    {
        Book book = box.Book;
        bool usualDoes = box.Kind is { Slides: SlideWay.Side, Window: SlideWindow.Narrow } && !SlideRoom.Of(box.Kind with { Window = SlideWindow.Usual }).IsFinerThan(book.Grid);
        book.NoteOnce("drawer.grid-too-coarse", Severity.Warn, box.Key, $"{box.Name} wants its play within {book.Say(window.Least)} to {book.Say(window.Most)}; a step of {book.Say(book.Grid.Step)} is wider than that.",
            $"{book.Hand.Write("grid", book.Say(FinerThan(book, window)))} or finer in the piece, or give the shop such a grid{(usualDoes ? $", {book.Hand.OrWrite("window", "usual")} if these slides allow it" : "")}.", box.Kind.Place);
    }

    // The coarsest of the steps that shops keep that lands inside.
    private static ExactLength FinerThan(Book book, SlideRoom window) => (book.Piece.Unit == Measures.Text.LengthUnit.Inch
        ? s_ofAnInch.Select(part => FromInches(Rational.Of(1, part)))
        : s_ofAMillimetre.Select(part => FromMillimetres(Rational.Of(1, part)))).First(step => step <= window.Most - window.Least);

    private static readonly int[] s_ofAnInch = [16, 32, 64, 128], s_ofAMillimetre = [1, 2, 4, 10];

    public static void Height(Box box, PartSize height, ExactLength all, ExactLength room, Stick? runner)
    {
        (Book book, Drawer drawer, string key, string name) = (box.Book, box.Drawer, box.Key, box.Name);
        ExactLength least = TradeRules.Get("SS11").Length, tall = book.Value(height.ToCut), space = book.Value(box.Slot.Height);
        if (runner is not null && !box.Slot.IsOnRails) space -= book.Value(Book.ThicknessOf(runner.Name)) * (RunnerRule.WantsKicker(box) ? 2 : 1);
        // An applied bottom belongs to the box.
        ExactLength whole = tall + (all - book.Value(height.AsCut));
        if (whole > space)
        {
            book.Note("drawer.too-tall", Severity.Stop, key, $"{name} is {book.Say(whole)} tall in a space of {book.Say(space)}.",
                "Make the box lower or its front taller.", drawer.BoxHeight?.Place ?? drawer.Place);
        }
        else if (tall <= BottomRule.Top(box))
        {
            book.Note("drawer.no-height", Severity.Stop, key, $"{name} comes out {book.Say(tall)} tall in a space of {book.Say(space)}: too low for sides that hold its bottom.",
                "Make its front taller, or its box if its height is given.", drawer.BoxHeight?.Place ?? (drawer.Front.Place.IsKnown ? drawer.Front.Place : drawer.Place));
        }
        else if (tall < least && box.Kind.Slides == SlideWay.Side && box.Kind.Sheet.Clearance is null)
        {
            book.Note("drawer.too-low", Severity.Warn, key, $"The box of {name} is {book.Say(tall)} tall, lower than a slide of {book.Say(least)}.",
                $"Make its front taller, or use a lower slide. ({TradeRules.Get("SS11").Cited})", drawer.Place);
        }
        else if (space - whole < room)
        {
            string cited = TradeRules.Get(box.Kind.Slides switch { SlideWay.Under => "US4", SlideWay.Runners => "WR2", _ => "SS8" }).Cited;
            book.Note("drawer.tight-height", Severity.Warn, key, $"{name} leaves {book.Say(space - whole)} above and below in all; {book.Say(room)} is usual.",
                $"Make the box lower, or be sure that the {(runner is null ? "slide can be hooked in" : "drawer runs free in a damp season")} with so little. ({cited})", drawer.BoxHeight?.Place ?? drawer.Place);
        }
    }

    public static void Bottom(Box box, ExactLength wide)
    {
        Book book = box.Book;
        (string rule, ExactLength from) = wide > FromInches(36) ? ("BX5", FromInches(36)) : wide > FromInches(24) ? ("BX4", FromInches(24)) : ("BX3", ExactLength.Zero);
        // The label decides, not the reading: a 3/8 in sheet reads under 3/8.
        ExactLength wanted = TradeRules.Get(rule).Length - FromInches(Rational.Of(1, 16)), thick = book.Value(Book.ThicknessOf(box.Bottom.Name));
        if (thick >= wanted || book.IsUnknown(box.Bottom.Name)) return;
        book.NoteOnce("drawer.thin-bottom", Severity.Note, box.Key, $"{box.Name} is {book.Say(wide)} wide on a bottom of {book.Say(thick)}.",
            $"{(from.Sign > 0 ? $"Over {book.Say(from)} a" : "A")} bottom of {book.Say(TradeRules.Get(rule).Length)} is usual. ({TradeRules.Get(rule).Cited})", box.Kind.Bottom.Place);
    }

    /// <summary>Slides under a box hook into its sides and lie below its bottom.</summary>
    public static void Under(Box box)
    {
        (Book book, DrawerKind kind) = (box.Book, box.Kind);
        if (kind.Slides != SlideWay.Under) return;
        TradeRule thickest = TradeRules.Get("US6"), recess = TradeRules.Get("US3");
        ExactLength thick = book.Value(box.SideThickness);
        if (kind.Sheet.Clearance is { } takes && takes.Value < thick)
            book.NoteOnce("slide.clearance-too-small", Severity.Stop, box.Key, $"Slides that take {book.Say(takes.Value)} from the opening to the inside of the box leave no room for its sides of {book.Say(thick)}.", $"Make {book.Hand.Key("clearance")} {book.SayAtLeast(thick)} or more, as the leaflet has it, or use thinner sides.", takes.Place);
        if (thick > thickest.Length && kind.Sheet.Clearance is null && !book.IsUnknown(box.Sides.Name))
            book.NoteOnce("drawer.side-too-thick", Severity.Warn, box.Key, $"Slides under the box take sides of {book.Say(thickest.Length)} at most; {kind.Sides.Text} is {book.Say(thick)}.",
                $"Use a thinner sheet, or give the clearance of slides that are made for it. ({thickest.Cited})", kind.Sides.Place);
        if (kind.BottomFit is BottomFit.Applied or BottomFit.LetIn)
            book.NoteOnce("drawer.no-recess", Severity.Stop, box.Key, "Slides under the box lie below its bottom, but this bottom is flush with the lower edge of the sides.",
                $"{book.Hand.Write("bottom fit", "grooved")} or 'slid in': the bottom then lies {book.Say(recess.Length)} up. ({recess.Cited})", kind.Place);
        else if (kind.GrooveUp is { } up && up.Value < recess.Length && kind.Sheet.Clearance is null)
            book.NoteOnce("drawer.no-recess", Severity.Warn, box.Key, $"The bottom lies {book.Say(up.Value)} up; slides under it want {book.Say(recess.Length)}.", $"Leave {book.Hand.Key("groove up")} out, or be sure of your slides. ({recess.Cited})", up.Place);
    }
}
