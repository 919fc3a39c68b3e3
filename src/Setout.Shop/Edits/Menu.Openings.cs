using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Edits;

/// <content>Openings, what stands between them and what they hold.</content>
internal sealed partial class Menu
{
    /// <summary>The edits of an opening.</summary>
    public IEnumerable<EditChoice> OfOpening(string key, PiecePlace place)
    {
        if (PiecePlace.IsCounted(place.Division))
        {
            yield return Listing(place.Around?.Key ?? place.Structure.Key);
            yield break;
        }
        if (place.Division is { } division)
        {
            string what = division.IsAcross ? "width" : "height";
            yield return Share(key, what, ((Opening)division.Items[place.Index]).Size);
        }
        foreach (EditChoice choice in Filling(key, place.Content, place.Structure, place.IsBay)) yield return choice;
        if (place.Division is { } row)
        {
            (string near, string far) = row.IsAcross ? ("at its left", "at its right") : ("above it", "below it");
            foreach ((string id, string words, bool isAfter) in new[] { ("opening-before", near, false), ("opening-after", far, true) })
                yield return Form(id, $"An opening {words}", v => new AddOpening(key, isAfter, v.Text("size")), new EditField("size", "size", FieldKind.Share, "") { MayBeEmpty = true });
            if (row.Items.Length > 1 || !place.IsBay) yield return Button("take-out", $"Take out opening {key}", new TakeOutOpening(key));
        }
    }

    /// <summary>What can be put into an opening or a case, or taken out of it.</summary>
    private IEnumerable<EditChoice> Filling(string key, OpeningContent? content, Structure structure, bool isBay)
    {
        OpeningContent? inside = content is DoorFilling doors ? doors.Behind : content;
        // A machine takes the whole width of its bay: what would stand upright in it, or run beside its bearers, is not offered.
        bool hasMachine = isBay && MachineBays.WidthOf(_piece, key) is not null;
        if (isBay)
        {
            yield return Form("posts", "Divide by posts", v => Divide.At(key, true, v.Needed("at"), with: Between.Posts), Length("at", "from its left to the posts", HalfBesidePosts(key, structure), "the clear width of the bay at the left, between its posts; the rest is at the right"));
        }
        if (inside is null)
        {
            foreach ((string id, string word, bool isAcross, string size) in new[] { ("across", "across", true, "width"), ("down", "down", false, "height") }.Where(w => !(hasMachine && w.Item3)))
            {
                string from = isAcross ? "left" : "top", far = isAcross ? "right" : "bottom";
                yield return Form($"{id}-equal", $"Divide {word} into equal openings", v => Divide.Equally(key, isAcross, v.Count("count")), Count("count", "how many", "2"));
                yield return Form($"{id}-at", $"Divide {word} at a place", v => Divide.At(key, isAcross, v.Needed("at"), v.Text("from") == far),
                    Length("at", "size of the first", Half(key, size, $"inside-{size}")), OneOf("from", "measured from the", from, [from, far]));
            }
            if (structure is Frame && isBay) yield return Form("rails", "Divide down by rails", v => Divide.At(key, false, v.Needed("at"), with: Between.Rails), Length("at", "from the top to the rails", Half(key, "height")));
            if (content is not DoorFilling && !hasMachine)
                yield return Form("drawers", "Drawers", v => new PutDrawers(key, v.Count("count"), v.Text("like")), Count("count", "how many", "3"), OneOf("like", "kind", First(_piece.DrawerKinds.Keys), _piece.DrawerKinds.Keys.Order(StringComparer.Ordinal), mayBeEmpty: true));
            if (isBay && structure is Frame && content is null)
                foreach (EditChoice choice in WellIn(key, structure)) yield return choice;
            yield return Form("shelves", "Shelves", v => new PutShelves(key, v.Count("count"), v.Needed("fit"), structure is Frame ? v.Text("of") : null),
                [Count("count", "how many", "2"), OneOf("fit", "carried", "fixed", PutShelves.Fits), .. structure is Frame ? [OneOf("of", "sheet", Panels.FirstOrDefault() ?? "", Panels, mayBeEmpty: true)] : Array.Empty<EditField>()]);
        }
        if (content is DoorFilling closed)
        {
            yield return Button("doors-off", "Take the doors off", new Empty(key, "doors"));
            yield return Kind(key, "Kind of door", closed.Like.Text, _piece.DoorKinds.Keys);
        }
        else if (inside is not DrawerBank && !inside.Within().Any(c => c is DoorFilling || (c is DrawerBank drawers && _piece.DrawerKinds.GetValueOrDefault(drawers.Like.Text)?.Fronts != FrontWay.Inset)))
        {
            yield return Form("doors", "Doors", v => new PutDoors(key, v.Text("doors") == "a pair", v.Text("like"), v.Text("doors") == "one, hung at the right" ? "right" : null),
                OneOf("doors", "doors", IsWide(key) ? "a pair" : "one, hung at the left", ["a pair", "one, hung at the left", "one, hung at the right"]) with { Usual = InUnit("a pair from {0} of width on (common practice, no source)", "24", "600") },
                OneOf("like", "kind", First(_piece.DoorKinds.Keys), _piece.DoorKinds.Keys.Order(StringComparer.Ordinal), mayBeEmpty: true));
        }
        if (inside is DrawerBank bank)
        {
            yield return Form("drawer", "A drawer more", v => new AddDrawer(key, null, v.Text("front")), new EditField("front", "height of its front", FieldKind.Share, "") { MayBeEmpty = true });
            yield return Kind(key, "Kind of drawer", bank.Like.Text, _piece.DrawerKinds.Keys);
        }
        if (PiecePlace.IsCounted(inside)) yield return Listing(key);
        if (inside is Shelves) yield return Button("shelf", "A shelf more", new AddShelf(key));
        if (inside is not null && !(structure is Frame && structure.Key == key)) yield return Button("empty", "Take out what is in it", new Empty(key));
    }

    /// <summary>The edits of what stands between two openings.</summary>
    public IEnumerable<EditChoice> OfDivider(Divider divider, PiecePlace place)
    {
        string key = divider.Key;
        if (PiecePlace.IsCounted(place.Division))
        {
            yield return Listing(place.Around?.Key ?? place.Structure.Key);
            yield break;
        }
        if (place.Division is { } division && place.Index > 0 && division.Items[place.Index - 1] is Opening before)
        {
            string what = division.IsAcross ? "width" : "height";
            yield return Form("move", $"Move {key}", v => new MoveDivider(key, v.Needed("before")), Length("before", $"{what} of {before.Key}, {(division.IsAcross ? "at its left" : "above it")}", before.Size.Value is { } given ? Say(given) : Worked(before.Key, $"set-{what}", what)));
        }
        if (!place.IsBay)
            foreach (EditChoice choice in Made(key, divider.Of?.Text ?? place.Structure.Of.Text, divider.Rail is null)) yield return choice;
        yield return Button("take-out", $"Take out {key}", new TakeOutDivider(key));
    }

    /// <summary>The edits of a drawer, a shelf or a door.</summary>
    public IEnumerable<EditChoice> OfHeld(string key, string opening, OpeningContent content)
    {
        switch (content)
        {
            case DrawerBank bank:
                int at = bank.Drawers.Index().First(d => d.Item.Key == key).Index;
                if (bank.Graduated is null) yield return Form("front", "Height of its front", v => new SetFront(key, v.Text("front")), new EditField("front", "height of its front", FieldKind.Share, Say(bank.Drawers[at].Front)) { MayBeEmpty = true, Usual = Worked(key, "front.height") is { Length: > 0 } worked ? $"{worked} as it is" : "" });
                foreach ((string id, string words, int index) in new[] { ("drawer-above", "A drawer above it", at), ("drawer-below", "A drawer below it", at + 1) })
                    yield return Form(id, words, v => new AddDrawer(opening, index, v.Text("front")), new EditField("front", "height of its front", FieldKind.Share, "") { MayBeEmpty = true });
                if (at > 0) yield return Button("up", $"Move {key} up", new MoveItem(key, -1));
                if (at + 1 < bank.Drawers.Length) yield return Button("down", $"Move {key} down", new MoveItem(key, 1));
                yield return Kind(opening, "Kind of drawer", bank.Like.Text, _piece.DrawerKinds.Keys);
                break;
            case Shelves shelves:
                int row = shelves.Keys.Index().First(k => k.Item.Text == key).Index;
                yield return Button("shelf-above", "A shelf above it", new AddShelf(opening, row));
                yield return Button("shelf-below", "A shelf below it", new AddShelf(opening, row + 1));
                break;
            case DoorFilling doors:
                if (doors.Keys.Length == 1) yield return Value("hinges", "Hung at the", TextPath.Of(opening, "doors", "hinges"), OneOf("side", "side", doors.HingesRight ? "right" : "left", ["left", "right"]));
                yield return Kind(opening, "Kind of door", doors.Like.Text, _piece.DoorKinds.Keys);
                break;
        }
        yield return Button("take-out", $"Take out {key}", new TakeOut(key));
    }

    /// <summary>A size that was clicked; null for one that is worked out from others.</summary>
    public EditChoice? OfSize(string owner, string what)
    {
        if (PiecePlace.In(_piece).FirstOrDefault(p => p.Key == owner) is { Place: { Division: { } division } place } && division.Items[place.Index] is Opening opening && !PiecePlace.IsCounted(division))
            return what == (division.IsAcross ? "width" : "height") || what == (division.IsAcross ? "set-width" : "set-height") ? Share(owner, division.IsAcross ? "width" : "height", opening.Size) : null;
        if (what == "front.height" && PiecePlace.Holding(_piece, owner) is { Content: DrawerBank { Graduated: null } bank }) return OfHeld(owner, "", bank).First(c => c.Id == "front");
        Member? member = _piece.Members.FirstOrDefault(m => m.Key == owner);
        return (member, what) switch
        {
            (Structure s, "width" or "height" or "depth") => Outside(s, what),
            (Frame frame, "toe") => Sized("toe", "Floor to the bottom rails", TextPath.Of(owner, "toe"), Say(frame.Toe)),
            (Top top, _) when what.StartsWith("overhang-", StringComparison.Ordinal) => OfTop(top).FirstOrDefault(c => c.Id == what),
            _ => null,
        };
    }

    private static EditChoice Listing(string key) => Button("list", $"List the openings in {key} one by one", new ListOpenings(key));

    /// <summary>Half of what new posts leave of a bay, on the grid, or what a machine in it needs; empty where it is not known.</summary>
    private string HalfBesidePosts(string key, Structure structure)
    {
        if (set.Parts.FirstOrDefault(p => p.Key == structure.Key + ".post") is not { Placements: [var post, ..] }) return "";
        foreach (string what in new[] { "clear", "rail.length", "width" })
            if (set.Worked.Values.TryGetValue(QuantityKey.Of(key, what), out Worked? between))
            {
                ExactLength half = (between.Value - post.SizeX) / Rational.Of(2);
                return MachineBays.WidthOf(_piece, key) is { } needed && needed > half ? Say(needed.RoundTo(set.Grid, Rounding.Up).Value) : Say(half.RoundTo(set.Grid, Rounding.Down).Value);
            }
        return "";
    }

    // A bay is given between its posts; what is clear in it is less once it has slide panels.
    private EditChoice Share(string key, string what, ShareOfWhole size)
    {
        string between = _piece.Members.OfType<Frame>().Any(f => f.Bays.Items.Any(b => b.Key == key)) ? " between posts" : "";
        string worked = between.Length > 0 ? Worked(key, "clear", "rail.length", what) : Worked(key, what, $"set-{what}");
        return Form("size", $"{Fillings.Capital(what)} of {key}{between}", v => new SetShare(key, v.Text("size")),
            new EditField("size", what + between, FieldKind.Share, Say(size)) { MayBeEmpty = true, Usual = worked.Length > 0 ? $"{worked} as it is" : "" });
    }

    private static EditChoice Kind(string opening, string words, string like, IEnumerable<string> kinds) => Form("kind", words, v => new SetKind(opening, v.Needed("like")), OneOf("like", "kind", like, kinds.Order(StringComparer.Ordinal)));

    private bool IsWide(string key) => set.Openings.FirstOrDefault(o => o.Key == key) is { } opening && opening.Space.SizeX >= (IsInch ? Setout.Core.Measures.Length.FromInches(24) : Setout.Core.Measures.Length.FromMillimetres(600));

    private string InUnit(string words, string inches, string millimetres) => words.Replace("{0}", IsInch ? $"{inches} in" : $"{millimetres} mm", StringComparison.Ordinal);

    private static string First(IEnumerable<string> names) => names.Order(StringComparer.Ordinal).FirstOrDefault() ?? "";
}
