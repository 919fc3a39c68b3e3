using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads frames, cases and tops, and what is in their openings.</summary>
internal static class AssemblyText
{
    private static readonly string[] s_members = ["frame", "case", "top"];

    public static Member? Member(TextContext context, KeyBook keys, MapReader map)
    {
        string? word = s_members.FirstOrDefault(map.Has);
        if (word is null)
        {
            context.Stop("text.missing", map.Place, "This does not say what it is.", "Begin it with 'frame: KEY', 'case: KEY' or 'top: KEY'.");
            return null;
        }
        string key = map.Key(word);
        Place place = map.PlaceOf(word);
        keys.Take(key, place);
        string name = map.Text("name")?.Text ?? "";
        Named of = map.Required("of", "carcase");
        Member? member = word switch
        {
            "frame" => Frame(context, keys, map, key, name, of, place),
            "case" => new Case(key, name, of, map.RequiredLength("width", "36"), map.RequiredLength("height", "30"), map.RequiredLength("depth", "16"),
                map.Text("back"), Content(context, keys, map), map.OneOf("hung", false, ("yes", true), ("no", false)), place),
            _ => Top(context, map, key, name, of, place),
        };
        map.Done();
        return member;
    }

    private static Frame? Frame(TextContext context, KeyBook keys, MapReader map, string key, string name, Named of, Place place)
    {
        Given width = map.RequiredLength("width", "72"), height = map.RequiredLength("height", "33"), depth = map.RequiredLength("depth", "24");
        Given toe = map.RequiredLength("toe", "4", mayBeZero: true);
        Laid laid = map.OneOf("top rails", Laid.OnEdge, ("on edge", Laid.OnEdge), ("flat", Laid.Flat));
        if (!map.Has("across"))
        {
            map.Node("across");
            map.Missing("across", "[{opening: A}]");
            return null;
        }
        return Division(context, keys, map, isAcross: true, "posts") is { } bays ? new(key, name, of, width, height, depth, toe, laid, bays, place) : null;
    }

    private static Top Top(TextContext context, MapReader map, string key, string name, Named of, Place place)
    {
        Given none = new(ExactLength.Zero, place);
        if (map.Map("overhang") is not { } over) return new(key, name, of, none, none, none, none, place);
        Top top = new(key, name, of, over.Length("front", true) ?? none, over.Length("back", true) ?? none, over.Length("left", true) ?? none, over.Length("right", true) ?? none, place);
        over.Done();
        _ = context;
        return top;
    }

    private static readonly string[] s_contents = ["across", "down", "drawers", "shelves"];

    private static OpeningContent? Content(TextContext context, KeyBook keys, MapReader map)
    {
        var there = s_contents.Where(map.Has).ToList();
        if (there.Count > 1)
            context.Stop("opening.two-contents", map.PlaceOf(there[1]), $"An opening holds one thing: this one has '{there[0]}' and '{there[1]}'.", "Divide it first, then fill each part.");
        // Every word is asked for, so that the list of known words is whole when one is mistyped.
        OpeningContent? across = map.Has("across") ? Division(context, keys, map, true, "partition") : Nothing(map, "across");
        OpeningContent? down = map.Has("down") ? Division(context, keys, map, false, "deck") : Nothing(map, "down");
        OpeningContent? drawers = map.Map("drawers") is { } bank ? Drawers(context, keys, bank) : null;
        OpeningContent? shelves = map.Map("shelves") is { } set ? Shelves(context, keys, set) : null;
        return across ?? down ?? drawers ?? shelves;
    }

    private static OpeningContent? Nothing(MapReader map, string key)
    {
        map.Node(key);
        return null;
    }

    private static Division? Division(TextContext context, KeyBook keys, MapReader map, bool isAcross, string memberWord)
    {
        string word = isAcross ? "across" : "down";
        var items = ImmutableArray.CreateBuilder<DivisionItem>();
        foreach (MapReader item in map.Maps(word))
        {
            if (item.Has("opening"))
            {
                string key = item.Key("opening");
                Place place = item.PlaceOf("opening");
                keys.Take(key, place);
                ShareOfWhole size = item.Share(isAcross ? "width" : "height");
                Named? panels = memberWord == "posts" ? item.Text("slide panels") : null;
                items.Add(new Opening(key, size, Content(context, keys, item), panels, place));
            }
            else if (item.Has(memberWord))
            {
                string key = item.Key(memberWord);
                Place place = item.PlaceOf(memberWord);
                keys.Take(key, place);
                items.Add(new Divider(key, item.Text("of"), place));
            }
            else
            {
                context.Stop("text.missing", item.Place, "This is neither an opening nor what stands between two.", $"Begin it with 'opening: KEY' or '{memberWord}: KEY'.");
                continue;
            }
            item.Done();
        }
        ImmutableArray<DivisionItem> all = items.ToImmutable();
        for (int i = 0; i < all.Length; i++)
        {
            bool wantsOpening = i % 2 == 0;
            if (all[i] is Opening == wantsOpening) continue;
            context.Stop("division.order", all[i].Place, wantsOpening ? $"An opening belongs here, between two {memberWord}s." : $"Between two openings stands a member.",
                $"Write openings and '{memberWord}' in turn, beginning and ending with an opening.");
            return null;
        }
        if (all.Length % 2 == 0)
        {
            context.Stop("division.order", map.PlaceOf(word), all.Length == 0 ? $"'{word}' is empty." : $"The last item of '{word}' is not an opening.",
                $"Write openings and '{memberWord}' in turn, beginning and ending with an opening.");
            return null;
        }
        return new(isAcross, all);
    }

    private static DrawerBank? Drawers(TextContext context, KeyBook keys, MapReader map)
    {
        Named like = map.Required("like", "standard");
        var drawers = ImmutableArray.CreateBuilder<Drawer>();
        foreach (MapReader item in map.Maps("down"))
        {
            string key = item.Key("drawer");
            keys.Take(key, item.PlaceOf("drawer"));
            drawers.Add(new(key, item.Share("front"), item.Length("box width"), item.Length("box height"), item.PlaceOf("drawer")));
            item.Done();
        }
        map.Done();
        if (drawers.Count > 0) return new(like, drawers.ToImmutable());
        context.Stop("drawers.none", map.Place, "There are no drawers in this bank.", "List them: 'down: [{drawer: A1}, {drawer: A2}]'.");
        return null;
    }

    private static Shelves? Shelves(TextContext context, KeyBook keys, MapReader map)
    {
        Named? of = map.Text("of");
        Given? setback = map.Length("setback", mayBeZero: true);
        ImmutableArray<Named> shelves = map.Words("down");
        map.Done();
        foreach (Named shelf in shelves) keys.Take(shelf.Text, shelf.Place);
        if (shelves.Length > 0) return new(of, setback, shelves);
        context.Stop("shelves.none", map.Place, "There are no shelves here.", "List their keys: 'down: [S1, S2]'.");
        return null;
    }
}
