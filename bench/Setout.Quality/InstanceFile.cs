using System.Collections.Immutable;
using System.Text.Json;

namespace Setout.Quality;

/// <summary>Reads a file of instances, one JSON object a line; the keys are told in bench/data/README.md.</summary>
internal static class InstanceFile
{
    public static ImmutableArray<BenchInstance> Read(string path) =>
        [.. File.ReadLines(path).Where(l => l.Length > 0).Select(Parse)];

    private static BenchInstance Parse(string line)
    {
        using JsonDocument document = JsonDocument.Parse(line);
        JsonElement root = document.RootElement;
        string family = root.GetProperty("family").GetString()!, problem = root.GetProperty("problem").GetString()!;
        ImmutableArray<PlainPart> parts = [.. root.GetProperty("parts").EnumerateArray().Select(p => problem == "min_bars" ? new PlainPart(p[0].GetInt32(), 1, p[1].GetInt32(), 0)
            : new PlainPart(p[0].GetInt32(), p[1].GetInt32(), Maybe(p[2]), p.GetArrayLength() > 3 ? p[3].GetDecimal() : 0))];
        ImmutableArray<PlainStock> stock = problem == "min_bars"
            ? [new(root.GetProperty("stock_length").GetInt32(), 1, null, 1)]
            : [.. root.GetProperty("sheets").EnumerateArray().Select(s => Sheet(s, family, problem))];
        return new(root.GetProperty("id").GetString()!, family, problem, stock, parts);
    }

    private static PlainStock Sheet(JsonElement sheet, string family, string problem)
    {
        int width = sheet[0].GetInt32(), height = sheet[1].GetInt32();
        decimal cost = problem switch
        {
            "min_cost" => sheet[3].GetDecimal(),
            "min_area" => (decimal)width * height,
            _ => 1,
        };
        // The one sheet of hopper_t can be filled without waste. With as many as needed the answer is how many are taken (1 is perfect), not whether all went on one.
        return new(width, height, family == "hopper_t" ? null : Maybe(sheet[2]), cost);
    }

    private static int? Maybe(JsonElement number) => number.ValueKind == JsonValueKind.Null ? null : number.GetInt32();
}
