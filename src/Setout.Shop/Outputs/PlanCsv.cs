using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Shop.BenchSheets;
using Setout.Shop.Plans;

namespace Setout.Shop.Outputs;

/// <summary>
/// Writes parts.csv and buying.csv: RFC 4180 (comma, CRLF, header), UTF-8 with a mark, no cell that is a bare fraction (a spreadsheet would make a
/// date of it), and cells that a spreadsheet would run made harmless by a leading apostrophe.
/// </summary>
public static class PlanCsv
{
    /// <summary>The parts.</summary>
    public static byte[] Parts(SetPiece set) => Write(
        ["key", "mark", "name", "material", "count", "length_mm", "length", "width_mm", "width", "thickness_mm", "thickness", "grain", "edges"],
        set.Parts.Select(p => new object[]
        {
            p.Key, p.Mark, p.Name, p.Material, p.Count,
            Millimetres(set.Worked[p.Length.ToCut]), Text(set, set.Worked[p.Length.ToCut]),
            Millimetres(set.Worked[p.Width.ToCut]), Text(set, set.Worked[p.Width.ToCut]),
            Millimetres(set.Worked[p.Thickness]), Text(set, set.Worked[p.Thickness]),
            p.Grain == Core.Pieces.Grain.Keep ? "keep" : "free", set.EdgesOf(p),
        }));

    /// <summary>The buying list.</summary>
    public static byte[] Buying(Plan plan) => Write(["group", "item", "count", "unit", "price", "total", "currency", "spare"],
        plan.Buying.Select(l => new object[]
        {
            ListPages.GroupName(l.Kind), l.Item, l.Count, l.Unit, l.Price is { } p ? p.Amount : "", l.Total is { } t ? t.Amount : "", plan.Source.Shop.Currency, l.Beside,
        }));

    private static decimal Millimetres(ExactLength length) => length.ToNearestTick().ToMillimetres();

    private static string Text(SetPiece set, ExactLength length) => LengthFormat.For(set.Piece.Unit).Text(length);

    private static byte[] Write(string[] head, IEnumerable<object[]> rows)
    {
        using var stream = new MemoryStream();
        using (var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true)))
        using (var csv = new CsvWriter(writer, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\r\n" }))
        {
            foreach (string column in head) csv.WriteField(column);
            csv.NextRecord();
            foreach (object[] row in rows)
            {
                foreach (object cell in row) csv.WriteField(cell is string text ? Harmless(text) : string.Create(CultureInfo.InvariantCulture, $"{cell}"));
                csv.NextRecord();
            }
        }
        return stream.ToArray();
    }

    private static string Harmless(string text) => text.Length > 0 && "=+-@\t\r".Contains(text[0]) ? "'" + text : text;
}
