using System.Collections.Immutable;

namespace Setout.Cutting;

/// <summary>Comparison by content for records that hold arrays.</summary>
internal static class SameArrays
{
    public static bool Equal<T>(ImmutableArray<T> a, ImmutableArray<T> b) => a.AsSpan().SequenceEqual(b.AsSpan());

    public static int Hash<T>(ImmutableArray<T> items)
    {
        var hash = new HashCode();
        foreach (T item in items.AsSpan()) hash.Add(item);
        return hash.ToHashCode();
    }
}
