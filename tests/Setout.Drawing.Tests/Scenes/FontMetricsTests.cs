using System.Buffers.Binary;
using System.Text;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests.Scenes;

public sealed class FontMetricsTests
{
    public static TheoryData<Face> Faces => [Face.Regular, Face.SemiBold, Face.Italic];

    // Everything that documents and drawings write: digits, marks of fractions, signs of sums, primes, arrows, the check mark.
    [Theory]
    [MemberData(nameof(Faces))]
    public void Has_EverySignThatIsWritten_IsThere(Face face)
    {
        const string needed = "0123456789/\u2044x×−-–—+=±·…′″'\"’“”→←↑↓✓½¼¾⅛⅜⅝⅞°%()[]:;,.\u00A0éöüß&<>≤≥≈ø";
        FontMetrics metrics = Typeface.Metrics(face);

        string missing = string.Concat(needed.EnumerateRunes().Where(r => !metrics.Has(r)).Select(r => $"{r} U+{r.Value:X4} "));
        Assert.Equal("", missing);
    }

    // OpenType specification, OS/2 table, xAvgCharWidth (version 3 and later): the mean of the widths of all glyphs that have one.
    [Theory]
    [MemberData(nameof(Faces))]
    public void Advances_OfAllGlyphs_HaveTheMeanThatTheFontStates(Face face)
    {
        ushort[] widths = [.. Typeface.Metrics(face).Advances.Where(w => w > 0)];

        Assert.Equal(StatedMean(Typeface.File(face)), widths.Average(w => (double)w), 1.0);
    }

    [Theory]
    [MemberData(nameof(Faces))]
    public void Advance_Digits_AreAllEqual(Face face)
    {
        FontMetrics metrics = Typeface.Metrics(face);

        Assert.Single("0123456789".EnumerateRunes().Select(metrics.Advance).Distinct());
        Assert.Equal(10 * metrics.Advance(new Rune('0')), metrics.Advance("0123456789"));
    }

    [Fact]
    public void CapHeight_OfTheFont_IsWhatTheDrawingsCentreBy() =>
        Assert.Equal(TextMeasure.CapHeight, Typeface.Metrics(Face.Regular).CapHeight / (double)Typeface.Metrics(Face.Regular).UnitsPerEm, 3);

    [Fact]
    public void Advance_MissingSign_IsTheMissingGlyphBox()
    {
        FontMetrics metrics = Typeface.Metrics(Face.Regular);

        Assert.False(metrics.Has(new Rune(0x1F600)));
        Assert.Equal(metrics.Advances[0], metrics.Advance(new Rune(0x1F600)));
    }

    [Fact]
    public void Read_FileCutShort_IsSaidPlainly()
    {
        byte[] file = Typeface.File(Face.Regular);

        Assert.Throws<InvalidDataException>(() => FontMetrics.Read(file[..5000]));
        Assert.Throws<InvalidDataException>(() => FontMetrics.Read(new byte[12]));
        Assert.Throws<InvalidDataException>(() => FontMetrics.Read([]));
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
