namespace Setout.Store;

/// <summary>A text told by another: so many signs of its beginning, something else, so many signs of its end. Signs are counted in UTF-16.</summary>
/// <param name="Head">Signs kept of the beginning.</param>
/// <param name="Tail">Signs kept of the end.</param>
/// <param name="Middle">What stands between them.</param>
internal readonly record struct TextSplice(int Head, int Tail, string Middle)
{
    /// <summary>The shortest that makes <paramref name="text"/> of <paramref name="old"/>.</summary>
    public static TextSplice Between(string old, string text)
    {
        int most = Math.Min(old.Length, text.Length), head = old.AsSpan(0, most).CommonPrefixLength(text), tail = 0;
        while (tail < most - head && old[^(tail + 1)] == text[^(tail + 1)]) tail++;
        // A letter of two signs is never parted: half a letter could not be written to the disk.
        if (head > 0 && char.IsHighSurrogate(text[head - 1])) head--;
        if (tail > 0 && char.IsLowSurrogate(text[^tail])) tail--;
        return new(head, tail, text[head..^tail]);
    }

    /// <summary>Makes the text.</summary>
    /// <exception cref="ArgumentOutOfRangeException">This text is not the one it was made from.</exception>
    public string On(string old)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan((long)Head + Tail, old.Length, nameof(old));
        return string.Concat(old.AsSpan(0, Head), Middle, old.AsSpan(old.Length - Tail));
    }
}
