using CsCheck;
using Setout.Shop.Edits;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Texts;

/// <summary>Spoilt samples: never an exception, and every finding stands within the text.</summary>
public class FuzzTests
{
    private static readonly string[] s_texts =
    [
        .. Repository.PieceSamples.Select(File.ReadAllText),
        Repository.Read("samples", "shop.yaml"),
        "setout-log: 1\nentries:\n  - id: a1\n    at: \"2026-05-04T09:40:00Z\"\n    read: L.width\n    values: [23/32 in, 18.2 mm]\n    with: \"tape\"\n  - {id: a2, at: 2026-05-04T09:41:00Z, cut: [C.side], from: boxes.sheet-1, figures: [{of: C.side.length, is: 30 in}], chosen: [{of: L3.slide.length, is: 18 in}]}\n  - {id: a3, at: 2026-05-04T09:42:00Z, void: a1}\n",
    ];

    private const string Signs = "abcz019 /-+:;,.#'\"\\[]{}&*!|>%@`~?=<\n\r\t\u00A0é½″\u2028\uFEFF\uFFFD\uD83D\uDE00\u0000\u001b";

    private static readonly Gen<(int Kind, double At, double To, char Sign)> s_change = Gen.Select(Gen.Int[0, 5], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Char[Signs]);

    /// <summary>Spoilt samples.</summary>
    internal static readonly Gen<string> Spoilt = Gen.Select(Gen.OneOf(s_texts), s_change.Array[1, 6], (text, changes) =>
    {
        foreach ((int kind, double at, double to, char sign) in changes)
        {
            if (text.Length < 2) break;
            int i = (int)(at * (text.Length - 2)), length = Math.Min(text.Length - i, 1 + (int)(to * 40));
            text = kind switch
            {
                0 => text.Remove(i, 1),
                1 => text.Remove(i, length),
                2 => text.Insert(i, text.Substring(i, length)),
                3 => text.Insert(i, sign.ToString()),
                4 => text[..i] + text[i + 1] + text[i] + text[(i + 2)..],
                _ => to > 0.9 ? text[..i] : text[..i] + sign + text[(i + 1)..],
            };
        }
        return text;
    });

    [Fact]
    public void Read_SpoiltSamples_GivesFindingsWithinTheTextAndNeverThrows() => Spoilt.Holds(text =>
    {
        Check(text, PieceText.Read(text));
        Check(text, ShopText.Read(text));
        Check(text, LogText.Read(text));
    }, iter: 2000);

    [Fact]
    public void Set_SpoiltSamples_NeverThrows() => Spoilt.Holds(text =>
    {
        TextRead<string> set = TextSplice.Set(text, TextPath.Of("C", "width"), "31");
        Assert.True(set.Value is not null || set.Findings.Length > 0);
    }, iter: 2000);

    private static void Check<T>(string text, TextRead<T> read) where T : class
    {
        Assert.True(read.Value is not null || read.Findings.Length > 0, "Neither a value nor a finding.");
        string[] lines = text.Split(["\r\n", "\n", "\r"], StringSplitOptions.None);
        Assert.All(read.Findings, f =>
        {
            Assert.NotEmpty(f.Words);
            Assert.NotEmpty(f.Remedy);
            Assert.True(f.Place.Line >= 1 && f.Place.Line <= lines.Length, $"{f}: the text has {lines.Length} lines.");
            Assert.True(f.Place.Column >= 1 && f.Place.Column <= lines[f.Place.Line - 1].Length + 1, $"{f}: the line has {lines[f.Place.Line - 1].Length} signs.");
        });
    }
}
