using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>What a size of a part is called: a front and a box side stand upright, so that what is long on their wood is a width, and what is wide a height.</summary>
public static class SizeWords
{
    /// <summary><c>length</c>, <c>width</c>, <c>height</c> or <c>depth</c>, as the working of the size calls it; by the wood where that says none of these.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="exact">The size.</param>
    /// <param name="isLength">Whether it is what is long on the wood.</param>
    public static string Of(SetPiece set, QuantityKey exact, bool isLength)
    {
        string name = set.Worked.Values.TryGetValue(exact, out Worked? worked) ? worked.Quantity.Name : "", last = name[(name.LastIndexOf(' ') + 1)..];
        return last is "length" or "width" or "height" or "depth" ? last : isLength ? "length" : "width";
    }
}
