using System.Diagnostics;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests.Documents;

/// <summary>Makes small documents and reads PDF files back.</summary>
internal static class PrintRoom
{
    public static Stamp Stamp { get; } = new("Plan chest", "14 March 2031, 9:40", new DateTimeOffset(2031, 3, 14, 9, 40, 0, TimeSpan.Zero), "1.0", "3f9c1a7");

    public static BenchDocument Document(params Block[] blocks) => new("Plan chest", "en", Stamp, Paper.Letter, [new Section("Parts", [.. blocks])]);

    /// <summary>A figure in inches without its unit, from sixty-fourths.</summary>
    public static Figure Inches(int sixtyFourths) => LengthFormat.Inch.Bare.Format(ExactLength.FromInches(Rational.Of(sixtyFourths, 64)));

    public static Figure Inches(int whole, int numerator, int denominator) => Inches((whole * 64) + (numerator * 64 / denominator));

    public static Phrase Figure(int whole, int numerator, int denominator) => Phrase.Of(Inches(whole, numerator, denominator));

    public static byte[] Bytes(BenchDocument document)
    {
        using var stream = new MemoryStream();
        PdfWriter.Save(document, stream);
        return stream.ToArray();
    }

    public static byte[] Bytes(Scene scene)
    {
        using var stream = new MemoryStream();
        PdfScenes.Save(scene, "en", Stamp, stream);
        return stream.ToArray();
    }

    /// <summary>The text as Debian's poppler-utils gives it; a missing program fails the test.</summary>
    public static string PdfToText(byte[] pdf, params string[] options)
    {
        string path = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.pdf");
        File.WriteAllBytes(path, pdf);
        try
        {
            var start = new ProcessStartInfo("pdftotext") { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
            foreach (string option in options) start.ArgumentList.Add(option);
            start.ArgumentList.Add(path);
            start.ArgumentList.Add("-");
            using Process process = Process.Start(start)!;
            string text = process.StandardOutput.ReadToEnd();
            string complaints = process.StandardError.ReadToEnd();
            process.WaitForExit();
            Assert.Equal("", complaints);
            Assert.Equal(0, process.ExitCode);
            return text;
        }
        finally
        {
            File.Delete(path);
        }
    }
}
