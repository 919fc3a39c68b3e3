using Setout.Core.Measures;

namespace Setout.Shop.Tests.Rack;

/// <summary>A blank in the books of a shop.</summary>
/// <param name="Along">Along its grain.</param>
/// <param name="Across">Across it.</param>
/// <param name="By">The piece that left it.</param>
/// <param name="IsForAll">Whether others may use it.</param>
/// <param name="Identity">The wood.</param>
internal sealed record BookedBlank(Length Along, Length Across, string By, bool IsForAll, string Identity);

/// <summary>The books of a shop: what lies in it, whichever piece is worked on.</summary>
internal sealed class ShopBooks
{
    public Dictionary<string, BookedBlank> Blanks { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, BookedBlank> Gone { get; } = new(StringComparer.Ordinal);

    public Dictionary<int, int> TakenOfLine { get; } = [];
}
