using System.Security.Cryptography;
using System.Text;

namespace Setout.Drawing.Documents.Pdf;

/// <summary>
/// The library stamps each file with random numbers. They are replaced by numbers made from the rest of the file, so that the same
/// input gives the same bytes and another input another number.
/// </summary>
internal static class FixedIds
{
    private const int DashedLength = 36, HexLength = 32;

    public static void Set(Span<byte> file)
    {
        int document = After(file, "<xmpMM:DocumentID>uuid:"), instance = After(file, "<xmpMM:InstanceID>uuid:"), first = After(file, "/ID[<");
        int second = first + HexLength + 2;
        file.Slice(document, DashedLength).Fill((byte)'0');
        file.Slice(instance, DashedLength).Fill((byte)'0');
        file.Slice(first, HexLength).Fill((byte)'0');
        file.Slice(second, HexLength).Fill((byte)'0');

        var id = new Guid(SHA256.HashData(file).AsSpan(0, 16));
        Put(file, document, id.ToString("D"));
        Put(file, instance, id.ToString("D"));
        Put(file, first, id.ToString("N").ToUpperInvariant());
        Put(file, second, id.ToString("N").ToUpperInvariant());
    }

    private static int After(ReadOnlySpan<byte> file, string text)
    {
        int at = file.LastIndexOf(Encoding.ASCII.GetBytes(text));
        return at >= 0 ? at + text.Length : throw new InvalidOperationException($"The library wrote no {text}: it is another version than this was made for.");
    }

    private static void Put(Span<byte> file, int at, string text) => Encoding.ASCII.GetBytes(text, file[at..]);
}
