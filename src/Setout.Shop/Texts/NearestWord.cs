namespace Setout.Shop.Texts;

/// <summary>Finds the known word that a mistyped one most likely stands for.</summary>
public static class NearestWord
{
    /// <summary>The nearest word within about a third of its letters, or null. At a tie the first in the order given.</summary>
    public static string? Of(string typed, IEnumerable<string> known)
    {
        string? best = null;
        int least = int.MaxValue;
        string shortened = typed.Length > 60 ? typed[..60] : typed;
        foreach (string word in known)
        {
            int distance = Distance(shortened.ToLowerInvariant(), word.ToLowerInvariant());
            if (distance < least) (best, least) = (word, distance);
        }
        if (best is null || least > Math.Max(1, Math.Max(best.Length, shortened.Length) / 3)) return null;
        // Of two letters, one changed makes another word: cm is not a slip for mm.
        return least > 0 && best.Length <= 2 && shortened.Length <= 2 && !shortened.Order().SequenceEqual(best.Order()) ? null : best;
    }

    // Edits of one letter, and two neighbours changed about, each count one.
    private static int Distance(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++) rows[i, 0] = i;
        for (int j = 0; j <= b.Length; j++) rows[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int cost = a[i - 1] == b[j - 1] ? 0 : 1;
                rows[i, j] = Math.Min(Math.Min(rows[i - 1, j] + 1, rows[i, j - 1] + 1), rows[i - 1, j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
            }
        }
        return rows[a.Length, b.Length];
    }
}
