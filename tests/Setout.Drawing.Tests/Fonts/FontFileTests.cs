using System.Buffers.Binary;
using System.Text;
using Setout.Drawing.Fonts;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests.Fonts;

public sealed class FontFileTests
{
    public static TheoryData<Face> Faces => [Face.Regular, Face.SemiBold, Face.Italic];

    // Everything that documents and drawings write: digits, marks of fractions, signs of sums, primes, arrows, the check mark.
    [Theory]
    [MemberData(nameof(Faces))]
    public void Has_EverySignThatIsWritten_IsThere(Face face)
    {
        const string needed = "0123456789/\u2044x×−-–—+=±·…′″'\"’“”→←↑↓✓½¼¾⅛⅜⅝⅞°%()[]:;,.\u00A0éöüß&<>≤≥≈ø";
        FontFile font = Typeface.Font(face);

        string missing = string.Concat(needed.EnumerateRunes().Where(r => !font.Has(r)).Select(r => $"{r} U+{r.Value:X4} "));
        Assert.Equal("", missing);
    }

    // OpenType specification, OS/2 table, xAvgCharWidth (version 3 and later): the mean of the widths of all glyphs that have one.
    [Theory]
    [MemberData(nameof(Faces))]
    public void Advances_OfAllGlyphs_HaveTheMeanThatTheFontStates(Face face)
    {
        int[] widths = [.. Typeface.Font(face).Advances.Where(w => w > 0)];

        Assert.Equal(StatedMean(Typeface.File(face)), widths.Average(w => (double)w), 1.0);
    }

    [Theory]
    [MemberData(nameof(Faces))]
    public void Advance_Digits_AreAllEqual(Face face)
    {
        FontFile font = Typeface.Font(face);

        Assert.Single("0123456789".EnumerateRunes().Select(d => font.Advance($"{d}")).Distinct());
        Assert.Equal(10 * font.Advance("0"), font.Advance("0123456789"));
    }

    [Fact]
    public void CapHeight_OfTheFont_IsWhatTheDrawingsCentreBy() =>
        Assert.Equal(TextMeasure.CapHeight, Typeface.Font(Face.Regular).CapHeight / (double)Typeface.Font(Face.Regular).UnitsPerEm, 3);

    [Fact]
    public void Advance_MissingSign_IsTheMissingGlyphBox()
    {
        FontFile font = Typeface.Font(Face.Regular);

        Assert.False(font.Has(new Rune(0x1F600)));
        Assert.Equal(font.Advances[0], font.Advance("\U0001F600"));
    }

    [Fact]
    public void Read_FileCutShort_IsSaidPlainly()
    {
        byte[] file = Typeface.File(Face.Regular);

        Assert.Throws<InvalidDataException>(() => FontFile.Read(file[..5000]));
        Assert.Throws<InvalidDataException>(() => FontFile.Read(new byte[12]));
        Assert.Throws<InvalidDataException>(() => FontFile.Read([]));
    }

    private static double StatedMean(byte[] file)
    {
        int count = BinaryPrimitives.ReadUInt16BigEndian(file.AsSpan(4));
        for (int i = 0; i < count; i++)
        {
            ReadOnlySpan<byte> entry = file.AsSpan(12 + (i * 16), 16);
            if (entry[..4].SequenceEqual("OS/2"u8)) return BinaryPrimitives.ReadInt16BigEndian(file.AsSpan((int)BinaryPrimitives.ReadUInt32BigEndian(entry[8..]) + 2));
        }
        throw new InvalidDataException();
    }
}
