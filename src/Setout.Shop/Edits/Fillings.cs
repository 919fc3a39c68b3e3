using System.Collections.Immutable;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>What openings hold, and what that needs of what is around them.</summary>
internal static class Fillings
{
    /// <summary>Keys of what an opening holds; doors stand before the others.</summary>
    public static readonly ImmutableArray<string> Keys = ["across", "down", "drawers", "shelves", "doors"];

    /// <summary>In words, by the key.</summary>
    public static string Words(string key) => key switch
    {
        "across" => "is divided across",
        "down" => "is divided down",
        "drawers" => "holds drawers",
        "shelves" => "holds shelves",
        _ => "has doors",
    };

    /// <summary>Refuses where an opening holds something already that leaves no room for more.</summary>
    public static void WantOpen(EditDraft draft, Thing opening, bool alsoDoors = false)
    {
        foreach (string key in Keys)
            if (opening.Map[key] is { } node and not YamlScalar { Text: "" } && (alsoDoors || key != "doors"))
                throw draft.Refused("edit.not-open", opening.Key, $"{Capital(opening.Words)} {Words(key)}{(node is YamlMap map && map["openings"] is not null ? ", counted" : "")}.",
                    key is "across" or "down" ? $"Choose one of the openings in it, or take out what is in {opening.Key} first." : $"Take out what is in {opening.Key} first, or put an opening beside it.");
    }

    /// <summary>Refuses doors before what itself lies on the face.</summary>
    public static void WantNothingOnTheFace(EditDraft draft, Thing opening)
    {
        foreach (Thing inside in draft.Things.Where(t => t.Steps.Length > opening.Steps.Length && t.Steps.AsSpan().StartsWith(opening.Steps.AsSpan())))
        {
            if (inside.Map["doors"] is not null) throw draft.Refused("edit.behind-doors", opening.Key, $"{Capital(inside.Words)}, which is in {opening.Key}, has doors.", $"Take the doors of {inside.Key} off first.");
            if (inside.Map["drawers"] is YamlMap bank && bank["like"] is YamlScalar { Text: var like } && (draft.At(TextPath.Of("", "drawers", like)) as YamlMap)?["fronts"] is not YamlScalar { Text: "inset" })
                throw draft.Refused("edit.behind-doors", opening.Key, $"The fronts of the drawers in {inside.Key} lie on the face, where the doors would be.", $"Give the drawers in {inside.Key} a kind with 'fronts: inset' first.");
        }
    }

    /// <summary>The sheet that what stands in an opening has to name: none in a case, whose own it takes; in a frame the first that suits.</summary>
    public static string? SheetIn(EditDraft draft, Thing thing)
    {
        if (draft.StructureOf(thing) is not { Word: "frame" }) return null;
        return draft.BayOf(thing)?.Text("slide panels") ?? FirstSheet(draft) ??
            throw draft.Refused("edit.no-sheet", thing.Key, "There is no sheet in this piece: what stands in a frame between the posts is of one.", "Add a sheet first.");
    }

    /// <summary>The sheet that most of the piece is of: that of the first case, else the first of the list; null for none.</summary>
    public static string? FirstSheet(EditDraft draft)
    {
        string? ofCase = draft.Things.FirstOrDefault(t => t.Word == "case")?.Text("of");
        return Sheets(draft).FirstOrDefault(s => s == ofCase) ?? Sheets(draft).FirstOrDefault();
    }

    /// <summary>The names of the sheets of a text, in their order.</summary>
    public static IEnumerable<string> Sheets(EditDraft draft) => draft.Things.Where(t => t.Word == "material" && t.Map["panel"] is not null).Select(t => t.Key);

    /// <summary>The names of the sticks of a text, in their order.</summary>
    public static IEnumerable<string> Sticks(EditDraft draft) => draft.Things.Where(t => t.Word == "material" && (t.Map["lumber"] is not null || t.Map["stick"] is not null)).Select(t => t.Key);

    /// <summary>In a bay of a frame drawers want something beside them to run on.</summary>
    public static void Carry(EditDraft draft, Thing opening, string kind)
    {
        if (draft.BayOf(opening) is not { } bay || bay.Map["slide panels"] is not null || bay.Map["bearers"] is not null) return;
        YamlMap? of = draft.At(TextPath.Of("", "drawers", kind)) as YamlMap;
        if ((of?["slides"] as YamlScalar)?.Text == "runners")
        {
            string sticks = draft.StructureOf(opening)!.Text("rails") ?? draft.StructureOf(opening)!.Text("of")!;
            draft.Do(Splice.Set(bay.Path.To("bearers"), sticks, "opening", "width"));
            draft.Note("edit.bearers", Severity.Note, bay.Key, $"Bay {bay.Key} has bearers of {sticks} now, for the drawers to run beside.", "Choose other sticks, or slide panels, at the bay.");
            return;
        }
        string sheet = (of?["front"] as YamlScalar)?.Text is { } front && Sheets(draft).Contains(front) ? front : FirstSheet(draft)!;
        draft.Do(Splice.Set(bay.Path.To("slide panels"), sheet, "opening", "width"));
        draft.Note("edit.slide-panels", Severity.Note, bay.Key, $"Bay {bay.Key} has slide panels of {sheet} now, for slides to be screwed to.", "Choose another sheet, or bearers, at the bay.");
    }

    /// <summary>Refuses a name that is none of what there is of its kind.</summary>
    public static void WantThere(EditDraft draft, string name, IEnumerable<string> there, string what, string key)
    {
        string[] known = [.. there];
        if (!known.Contains(name))
            throw draft.Refused("edit.not-there", key, $"There is no {what} '{TextContext.Shown(name)}' in this piece.", known.Length == 0 ? $"Add a {what} first." : $"Choose one of {string.Join(", ", known)}, or add it first.");
    }

    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
