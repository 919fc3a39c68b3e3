using System.Text.Json;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Tests;

/// <summary>Reads the outside instances of the data folder; see its README for the sources.</summary>
internal static class OutsideData
{
    public static SheetInstance Sheets(string id, GrainRule grain)
    {
        using JsonDocument document = Read(id);
        return new(
            [.. document.RootElement.GetProperty("parts").EnumerateArray().Select((p, i) => new SheetPart($"p{i}", At(p, 0), At(p, 1), p[2].GetInt32(), grain))],
            [.. document.RootElement.GetProperty("sheets").EnumerateArray().Select((s, i) => new SheetStock($"s{i}", At(s, 0), At(s, 1), EdgeTrim.None, new Money(1), null))],
            Length.Zero, new KeepRule(Length.FromMillimetres(200), Length.FromMillimetres(500)));
    }

    public static BoardInstance Boards(string id)
    {
        using JsonDocument document = Read(id);
        return new(
            [.. document.RootElement.GetProperty("parts").EnumerateArray().Select((p, i) => new BoardPart($"p{i}", At(p, 0), p[1].GetInt32()))],
            [new BoardStock("board", Length.FromMillimetres(document.RootElement.GetProperty("stock_length").GetInt64()), EndTrim.None, new Money(1), null)],
            Length.Zero, Length.FromMillimetres(100));
    }

    private static Length At(JsonElement list, int index) => Length.FromMillimetres(list[index].GetInt64());

    private static JsonDocument Read(string id)
    {
        using Stream stream = typeof(OutsideData).Assembly.GetManifestResourceStream($"{id}.json")
            ?? throw new InvalidOperationException($"The data folder has no {id}.json.");
        return JsonDocument.Parse(stream);
    }
}
