using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Drawing.Fonts;
using Setout.Drawing.Scenes;
using Setout.Testing;
using static Setout.Drawing.Tests.Figures;

namespace Setout.Drawing.Tests.Scenes;

public sealed class TextMeasureTests
{
    private static readonly Gen<Phrase> s_phrases =
        from runs in Gen.OneOf(
            Gen.String[Gen.Char["abcdefgh  123,;"], 1, 12].Select(words => new Run(words, null, false)),
            Gen.Long[-4_064_000L * 200, 4_064_000L * 200].Select(ticks => new Run("", LengthFormat.Inch.Format(Length.FromTicks(ticks)), true))).Array[1, 7]
        select new Phrase([.. runs]);

    [Fact]
    public void Set_AnyPhrase_KeepsThePlainText() =>
        s_phrases.Holds(p => string.Concat(TextMeasure.Set(p, 4).Stretches.Select(stretch => stretch.Text)) == p.PlainText);

    [Fact]
    public void Width_AnyPhrase_GrowsWithTheSize() =>
        s_phrases.Holds(p => Math.Abs(TextMeasure.Width(p, 8) - (2 * TextMeasure.Width(p, 4))) < 1e-9);

    [Fact]
    public void Set_MixedFraction_RaisesTheNumeratorAndLowersTheDenominator()
    {
        SetLine line = TextMeasure.Set(Fig("23 15/16"), 10);

        Assert.Equal(["23", " ", "15", "/", "16"], line.Stretches.Select(p => p.Text));
        Assert.True(line.Stretches[2].Rise > 0);
        Assert.True(line.Stretches[4].Rise < 0);
        // Look, sketches: numerals of a fraction that is cut by are at least 70 % as high as the whole number.
        Assert.True(line.Stretches[2].Size >= 7 && line.Stretches[4].Size >= 7);
        Assert.True(line.Stretches[1].Width is > 0.8 and < 2, "a thin gap, but a gap");
        Assert.True(line.Stretches[2].X > line.Stretches[1].X && line.Stretches[4].X >= line.Stretches[2].X + line.Stretches[2].Width);
    }

    [Fact]
    public void Set_AnyFraction_InkKeepsToTheStatedHeights() => Gen.Select(Gen.Int[1, 63], Gen.Bool, Gen.Bool).Holds((n, bold, italic) =>
    {
        Run run = Fig($"{n}/64").Runs[0] with { IsBold = bold, IsItalic = italic };
        foreach (TextStretch stretch in TextMeasure.Set(new([run]), 1).Stretches)
            foreach (Rune sign in stretch.Text.EnumerateRunes())
            {
                // The box that the font itself states at the head of each outline.
                FontFile font = Typeface.Font(stretch.Face);
                ReadOnlySpan<byte> outline = font.Outline(font.GlyphOf(sign));
                double Ink(int units) => stretch.Rise + (stretch.Size * units / font.UnitsPerEm);
                Assert.InRange(Ink(BinaryPrimitives.ReadInt16BigEndian(outline[4..])), -TextMeasure.FractionDescent, TextMeasure.Ascent);
                Assert.InRange(Ink(BinaryPrimitives.ReadInt16BigEndian(outline[8..])), -TextMeasure.FractionDescent, TextMeasure.Ascent);
            }
    });

    [Fact]
    public void Width_Words_IsTheSumOfTheFontsAdvances()
    {
        // Ten digits of 600 units in an em of 1000 (read from the font by its own table, see FontFileTests).
        Assert.Equal(10 * 0.6 * 4, TextMeasure.Width(Phrase.Of("0123456789"), 4), 9);
    }

    [Fact]
    public void Wrap_AnyPhrase_LosesNothingButSpaces() => s_phrases.Holds(p =>
    {
        ImmutableArray<Phrase> lines = TextMeasure.Wrap(p, 4, 30);
        return string.Concat(lines.Select(l => l.PlainText)).Replace(" ", "", StringComparison.Ordinal) == p.PlainText.Replace(" ", "", StringComparison.Ordinal);
    });

    [Fact]
    public void Wrap_LinesOfMoreThanOneWord_AreNeverTooWide() => s_phrases.Holds(p =>
        TextMeasure.Wrap(p, 4, 30).All(l => TextMeasure.Width(l, 4) <= 30 || !l.Runs.Any(r => r.Figure is null && r.Words.Trim().Contains(' ', StringComparison.Ordinal))));

    [Fact]
    public void Wrap_Figure_IsNeverBroken()
    {
        ImmutableArray<Phrase> lines = TextMeasure.Wrap(Phrase.Of("cut to ").Add(Fig("23 15/16")).Add(", then turn"), 4, 18);

        Assert.Contains(lines, l => l.PlainText.Contains("23 15/16,", StringComparison.Ordinal));
        Assert.True(lines.Length > 1);
    }
}
