using System.Collections.Immutable;
using System.Text.Json;
using Setout.Core.Measures;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Outputs;

/// <summary>The tree of cuts of a sheet as JSON, written and read here alone. Sizes are millimetres, exact to the tick.</summary>
internal static class CutTreeJson
{
    private const string Part = "part", Keep = "keep", Waste = "waste", Rips = "rips", Crosscuts = "crosscuts";

    /// <summary>Writes what becomes of a rectangle as one object.</summary>
    public static void Write(Utf8JsonWriter json, CutNode node)
    {
        json.WriteStartObject();
        switch (node)
        {
            case PartNode part:
                json.WriteString("kind", Part);
                json.WriteString("part", part.PartId);
                json.WriteBoolean("turned", part.Turn == Turn.Quarter);
                break;
            case KeepNode:
                json.WriteString("kind", Keep);
                break;
            case WasteNode:
                json.WriteString("kind", Waste);
                break;
            case Division division:
                json.WriteString("kind", division.Axis == GrainAxis.Across ? Rips : Crosscuts);
                json.WriteNumber("dust", division.Dust.ToMillimetres());
                json.WriteStartArray("slices");
                foreach (Slice slice in division.Slices)
                {
                    json.WriteStartObject();
                    json.WriteNumber("size", slice.Size.ToMillimetres());
                    json.WritePropertyName("holds");
                    Write(json, slice.Content);
                    json.WriteEndObject();
                }
                json.WriteEndArray();
                break;
        }
        json.WriteEndObject();
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    /// <exception cref="FormatException">It is something else; the message says what was met.</exception>
    public static CutNode Read(JsonElement element) => Text(element, "kind") switch
    {
        Part => new PartNode(Text(element, "part"), Flag(element, "turned") ? Turn.Quarter : Turn.None),
        Keep => KeepNode.Instance,
        Waste => WasteNode.Instance,
        Rips => Divided(element, GrainAxis.Across),
        Crosscuts => Divided(element, GrainAxis.Along),
        var kind => throw new FormatException($"'{kind}' is no kind of place on a sheet"),
    };

    private static Division Divided(JsonElement element, GrainAxis axis)
    {
        ImmutableArray<Slice> slices = [.. Items(element, "slices").Select(s => new Slice(Size(s, "size"), Read(Member(s, "holds"))))];
        return slices.IsEmpty ? throw new FormatException("a division has no slices") : new(axis, slices, Size(element, "dust"));
    }

    /// <summary>A member that must be there.</summary>
    /// <exception cref="FormatException">It is not, or the element is no object.</exception>
    public static JsonElement Member(JsonElement element, string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out JsonElement member) ? member : throw new FormatException($"'{name}' is missing");

    /// <summary>A member that is a text.</summary>
    /// <exception cref="FormatException">It is not.</exception>
    public static string Text(JsonElement element, string name) =>
        Member(element, name) is { ValueKind: JsonValueKind.String } text ? text.GetString()! : throw new FormatException($"'{name}' is no text");

    /// <summary>The items of a member that is a list.</summary>
    /// <exception cref="FormatException">It is not.</exception>
    public static IEnumerable<JsonElement> Items(JsonElement element, string name) =>
        Member(element, name) is { ValueKind: JsonValueKind.Array } list ? list.EnumerateArray() : throw new FormatException($"'{name}' is no list");

    private static bool Flag(JsonElement element, string name) => Member(element, name).ValueKind switch
    {
        JsonValueKind.True => true,
        JsonValueKind.False => false,
        _ => throw new FormatException($"'{name}' is neither true nor false"),
    };

    /// <summary>A member that is a size in millimetres, on the tick.</summary>
    /// <exception cref="FormatException">It is not.</exception>
    public static Length Size(JsonElement element, string name)
    {
        JsonElement member = Member(element, name);
        bool isSize = member.ValueKind == JsonValueKind.Number && member.TryGetDecimal(out decimal size) && size >= 0 && size <= SheetInstance.Longest.ToMillimetres();
        decimal ticks = isSize ? member.GetDecimal() * Length.TicksPerMillimetre : 0.5m;
        return ticks == decimal.Truncate(ticks) ? Length.FromTicks((long)ticks) : throw new FormatException($"'{name}' is no size of a sheet");
    }
}
