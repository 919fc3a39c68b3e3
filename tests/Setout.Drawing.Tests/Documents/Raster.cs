using System.Diagnostics;
using System.Text;

namespace Setout.Drawing.Tests.Documents;

/// <summary>A page as a printer would ink it, from Debian's poppler-utils.</summary>
internal sealed class Raster
{
    private readonly byte[] _grey;
    private readonly int _width;
    private readonly double _perMillimetre;

    private Raster(byte[] grey, int width, int dotsPerInch) => (_grey, _width, _perMillimetre) = (grey, width, dotsPerInch / 25.4);

    public static Raster Of(byte[] pdf, int dotsPerInch)
    {
        string folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            string path = Path.Combine(folder, "page.pdf");
            File.WriteAllBytes(path, pdf);
            var start = new ProcessStartInfo("pdftoppm", ["-gray", "-r", $"{dotsPerInch}", "-f", "1", "-singlefile", path, Path.Combine(folder, "page")])
            {
                UseShellExecute = false,
                RedirectStandardError = true,
            };
            using Process process = Process.Start(start)!;
            Assert.Equal("", process.StandardError.ReadToEnd());
            process.WaitForExit();
            byte[] file = File.ReadAllBytes(Path.Combine(folder, "page.pgm"));
            string[] head = Encoding.ASCII.GetString(file, 0, 60).Split((char[]?)null, 5);
            int width = int.Parse(head[1]), height = int.Parse(head[2]);
            return new(file[^(width * height)..], width, dotsPerInch);
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    /// <summary>The share of a rectangle that is darker than half, in millimetres from the top left corner.</summary>
    public double Dark(double x, double y, double width, double height)
    {
        int dark = 0, all = 0;
        for (int row = (int)(y * _perMillimetre); row < (y + height) * _perMillimetre - 1; row++)
            for (int column = (int)(x * _perMillimetre); column < (x + width) * _perMillimetre - 1; column++, all++)
                if (_grey[(row * _width) + column] < 128) dark++;
        return dark / (double)all;
    }
}
