namespace Setout.Shop.Plans;

/// <summary>Letters that count: A to Z, then AA, AB...</summary>
internal static class Letters
{
    /// <summary>The letter of an index from 0.</summary>
    public static string Upper(int index)
    {
        string letters = "";
        for (int i = index; i >= 0; i = (i / 26) - 1) letters = (char)('A' + (i % 26)) + letters;
        return letters;
    }

    /// <summary>The small letter of an index from 0.</summary>
    public static string Lower(int index) => Upper(index).ToLowerInvariant();
}
