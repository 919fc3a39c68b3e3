using System.Collections.Immutable;
using System.IO.Compression;
using System.Text;

namespace Setout.Soak;

/// <summary>Spoils texts: single signs, lines, keys, values.</summary>
internal static class Spoiling
{
    private const string Signs = "abcz019 /-+:;,.#'\"\\[]{}&*!|>%@`~?=<\n\r\t\u00A0\u00e9\u00bd\u2033\u2028\uFEFF\uFFFD\uD83D\uDE00\u0000\u001b";

    private static readonly string[] s_values =
    [
        "0", "-1", "1/0", "999999999", "1e9", "3/7", "23 1/4", "23-1/4\"", "1' 11 1/4\"", "590mm", "96/3 - 3/4", "rest", "2 parts", "[]", "{}", "{of: birch}", "null", "true", "~", "''", "a: b", "- x", "!!str 1", "&a *a", "0.0000001", "400000 m",
        "9223372036854775807", "-9223372036854775808", "1/340282366920938463463374607431768211457", "1,5", "½", "３", "NaN", "each", "left", "right",
    ];

    private static readonly string[] s_units = ["mm", "cm", "m", "in", "ft", "\"", "'", "yd", "pt", "px", "ells", "kg", "\u00b5m", "\u2033", "deg", "%"];

    private static readonly string[] s_files =
        ["imported.yaml", "shop.yaml", "imported.log.yaml", "jar-cabinet.log.yaml", "../out.yaml", "put-away/old.yaml", "CON.yaml", "texts.zip", "backup.db", "a b.yaml", ".yaml", "nothing.txt", "C:\\texts\\chest.yaml", "\u00e9\u00df.yaml"];

    /// <summary>A text spoilt in one to six places; most often in one, for what is spoilt much is read no further.</summary>
    /// <param name="random">Where and how.</param>
    /// <param name="text">The text.</param>
    /// <param name="other">Another text that pieces of it may come from.</param>
    public static string Text(Random random, string text, string other)
    {
        for (int i = random.Next(3) > 0 ? 1 : random.Next(1, 7); i > 0 && text.Length > 2; i--) text = Once(random, text, other);
        return text;
    }

    /// <summary>Something that may be typed into a field.</summary>
    public static string Typed(Random random) => random.Next(8) switch
    {
        0 => "",
        1 => new string([.. Enumerable.Range(0, random.Next(1, 12)).Select(_ => Signs[random.Next(Signs.Length)])]),
        2 => new string((char)random.Next(32, 127), random.Next(1, 400)),
        3 => $"{random.Next(0, 200)}",
        4 => $"{random.Next(0, 90)} {random.Next(1, 32)}/32",
        _ => s_values[random.Next(s_values.Length)],
    };

    /// <summary>Something that fits many fields: a length, a count, a word.</summary>
    public static string Likely(Random random) => random.Next(6) switch
    {
        0 => $"{random.Next(1, 6)}",
        1 => $"{random.Next(1, 60)}",
        2 => $"{random.Next(1, 40)} {random.Next(1, 16)}/16",
        3 => $"{random.Next(1, 32)}/32",
        4 => $"{random.Next(10, 900)} mm",
        _ => "as it came out",
    };

    /// <summary>A figure in a unit of another, of none, or of no length at all.</summary>
    public static string Foreign(Random random) => $"{random.Next(1, 99)} {s_units[random.Next(s_units.Length)]}";

    /// <summary>Far more than anybody types.</summary>
    public static string Huge(Random random) => new(Signs[random.Next(Signs.Length)], random.Next(10) == 0 ? 5_000_000 : random.Next(1000, 200_000));

    /// <summary>Signs that are no letters.</summary>
    public static string Control(Random random) => new([.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => (char)(random.Next(4) == 0 ? random.Next(0x7F, 0xA0) : random.Next(0, 32)))]);

    /// <summary>Bytes of which some are others, are missing or stand twice.</summary>
    public static byte[] Bytes(Random random, byte[] bytes)
    {
        if (bytes.Length == 0) return [0xFF];
        int at = random.Next(bytes.Length), length = Math.Min(bytes.Length - at, random.Next(1, 30));
        switch (random.Next(5))
        {
            case 0: return bytes[..at];
            case 1: return [.. bytes[..at], .. bytes[(at + length)..]];
            case 2: return [.. bytes[..at], .. "%zz%00%ff%fe&&=&"u8, .. bytes[at..]];
            case 3: return [.. bytes, .. bytes[at..]];
            default:
                byte[] other = [.. bytes];
                for (int i = random.Next(1, 6); i > 0; i--) other[random.Next(other.Length)] ^= (byte)(1 << random.Next(8));
                return other;
        }
    }

    /// <summary>What a file may be called that is chosen for import or restoring.</summary>
    public static string FileName(Random random) => s_files[random.Next(s_files.Length)];

    /// <summary>What may be in it: a text of ours, one of ours spoilt, an archive that is none, nothing.</summary>
    public static byte[] FileOf(Random random, ImmutableArray<string> texts)
    {
        string text = texts[random.Next(texts.Length)], other = texts[random.Next(texts.Length)];
        return random.Next(7) switch
        {
            0 => [],
            1 => Encoding.UTF8.GetBytes(text),
            2 => [.. "PK\u0003\u0004"u8, .. Encoding.UTF8.GetBytes(text)[..40]],
            3 => [.. "SQLite format 3\0"u8, .. Encoding.UTF8.GetBytes(text)],
            4 => Archive(random, Text(random, text, other)),
            5 => Bytes(random, Archive(random, text)),
            _ => Encoding.UTF8.GetBytes(Text(random, text, other)),
        };
    }

    private static byte[] Archive(Random random, string text)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            for (int i = random.Next(1, 4); i > 0; i--)
            {
                using Stream file = zip.CreateEntry(FileName(random)).Open();
                file.Write(Encoding.UTF8.GetBytes(text));
            }
        }
        return stream.ToArray();
    }

    private static string Once(Random random, string text, string other)
    {
        string[] lines = text.Split('\n');
        int line = random.Next(lines.Length), at = random.Next(text.Length - 1), length = Math.Min(text.Length - at, random.Next(1, 40));
        switch (random.Next(13))
        {
            case 0: return text.Remove(at, length);
            case 1: return text.Insert(at, text.Substring(at, length));
            case 2: return text.Insert(at, Signs[random.Next(Signs.Length)].ToString());
            case 3: return text[..at] + Signs[random.Next(Signs.Length)] + text[(at + 1)..];
            case 4: return text[..at] + text[at + 1] + text[at] + text[(at + 2)..];
            case 5: return random.Next(10) == 0 ? text[..at] : text.Insert(at, " ");
            case 6: return Bytes(random, text);
            case 7: lines = [.. lines[..line], .. lines[(line + 1)..]]; break;
            case 8: lines = [.. lines[..line], lines[line], .. lines[line..]]; break;
            case 9: (lines[line], lines[^(random.Next(lines.Length) + 1)]) = (lines[^(random.Next(lines.Length) + 1)], lines[line]); break;
            case 10:
                string[] others = other.Split('\n');
                lines[line] = others[random.Next(others.Length)];
                break;
            case 11: lines[line] = Value(random, lines[line]); break;
            default: lines[line] = Key(random, lines, lines[line]); break;
        }
        return string.Join('\n', lines);
    }

    private static string Value(Random random, string line)
    {
        int colon = line.IndexOf(':', StringComparison.Ordinal);
        return colon < 0 ? line + s_values[random.Next(s_values.Length)] : $"{line[..(colon + 1)]} {s_values[random.Next(s_values.Length)]}";
    }

    private static string Key(Random random, string[] lines, string line)
    {
        string[] keys = [.. lines.Where(l => l.Contains(':', StringComparison.Ordinal)).Select(l => l[..l.IndexOf(':', StringComparison.Ordinal)].Trim(' ', '-', '{'))];
        int colon = line.IndexOf(':', StringComparison.Ordinal), start = line.Length - line.TrimStart(' ', '-').Length;
        return keys.Length == 0 || colon <= start ? line : line[..start] + keys[random.Next(keys.Length)] + line[colon..];
    }

    private static string Bytes(Random random, string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        for (int i = random.Next(1, 4); i > 0; i--) bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
        return Encoding.UTF8.GetString(bytes);
    }
}
