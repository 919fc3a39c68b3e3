using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads frames, cases and tops, and what is in their openings.</summary>
internal static class AssemblyText
{
    public static Member? Member(TextContext context, KeyBook keys, MapReader map)
    {
        string? word = map.Which("This does not say what it is.", "Begin it with 'frame: KEY', 'case: KEY' or 'top: KEY'.", ("frame", "frame"), ("case", "case"), ("top", "top"));
        if (word is null) return null;
        string key = map.Key(word);
        Place place = map.PlaceOf(word);
        keys.Take(key, place);
        string name = map.Text("name")?.Text ?? "";
        Named of = map.Required("of", "carcase");
        return word switch
        {
            "frame" => Frame(context, keys, map, key, name, of, place),
            "case" => new Case(key, name, of, map.RequiredLength("width", "36"), map.RequiredLength("height", "30"), map.RequiredLength("depth", "16"),
                map.Text("back"), Content(context, keys, map), map.YesNo("hung", false), place),
            _ => Top(map, key, name, of, place),
        };
    }

    private static Frame? Frame(TextContext context, KeyBook keys, MapReader map, string key, string name, Named of, Place place)
    {
        Given width = map.RequiredLength("width", "72"), height = map.RequiredLength("height", "33"), depth = map.RequiredLength("depth", "24");
        Given toe = map.RequiredLength("toe", "4", mayBeZero: true);
        Laid laid = map.OneOf("top rails", Laid.OnEdge, ("on edge", Laid.OnEdge), ("flat", Laid.Flat));
        if (map.Has("across")) return Division(context, keys, map, "across", "posts") is { } bays ? new(key, name, of, width, height, depth, toe, laid, bays, place) : null;
        map.Missing("across", "[{opening: A}]");
        return null;
    }

    private static Top Top(MapReader map, string key, string name, Named of, Place place)
    {
        Given none = new(ExactLength.Zero, place);
        MapReader? over = map.Map("overhang", "overhang");
        Given Side(string side) => over?.Length(side, mayBeZero: true) ?? none;
        return new(key, name, of, Side("front"), Side("back"), Side("left"), Side("right"), place);
    }

    private static readonly string[] s_contents = ["across", "down", "drawers", "shelves"];

    private static OpeningContent? Content(TextContext context, KeyBook keys, MapReader map)
    {
        var there = s_contents.Where(map.Has).ToList();
        if (there.Count > 1)
            context.Stop("opening.two-contents", map.KeyPlaceOf(there[1]), $"An opening holds one thing: this one has '{there[0]}' and '{there[1]}'.", "Divide it first, then fill each part.");
        OpeningContent? across = map.Has("across") ? Division(context, keys, map, "across", "partition") : null;
        OpeningContent? down = map.Has("down") ? Division(context, keys, map, "down", "deck") : null;
        OpeningContent? drawers = map.Map("drawers", "drawer-bank") is { } bank ? Drawers(keys, bank) : null;
        OpeningContent? shelves = map.Map("shelves", "shelves") is { } set ? Shelves(keys, set) : null;
        return across ?? down ?? drawers ?? shelves;
    }

    private static Division? Division(TextContext context, KeyBook keys, MapReader map, string word, string between)
    {
        string opening = between == "posts" ? "bay" : $"opening-{word}";
        var items = ImmutableArray.CreateBuilder<DivisionItem>();
        ImmutableArray<MapReader> written = map.Maps(word, "division-item", "opening: A");
        foreach (MapReader item in written)
        {
            string? kind = item.Which("This is neither an opening nor what stands between two.", $"Begin it with 'opening: KEY' or '{between}: KEY'.", ("opening", opening), (between, between));
            if (kind is null) continue;
            string key = item.Key(kind);
            Place place = item.PlaceOf(kind);
            keys.Take(key, place);
            if (kind == between) items.Add(new Divider(key, item.Text("of"), place));
            else
            {
                ShareOfWhole size = item.Share(word == "across" ? "width" : "height");
                Named? panels = between == "posts" ? item.Text("slide panels") : null;
                items.Add(new Opening(key, size, Content(context, keys, item), panels, place));
            }
        }
        // The order is looked at only where every item could be told.
        bool isWhole = map.Node(word) is YamlList list ? list.Items.Length == items.Count : map.IsEmpty(word);
        return isWhole && InTurn(context, map.PlaceOf(word), items, word, between) ? new(word == "across", items.ToImmutable()) : null;
    }

    private static bool InTurn(TextContext context, Place place, IReadOnlyList<DivisionItem> items, string word, string between)
    {
        string? wrong = items.Count == 0 ? $"'{word}' is empty." : items.Count % 2 == 0 ? $"The last item of '{word}' is not an opening." : null;
        for (int i = 0; i < items.Count; i++)
        {
            bool wantsOpening = i % 2 == 0;
            if (items[i] is Opening == wantsOpening) continue;
            (place, wrong) = (items[i].Place, wantsOpening ? $"An opening belongs here, between what stands ('{between}')." : $"Between two openings '{between}' has to stand.");
            break;
        }
        if (wrong is null) return true;
        context.Stop("division.order", place, wrong, $"Write openings and '{between}' in turn, beginning and ending with an opening.");
        return false;
    }

    private static DrawerBank? Drawers(KeyBook keys, MapReader map)
    {
        Named like = map.Required("like", "standard");
        bool through = map.OneOf("figure", false, ("through", true), ("any", false));
        var drawers = ImmutableArray.CreateBuilder<Drawer>();
        foreach (MapReader item in map.Maps("down", "drawer", "drawer: A1"))
        {
            string key = item.Key("drawer");
            keys.Take(key, item.PlaceOf("drawer"));
            drawers.Add(new(key, item.Share("front"), item.Length("box width"), item.Length("box height"), item.PlaceOf("drawer")));
        }
        if (map.IsEmpty("down")) map.Missing("down", "[{drawer: A1}, {drawer: A2}]", "drawers.none", "There are no drawers in this bank.");
        return drawers.Count > 0 ? new(like, drawers.ToImmutable(), through) : null;
    }

    private static Shelves? Shelves(KeyBook keys, MapReader map)
    {
        Named? of = map.Text("of");
        Given? setback = map.Length("setback", mayBeZero: true);
        ImmutableArray<Named> shelves = map.Keys("down");
        foreach (Named shelf in shelves) keys.Take(shelf.Text, shelf.Place);
        if (map.IsEmpty("down")) map.Missing("down", "[S1, S2]", "shelves.none", "There are no shelves here.");
        return shelves.Length > 0 ? new(of, setback, shelves) : null;
    }
}
