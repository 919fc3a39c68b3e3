using System.Text;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Takes a text out of bytes: no more of them than the limit, strictly UTF-8, without a byte order mark.</summary>
public static class TextBytes
{
    private static readonly UTF8Encoding s_strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads a stream to its end, or until it has given one byte more than the limit. The stream is not closed.</summary>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static TextRead<string> Read(Stream stream, TextLimits? limits = null)
    {
        limits ??= TextLimits.Usual;
        using var held = new MemoryStream();
        var chunk = new byte[Math.Min(64 * 1024, limits.Bytes + 1)];
        while (held.Length <= limits.Bytes)
        {
            // The mark at the start is not counted against the text, but it is against what is read.
            int got = stream.Read(chunk, 0, (int)Math.Min(chunk.Length, limits.Bytes + 1 - held.Length));
            if (got == 0) return Decode(held.GetBuffer().AsSpan(0, (int)held.Length));
            held.Write(chunk, 0, got);
        }
        return new(null, [limits.TooLarge]);
    }

    /// <summary>Decodes the bytes of a whole text.</summary>
    public static TextRead<string> Decode(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith([(byte)0xFF, (byte)0xFE]) || bytes.StartsWith([(byte)0xFE, (byte)0xFF]))
            return Refuse(new(1, 1), "This text is saved as UTF-16, not as UTF-8.");
        if (bytes.StartsWith([(byte)0xEF, (byte)0xBB, (byte)0xBF])) bytes = bytes[3..];
        try
        {
            return new(s_strict.GetString(bytes), []);
        }
        catch (DecoderFallbackException broken)
        {
            int at = Math.Clamp(broken.Index, 0, bytes.Length);
            // What stands before the bad byte is sound, so it tells the line and the column.
            string before = Encoding.UTF8.GetString(bytes[..at]);
            string which = broken.BytesUnknown is { Length: > 0 } unknown ? $" ({string.Join(' ', unknown.Select(b => b.ToString("x2")))})" : "";
            return Refuse(TextPlace.Of(before, before.Length), $"A letter here is not UTF-8{which}.");
        }
    }

    private static TextRead<string> Refuse(Place place, string words) =>
        new(null, [new("text.not-utf8", Severity.Stop, "", words, "Save the file as UTF-8 in your editor.", place)]);
}

/// <summary>Finds line and column of an index.</summary>
internal static class TextPlace
{
    /// <summary>Line and column, from one, of a zero-based index. A line ends with LF, CR or both.</summary>
    public static Place Of(string text, int index)
    {
        int line = 1, start = 0;
        for (int i = 0; i < index; i++)
        {
            bool ends = text[i] == '\n' || (text[i] == '\r' && (i + 1 >= text.Length || text[i + 1] != '\n'));
            if (!ends) continue;
            line++;
            start = i + 1;
        }
        return new(line, index - start + 1);
    }
}
