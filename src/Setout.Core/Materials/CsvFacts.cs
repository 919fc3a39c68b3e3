using System.Reflection;
using System.Globalization;
using System.Text;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;

namespace Setout.Core.Materials;

/// <summary>Reads our own tables of facts, embedded in this assembly. They are ours, so a fault in them is a bug and throws.</summary>
internal static class CsvFacts
{
    /// <summary>The rows of a table as column name to text.</summary>
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Read(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The table {name} is not embedded.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        string[] head = Split(reader.ReadLine()!);
        var rows = new List<IReadOnlyDictionary<string, string>>();
        while (reader.ReadLine() is { } line)
        {
            if (line.Length == 0) continue;
            string[] cells = Split(line);
            if (cells.Length != head.Length) throw new InvalidOperationException($"{name}: '{line}' has {cells.Length} cells, not {head.Length}.");
            rows.Add(head.Zip(cells).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal));
        }
        return rows;
    }

    /// <summary>A length in a table; tables name every unit.</summary>
    public static ExactLength Length(string text) => LengthText.Parse(text, LengthUnit.Millimetre).Value;

    /// <summary>A share in a table, such as <c>2/3</c>, or a whole number.</summary>
    public static Rational Share(string text)
    {
        long[] numbers = [.. text.Split('/').Select(n => long.Parse(n, NumberStyles.None, CultureInfo.InvariantCulture))];
        return numbers is [var whole] ? Rational.Of(whole) : Rational.Of(numbers[0], numbers[1]);
    }

    private static string[] Split(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < line.Length; i++)
        {
            char c = line[i];
            if (quoted && c == '"' && i + 1 < line.Length && line[i + 1] == '"') { cell.Append('"'); i++; }
            else if (c == '"') quoted = !quoted;
            else if (c == ',' && !quoted) { cells.Add(cell.ToString()); cell.Clear(); }
            else cell.Append(c);
        }
        cells.Add(cell.ToString());
        return [.. cells];
    }
}
