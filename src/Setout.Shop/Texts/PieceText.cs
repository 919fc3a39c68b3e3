using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;

namespace Setout.Shop.Texts;

/// <summary>Reads a piece file. All that is wrong is reported, not the first thing only.</summary>
public static class PieceText
{
    /// <summary>The version of the piece file that this program reads and writes.</summary>
    public const int Version = 1;

    /// <summary>Reads a text. Never throws for what is in it.</summary>
    public static TextRead<Piece> Read(string text, TextLimits? limits = null) => Read(text, limits, new(limits));

    internal static TextRead<Piece> Read(string text, TextLimits? limits, TextContext context) =>
        TextKind.Piece.Read(text, limits, context, top => Piece(context, top));

    private static Piece Piece(TextContext context, MapReader top)
    {
        string name = top.Required("name", "Tool cabinet").Text, about = top.Remark("about");
        context.Unit = top.Unit("unit");
        Grid? grid = top.Grid("grid", context.Unit);
        WayIn? wayIn = top.Map("way in", "way-in") is { } way ? new(way.RequiredLength("width", "30"), way.RequiredLength("height", "78"), top.PlaceOf("way in")) : null;
        int moisture = top.Whole("moisture", Setout.Core.Pieces.Piece.UsualChange, 1, 20);
        var keys = new KeyBook(context);
        var materials = ImmutableDictionary.CreateBuilder<string, Material>();
        foreach ((Named material, MapReader map) in top.NamedMaps("materials", "material"))
        {
            keys.Take(material.Text, material.Place);
            if (MaterialText.Read(context, material, map) is { } read) materials[material.Text] = read;
        }
        var kinds = ImmutableDictionary.CreateBuilder<string, DrawerKind>();
        foreach ((Named kind, MapReader map) in top.NamedMaps("drawers", "drawer-kind"))
            kinds[kind.Text] = DrawerText.Kind(context, kind, map);
        ImmutableDictionary<string, DoorKind> doors = DoorText.Kinds(context, keys, top);
        ImmutableArray<Finish> finishes = [.. top.NamedMaps("finishes", "finish").Select(f => FinishText.Read(keys, f.Name, f.Map))];
        var members = ImmutableArray.CreateBuilder<Member>();
        foreach (MapReader item in top.Maps("assembly", "member", "case: C, of: carcase"))
            if (AssemblyText.Member(context, keys, item) is { } member) members.Add(member);
        foreach (MapReader item in top.Maps("parts", "part", "part: P1, of: carcase, length: 30, width: 12"))
            members.Add(Part(keys, item));
        if (top.IsEmpty("assembly") && top.IsEmpty("parts"))
            top.Missing("assembly", "' with a frame or a case below it, or 'parts", "piece.empty", "The piece has neither an assembly nor parts.");
        return new(name, about, context.Unit, grid, materials.ToImmutable(), kinds.ToImmutable(), members.ToImmutable(), keys.All) { DoorKinds = doors, Finishes = finishes, WayIn = wayIn, MoistureChange = moisture, MoisturePlace = top.IsThere("moisture") ? top.PlaceOf("moisture") : default };
    }

    private static LoosePart Part(KeyBook keys, MapReader item)
    {
        string key = item.Key("part");
        keys.Take(key, item.PlaceOf("part"));
        return new(key, item.Text("name")?.Text ?? "", item.Required("of", "boards"), item.Whole("count", 1, 1, 10_000),
            item.RequiredLength("length", "36"), item.Length("width"), item.PlaceOf("part"));
    }
}
