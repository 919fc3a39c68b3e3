using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;
using Setout.Core.Workings;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Outputs;

/// <summary>Reads the layouts of sheets back from a plan.json, so that a new plan can keep to them.</summary>
public static class EarlierPlan
{
    // Each division is three levels deep, and layouts are rarely more than ten divisions deep.
    internal const int MostDepth = 400;

    /// <summary>The most bytes that are read.</summary>
    public static TextLimits Limits { get; } = new(Bytes: 64 * 1024 * 1024);

    /// <summary>Takes the layouts out of the text of a plan.json. Whether they still suit the piece is not looked at.</summary>
    public static TextRead<EarlierLayouts> Read(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text, new() { MaxDepth = MostDepth });
            JsonElement version = CutTreeJson.Member(document.RootElement, "version");
            if (version.ValueKind != JsonValueKind.Number || !version.TryGetInt32(out int number) || number != Plan.Version)
                throw new FormatException($"its version is {version.GetRawText()}, not {Plan.Version.ToString(CultureInfo.InvariantCulture)}");
            ImmutableSortedDictionary<string, SheetLayout>.Builder layouts = EarlierLayouts.None.ByMaterial.ToBuilder();
            foreach (JsonElement material in CutTreeJson.Items(document.RootElement, "sheets"))
            {
                string name = CutTreeJson.Text(material, "material");
                SheetLayout layout = new([.. CutTreeJson.Items(material, "layout").Select(Sheet)], []);
                if (!layouts.TryAdd(name, layout)) throw new FormatException($"'{name}' is there twice");
            }
            return new(new(layouts.ToImmutable(), Fingerprint(layouts)), []);
        }
        catch (JsonException broken)
        {
            return Refuse(new((int)Math.Min(int.MaxValue, (broken.LineNumber ?? 0) + 1), (int)Math.Min(int.MaxValue, (broken.BytePositionInLine ?? 0) + 1)), "it is not JSON, or nested too deeply");
        }
        catch (FormatException wrong)
        {
            return Refuse(default, wrong.Message);
        }
    }

    private static LaidSheet Sheet(JsonElement sheet) => new(CutTreeJson.Text(sheet, "stock_id"), CutTreeJson.Read(CutTreeJson.Member(sheet, "cuts")));

    private static TextRead<EarlierLayouts> Refuse(Place place, string words) => new(null,
        [new("before.unreadable", Severity.Stop, "", $"The earlier plan cannot be read: {words}.", "Name the folder of a plan made by this version, or leave --before out.", place)]);

    // Over the layouts alone, so that a plan that changes nothing has the fingerprint of the one before it.
    private static string Fingerprint(IEnumerable<KeyValuePair<string, SheetLayout>> layouts) => Convert.ToHexStringLower(SHA256.HashData(PlanJson.Write(json =>
    {
        json.WriteStartArray();
        foreach ((string material, SheetLayout layout) in layouts)
        {
            json.WriteStringValue(material);
            foreach (LaidSheet sheet in layout.Sheets)
            {
                json.WriteStringValue(sheet.StockId);
                CutTreeJson.Write(json, sheet.Root);
            }
        }
        json.WriteEndArray();
    })));
}
