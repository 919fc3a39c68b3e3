using System.Text.RegularExpressions;
using Setout.Core.Materials;
using Setout.Core.Measures.Text;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Wood as a piece file names it.</summary>
/// <param name="Word"><c>panel</c>, <c>lumber</c> or <c>stick</c>.</param>
/// <param name="Kind">Such as <c>hardwood plywood</c>, <c>2x4</c> or <c>oak</c>.</param>
/// <param name="Label">Of a sheet of a kind on record: such as <c>3/4</c>; else null.</param>
/// <param name="Size">Of a sheet without a label its thickness, of sticks their section as <c>3 x 3</c>; else null.</param>
public sealed partial record Wood(string Word, string Kind, string? Label, string? Size)
{
    /// <summary>A sheet of a kind on record.</summary>
    public static Wood Sheet(string kind, string label) => new("panel", kind, label, null);

    /// <summary>A sheet by its thickness.</summary>
    public static Wood SheetOf(string kind, string thickness) => new("panel", kind, null, thickness);

    /// <summary>Lumber by its name in the yard.</summary>
    public static Wood Lumber(string nominal) => new("lumber", nominal, null, null);

    /// <summary>Sticks of a section.</summary>
    public static Wood Stick(string kind, string section) => new("stick", kind, null, section);

    /// <summary>The wood of a line of the shop's rack or of its supplier's list; null where it cannot be told.</summary>
    public static Wood? Of(ShopStock line)
    {
        Match found = IdentityPattern().Match(line.Identity);
        if (!found.Success) return null;
        (string word, string rest) = (found.Groups[1].Value, found.Groups[2].Value);
        if (word == "lumber") return Lumber(rest);
        if (word == "stick") return SectionPattern().Match(rest) is { Success: true } stick ? Stick(stick.Groups[1].Value, $"{stick.Groups[2].Value} x {stick.Groups[3].Value}") : null;
        if (PanelTable.Kinds.Where(k => rest.StartsWith(k + " ", StringComparison.Ordinal)).MaxBy(k => k.Length) is { } kind)
            return PanelTable.Find(kind, rest[(kind.Length + 1)..]) is not null ? Sheet(kind, rest[(kind.Length + 1)..]) : SheetOf(kind, rest[(kind.Length + 1)..]);
        return ThicknessPattern().Match(rest) is { Success: true } sheet ? SheetOf(sheet.Groups[1].Value, sheet.Groups[2].Value) : null;
    }

    /// <summary>For people.</summary>
    public string Words => string.Join(" ", new[] { Kind, Label, Size }.Where(w => w is not null));

    internal YamlMap Written() => Edits.Written.Fields((Word, Kind), ("label", Label), (Word == "panel" ? "thickness" : "section", Size));

    [GeneratedRegex(@"^(panel|lumber|stick) (.+)\z")]
    private static partial Regex IdentityPattern();

    [GeneratedRegex(@"^(.+) (\S+ mm) (\S+ mm)\z")]
    private static partial Regex SectionPattern();

    [GeneratedRegex(@"^(.+) (\S+ mm)\z")]
    private static partial Regex ThicknessPattern();
}

/// <summary>Adds a material, and uses it where that is said.</summary>
/// <param name="Wood">What it is.</param>
/// <param name="Name">Its name in the piece; null for one that is given.</param>
/// <param name="UseAt">Where it is used at once, such as <c>of</c> of a case; null for nowhere yet.</param>
public sealed partial record AddMaterial(Wood Wood, string? Name = null, TextPath? UseAt = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"material {Name ?? Wood.Kind}: {Wood.Words}";

    internal override void Do(EditDraft draft)
    {
        string name = Add(draft, Wood, Name);
        if (UseAt is not null) draft.Do(Splice.Set(UseAt, name, "frame", "case", "top", "name"));
        draft.Name = $"material {name}: {Wood.Words}{(UseAt is null ? "" : $", for {draft.Things.FirstOrDefault(t => t.Key == UseAt.Owner)?.Words ?? UseAt.Words()}")}";
    }

    /// <summary>Adds it below the others; its name.</summary>
    internal static string Add(EditDraft draft, Wood wood, string? asked)
    {
        string name = asked ?? NameOf(draft, wood);
        if (asked is not null && draft.Things.Any(t => t.Key == asked))
            throw draft.Refused("edit.name-taken", asked, $"The name '{TextContext.Shown(asked)}' is taken.", "Choose another.");
        Sections.Add(draft, "materials", name, wood.Written());
        draft.Chosen = name;
        return name;
    }

    // The last word of the kind with its size in figures: ply-3-4, oak-3x3.
    private static string NameOf(EditDraft draft, Wood wood)
    {
        string kind = wood.Word == "lumber" ? "lumber" : wood.Kind.Split(' ')[^1].Replace("plywood", "ply", StringComparison.Ordinal);
        string size = wood.Word == "lumber" ? wood.Kind : wood.Label ?? wood.Size ?? "";
        string name = NotOfNamesPattern().Replace($"{kind}-{size.Replace(" mm", "", StringComparison.Ordinal)}", "-").Trim('-');
        if (name.Length == 0 || !char.IsAsciiLetter(name[0])) name = "wood";
        return draft.Fresh(name[..Math.Min(name.Length, 20)].Trim('-'), 1, mayBeBare: true)[0];
    }

    [GeneratedRegex(@"[^A-Za-z0-9]+")]
    private static partial Regex NotOfNamesPattern();
}

/// <summary>Says of what something is made.</summary>
/// <param name="At">Such as <c>of</c> of a case.</param>
/// <param name="Material">The name of a material of the piece.</param>
public sealed record UseMaterial(TextPath At, string Material) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"{At.Words()}: {Material}";

    internal override void Do(EditDraft draft)
    {
        Fillings.WantThere(draft, Material, draft.Things.Where(t => t.Word == "material").Select(t => t.Key), "material", At.Owner);
        new SetAny(At, Material).Do(draft);
    }
}

/// <summary>Adds a kind of drawer.</summary>
/// <param name="Name">Its name; null for one that is given.</param>
/// <param name="Sides">The sheet of the four sides; null for one that suits, which is added where there is none. So with the others.</param>
/// <param name="Bottom">The sheet of the bottom.</param>
/// <param name="Front">The sheet of the false front.</param>
public sealed record AddDrawerKind(string? Name = null, string? Sides = null, string? Bottom = null, string? Front = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"kind of drawer {Name ?? "that is usual"}";

    internal override void Do(EditDraft draft) => draft.Chosen = Add(draft, this);

    /// <summary>A usual one, where a piece has none; its name.</summary>
    internal static string Usual(EditDraft draft)
    {
        string name = Add(draft, new());
        draft.Note("edit.kind-added", Core.Workings.Severity.Note, "", $"A kind of drawer '{name}' was added: on side-mounted slides, with false fronts.", "Look at what it is made of.");
        return name;
    }

    /// <summary>A name that somebody chose, as it can stand in the text.</summary>
    internal static string Chosen(EditDraft draft, string typed)
    {
        string name = FreshKeys.Name(typed);
        return FreshKeys.Unfit(draft, name, typed) is { } unfit ? throw unfit : name;
    }

    private static string Add(EditDraft draft, AddDrawerKind asked)
    {
        string name = asked.Name is { } typed ? Chosen(draft, typed) : draft.Fresh("drawer", 1, mayBeBare: true)[0];
        if (draft.Things.Any(t => t.Key == name && t.Word == Thing.DrawerKind)) throw draft.Refused("edit.name-taken", name, $"There is a kind of drawer '{TextContext.Shown(name)}' already.", "Choose another name.", asked.Name ?? "");
        foreach (string sheet in new[] { asked.Sides, asked.Bottom, asked.Front }.OfType<string>()) Fillings.WantThere(draft, sheet, Fillings.Sheets(draft), "sheet", name);
        string front = asked.Front ?? Fillings.FirstSheet(draft) ?? Sheets.About(draft, "3/4", "18 mm");
        YamlMap kind = Written.Fields(("sides", asked.Sides ?? Sheets.About(draft, "1/2", "12 mm")), ("bottom", asked.Bottom ?? Sheets.About(draft, "1/4", "6.5 mm")), ("front", front));
        Sections.Add(draft, "drawers", name, kind);
        return name;
    }
}

/// <summary>Adds a kind of door of one sheet.</summary>
/// <param name="Name">Its name; null for one that is given.</param>
/// <param name="Of">Its sheet; null for that of the first case.</param>
/// <param name="Lies"><c>overlay</c>, <c>half overlay</c> or <c>inset</c>; null for the usual.</param>
public sealed record AddDoorKind(string? Name = null, string? Of = null, string? Lies = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"kind of door {Name ?? "that is usual"}";

    internal override void Do(EditDraft draft) => draft.Chosen = Add(draft, this);

    /// <summary>A plain one, where a piece has none; its name.</summary>
    internal static string Usual(EditDraft draft, Thing opening)
    {
        string name = Add(draft, new(Of: draft.StructureOf(opening) is { Word: "case" } of ? of.Text("of") : null));
        draft.Note("edit.kind-added", Core.Workings.Severity.Note, "", $"A kind of door '{name}' was added, of one sheet.", "Look at what it is made of.");
        return name;
    }

    private static string Add(EditDraft draft, AddDoorKind asked)
    {
        if (asked.Of is not null) Fillings.WantThere(draft, asked.Of, Fillings.Sheets(draft), "sheet", asked.Name ?? "");
        string name = asked.Name is { } typed ? AddDrawerKind.Chosen(draft, typed) : draft.Fresh("door", 1, mayBeBare: true)[0];
        if (asked.Name is not null && draft.Things.Any(t => t.Key == name)) throw draft.Refused("edit.name-taken", name, $"The name '{TextContext.Shown(name)}' is taken.", "Choose another.", asked.Name);
        Sections.Add(draft, "doors", name, Written.Fields(("of", asked.Of ?? Fillings.FirstSheet(draft) ?? Sheets.About(draft, "3/4", "18 mm")), ("lies", asked.Lies)));
        return name;
    }
}

/// <summary>The maps of names at the head of a text.</summary>
internal static class Sections
{
    private static readonly string[] s_before = ["setout", "name", "about", "unit", "grid", "way in", "moisture", "materials"];

    /// <summary>Adds an entry below the others; the section where it is not there.</summary>
    public static void Add(EditDraft draft, string section, string name, YamlMap value)
    {
        TextPath at = TextPath.Of("", section);
        if (draft.At(at) is YamlMap { Entries.Length: > 0 }) draft.Do(Splice.SetLast(at.To(name), value));
        else draft.Do(Splice.Set(at, Written.Map((name, value)), section == "materials" ? s_before[..^1] : s_before));
    }
}
