using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads frames and cases, and what is in their openings.</summary>
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
            "case" => CaseText.Read(map, new(key, name, of, map.RequiredLength("width", "36"), map.RequiredLength("height", "30"), map.RequiredLength("depth", "16"),
                CaseText.BackOf(map), Content(context, keys, map), map.YesNo("hung", false), place)
            { Stand = Stand(context, map) }),
            _ => TopText.Top(keys, map, key, name, of, place),
        };
    }

    /// <summary>Where a frame or case stands: beside one, or on one.</summary>
    private static Stand Stand(TextContext context, MapReader map)
    {
        Named? beside = map.Text("beside");
        ImmutableArray<Named> on = map.OneOrMore("on");
        // Upper cases stand against the wall like those below; neighbours line up where one works at them. Common practice, no source.
        bool atBack = map.OneOf("flush", !on.IsEmpty, ("front", false), ("back", true));
        if (beside is null && on.IsEmpty && map.IsThere("flush"))
            context.Stop("stand.idle", map.KeyPlaceOf("flush"), "'flush' has nothing to say here: this stands by nothing.", "Write 'beside: KEY' or 'on: KEY' as well, or leave 'flush' out.");
        return beside is null && on.IsEmpty ? Core.Pieces.Stand.Alone : new(beside, on, atBack, map.PlaceOf(on.IsEmpty ? "beside" : "on"));
    }

    private static Frame? Frame(TextContext context, KeyBook keys, MapReader map, string key, string name, Named of, Place place)
    {
        Given width = map.RequiredLength("width", "72"), height = map.RequiredLength("height", "33"), depth = map.RequiredLength("depth", "24");
        Given toe = map.RequiredLength("toe", "4", mayBeZero: true);
        Stand stand = Stand(context, map);
        Named? rails = map.Text("rails");
        FrameCorner corner = map.OneOf("corners", FrameCorner.Pocket, ("pocket", FrameCorner.Pocket), ("tenon", FrameCorner.Tenon), ("dowels", FrameCorner.Dowels));
        Given? tenon = map.Length("tenon"), above = map.Length("above");
        FramePanels? panels = map.Map("panels", "frame-panels") is { } set
            ? new(set.Required("of", "thin"), set.Length("groove"), set.Length("play", mayBeZero: true), set.YesNo("ends", true), set.YesNo("back", false), set.Has("moisture") ? set.Whole("moisture", Piece.UsualChange, 1, 20) : null, map.PlaceOf("panels")) { MoisturePlace = set.IsThere("moisture") ? set.KeyPlaceOf("moisture") : default }
            : null;
        Laid laid = map.OneOf("top rails", Laid.OnEdge, ("on edge", Laid.OnEdge), ("flat", Laid.Flat));
        bool hasBottom = map.YesNo("bottom rails", true);
        RailRun run = map.OneOf("rails run", RailRun.Between, ("between", RailRun.Between), ("lapped", RailRun.Lapped), ("outside", RailRun.Outside), ("inside", RailRun.Inside));
        Given? lap = map.Length("lap");
        ImmutableArray<Stretcher> stretchers = FrameText.Stretchers(keys, map);
        if (map.Has("across")) return Division(context, keys, map, "across", "posts") is { } bays ? new(key, name, of, width, height, depth, toe, laid, bays, place)
        { Stand = stand, Rails = rails, Corner = corner, Tenon = tenon, Above = above, Panels = panels, HasBottomRails = hasBottom, Run = run, Lap = lap, Stretchers = stretchers } : null;
        map.Missing("across", "[{opening: A}]");
        return null;
    }

    private static readonly string[] s_contents = ["across", "down", "drawers", "shelves"];

    private static OpeningContent? Content(TextContext context, KeyBook keys, MapReader map)
    {
        var there = s_contents.Where(map.Has).ToList();
        if (there.Count > 1)
            context.Stop("opening.two-contents", map.KeyPlaceOf(there[1]), $"An opening holds one thing: this one has '{there[0]}' and '{there[1]}'.", "Divide it first, then fill each part.");
        OpeningContent? across = map.Has("across") ? Division(context, keys, map, "across", "partition") : null;
        OpeningContent? down = map.Has("down") ? Division(context, keys, map, "down", "deck") : null;
        OpeningContent? drawers = map.Map("drawers", "drawer-bank") is { } bank ? DrawerText.Bank(context, keys, bank) : null;
        OpeningContent? shelves = map.Map("shelves", "shelves") is { } set ? ShelfText.Read(context, keys, set) : null;
        OpeningContent? content = across ?? down ?? drawers ?? shelves;
        return DoorText.Read(context, keys, map, content) ?? content;
    }

    private static Division? Division(TextContext context, KeyBook keys, MapReader map, string word, string between)
    {
        string opening = between == "posts" ? "bay" : $"opening-{word}";
        var items = ImmutableArray.CreateBuilder<DivisionItem>();
        bool isCounted = between != "posts" && map.Node(word) is YamlMap;
        ImmutableArray<MapReader> written = isCounted ? CountedText.Items(context, map, word, between) : map.Maps(word, "division-item", "opening: A");
        foreach (MapReader item in written)
        {
            string? kind = between == "deck"
                ? item.Which("This is neither an opening nor what stands between two.", "Begin it with 'opening: KEY', 'deck: KEY' or, in a frame, 'rail: KEY'.", ("opening", opening), (between, between), ("rail", "rail"))
                : item.Which("This is neither an opening nor what stands between two.", $"Begin it with 'opening: KEY' or '{between}: KEY'.", ("opening", opening), (between, between));
            if (kind is null) continue;
            string key = item.Key(kind);
            Place place = item.PlaceOf(kind);
            keys.Take(key, place);
            if (kind == "rail") items.Add(FrameText.Rail(item, key, place));
            else if (kind == "partition") items.Add(new Divider(key, item.Text("of"), place) { IsGrainDeep = item.OneOf("grain", false, ("upright", false), ("front to back", true)), IsDoubled = item.YesNo("doubled", false) });
            else if (kind == between) items.Add(new Divider(key, item.Text("of"), place));
            else
            {
                ShareOfWhole size = item.Share(word == "across" ? "width" : "height");
                Named? panels = between == "posts" ? item.Text("slide panels") : null, bearers = between == "posts" ? item.Text("bearers") : null;
                Given? setback = between == "posts" ? item.Length("setback", mayBeZero: true) : null;
                items.Add(new Opening(key, size, Content(context, keys, item), panels, place)
                {
                    Bearers = bearers,
                    Setback = setback,
                    Slats = FrameText.Slats(item),
                    Behind = item.Map("from behind", "opening-behind") is { } behind ? Behind(context, keys, behind) : null,
                });
            }
        }
        // The order is looked at only where every item could be told.
        bool isWhole = isCounted ? written.Length > 0 && written.Length == items.Count : map.Node(word) is YamlList list ? list.Items.Length == items.Count : map.IsEmpty(word);
        return isWhole && InTurn(context, map.PlaceOf(word), items, word, between) ? new(word == "across", items.ToImmutable()) : null;
    }

    private static Opening Behind(TextContext context, KeyBook keys, MapReader map)
    {
        string key = map.Key("opening");
        Place place = map.PlaceOf("opening");
        keys.Take(key, place);
        return new(key, ShareOfWhole.Equal, Content(context, keys, map), null, place);
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
}
