using System.IO.Compression;
using PdfSharp.Pdf;

namespace Setout.Drawing.Documents.Pdf;

/// <summary>Small makers of PDF objects.</summary>
internal static class PdfObjects
{
    /// <summary>A dictionary that others can refer to.</summary>
    public static PdfDictionary Dictionary(PdfDocument pdf, string type)
    {
        var dictionary = new PdfDictionary(pdf);
        if (type.Length > 0) dictionary.Elements.SetName("/Type", type);
        pdf.Internals.AddObject(dictionary);
        return dictionary;
    }

    /// <summary>A compressed stream.</summary>
    public static PdfDictionary Stream(PdfDocument pdf, byte[] content)
    {
        using var packed = new MemoryStream();
        using (var zip = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true)) zip.Write(content);
        var stream = new PdfDictionary(pdf);
        pdf.Internals.AddObject(stream);
        stream.CreateStream(packed.ToArray());
        stream.Elements.SetName("/Filter", "/FlateDecode");
        return stream;
    }

    public static PdfArray Numbers(PdfDocument pdf, params ReadOnlySpan<double> numbers)
    {
        var array = new PdfArray(pdf);
        foreach (double number in numbers) array.Elements.Add(new PdfReal(number));
        return array;
    }
}
