using System.Text.RegularExpressions;
using CsCheck;
using Setout.Shop.Edits;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Edits;

/// <summary>Texts strewn with remarks that can be told from one another, to see which of them an edit loses.</summary>
internal static partial class RemarkedText
{
    /// <summary>The samples, the pieces that tests use, and some written in ways of their own.</summary>
    public static readonly string[] Plain =
    [
        .. Repository.FilesIn("samples", "*.yaml").Concat(Repository.FilesIn("tests", "*.yaml")).Select(f => File.ReadAllText(Repository.PathOf(f))).Where(t => t.Contains("\nsetout: 1", StringComparison.Ordinal) || t.StartsWith("setout: 1", StringComparison.Ordinal)),
        """
        setout: 1
        name: "Odd: one"
        unit: in
        materials: {
          ply: {panel: hardwood plywood, label: 3/4},
          thin: {panel: hardwood plywood,
                 label: 1/4}
        }
        drawers: {d: {sides: ply, bottom: thin, front: ply}}
        assembly:
        - case: C
          of: ply
          width: 30
          height: 30

          depth: 12
          across: [
            {opening: A, width: 12},
            {partition: P},
            {opening: B,
             drawers: {like: d, down: [{drawer: D1, front: 5}, {drawer: D2}]}}
          ]

        - top: T
          of: ply

        # the end
        """,
        "setout: 1\nname: 'Small'\nunit: mm\nmaterials:\n    ply:\n        panel: mdf\n        label: 3/4\nparts:\n    -   part: P\n        of: ply\n        length: 300\n        width: 200\n    -   {part: Q, of: ply, length: 300,\n         width: 200}\n",
    ];

    /// <summary>One of them, with remarks of its own on some lines and above some, and either line end.</summary>
    public static readonly Gen<string> Text = Gen.Select(Gen.OneOf(Plain), Gen.Int[0, 3].Array[120], Gen.Int[0, 2], (text, ways, end) =>
    {
        string[] lines = text.Split('\n');
        var result = new List<string>();
        for (int i = 0; i < lines.Length; i++)
        {
            int way = ways[i % ways.Length];
            string line = lines[i];
            bool isBlank = string.IsNullOrWhiteSpace(line), isRemark = line.TrimStart().StartsWith('#');
            if (way >= 2 && !isBlank && !isRemark) result.Add($"{line[..^line.TrimStart().Length]}#~{i}a");
            result.Add(way is 1 or 2 && !isBlank && !line.Contains('#', StringComparison.Ordinal) ? $"{line}  #~{i}b" : line);
        }
        string all = string.Join('\n', result);
        return end switch { 0 => all, 1 => all.ReplaceLineEndings("\r\n"), _ => "\uFEFF" + all.TrimEnd('\n') };
    });

    /// <summary>The remarks in a text, with the line of each, from 1.</summary>
    public static Dictionary<string, int> Remarks(string text) =>
        text.Split('\n').SelectMany((line, i) => Mark().Matches(line).Select(m => (m.Value, i + 1))).ToDictionary(m => m.Value, m => m.Item2);

    [GeneratedRegex(@"#~\d+[ab]")]
    private static partial Regex Mark();
}
