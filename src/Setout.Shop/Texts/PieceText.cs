using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads a piece file. All that is wrong is reported, not the first thing only.</summary>
public static class PieceText
{
    /// <summary>The version of the piece file that this program reads and writes.</summary>
    public const int Version = 1;

    /// <summary>Reads a text.</summary>
    public static TextRead<Piece> Read(string text, TextLimits? limits = null)
    {
        TextRead<YamlNode> tree = YamlTree.Read(text, limits);
        if (tree.Value is null) return new(null, tree.Findings);
        var context = new TextContext();
        if (tree.Value is not YamlMap root)
        {
            context.Stop("text.wanted-map", tree.Value.Place, "A piece file is made of keys with values.", "Begin with 'setout: 1'.");
            return new(null, [.. context.Findings]);
        }
        var top = new MapReader(context, root);
        if (!TextVersion.Check(context, top, "setout", Version)) return new(null, [.. context.Findings]);
        Piece piece = Piece(context, top);
        return new(piece, [.. context.Findings.OrderBy(f => f.Place.Line).ThenBy(f => f.Place.Column)]);
    }

    private static Piece Piece(TextContext context, MapReader top)
    {
        string name = top.Required("name", "Tool cabinet").Text;
        string about = top.Text("about")?.Text ?? "";
        if (!top.Has("unit")) top.Missing("unit", "in");
        context.Unit = top.OneOf("unit", LengthUnit.Inch, ("in", LengthUnit.Inch), ("mm", LengthUnit.Millimetre));
        Grid? grid = GridOf(top, "grid");
        var keys = new KeyBook(context);
        var materials = ImmutableDictionary.CreateBuilder<string, Material>();
        foreach ((Named material, MapReader map) in top.NamedMaps("materials"))
        {
            keys.Take(material.Text, material.Place);
            if (MaterialText.Read(context, material, map) is { } read) materials[material.Text] = read;
        }
        var kinds = ImmutableDictionary.CreateBuilder<string, DrawerKind>();
        foreach ((Named kind, MapReader map) in top.NamedMaps("drawers"))
        {
            kinds[kind.Text] = new(kind.Text, map.Required("sides", "box"), map.Required("bottom", "bottoms"), map.Required("front", "fronts"),
                map.Length("gap"), map.Length("overlay", mayBeZero: true), map.Length("play", mayBeZero: true), map.Length("slide"), kind.Place);
            map.Done();
        }
        var members = ImmutableArray.CreateBuilder<Member>();
        foreach (MapReader item in top.Maps("assembly"))
            if (AssemblyText.Member(context, keys, item) is { } member) members.Add(member);
        foreach (MapReader item in top.Maps("parts"))
        {
            string key = item.Key("part");
            keys.Take(key, item.PlaceOf("part"));
            members.Add(new LoosePart(key, item.Text("name")?.Text ?? "", item.Required("of", "boards"), item.Whole("count", 1, 1, 10_000),
                item.RequiredLength("length", "36"), item.Length("width"), item.PlaceOf("part")));
            item.Done();
        }
        top.Done();
        var structures = members.Where(m => m is Frame or Case).ToList();
        if (structures.Count > 1)
            context.Stop("piece.two-structures", structures[1].Place, "This version sets out one frame or case in a piece.", "Put the second into a piece file of its own.", structures[1].Key);
        if (members.Count == 0 && context.Findings.Count == 0)
            context.Stop("piece.empty", top.Place, "The piece has neither an assembly nor parts.", "Add 'assembly:' with a frame or a case, or 'parts:'.");
        return new(name, about, context.Unit, grid, materials.ToImmutable(), kinds.ToImmutable(), members.ToImmutable(), keys.All);
    }

    /// <summary>A grid under a key, or null.</summary>
    internal static Grid? GridOf(MapReader map, string key) =>
        map.Length(key) is { } step && step.Value.IsWholeTicks ? Grid.FromStep(step.Value.ToLength()) : null;
}

/// <summary>The version line that every text begins with.</summary>
internal static class TextVersion
{
    public static bool Check(TextContext context, MapReader top, string key, int known)
    {
        if (top.Text(key) is not { } text)
        {
            if (!top.Has(key)) context.Stop("text.no-version", top.Place, $"The text does not say its version.", $"Begin with '{key}: {known}'.");
            return false;
        }
        if (text.Text == known.ToString()) return true;
        context.Stop("text.version", text.Place, $"The text is of version '{text.Text}'; this program reads version {known}.",
            int.TryParse(text.Text, out int version) && version > known ? "Use a newer program; nothing was changed." : $"Write '{key}: {known}'.");
        return false;
    }
}

/// <summary>The permanent keys of one text: each stands for one thing.</summary>
internal sealed class KeyBook(TextContext context)
{
    private readonly Dictionary<string, Place> _keys = new(StringComparer.Ordinal);

    public ImmutableDictionary<string, Place> All => _keys.ToImmutableDictionary();

    public void Take(string key, Place place)
    {
        if (key.Length == 0) return;
        if (!_keys.TryAdd(key, place))
            context.Stop("text.key-taken", place, $"The key '{key}' is taken in line {_keys[key].Line}.", "Each key stands for one thing: choose another.", key);
    }
}
