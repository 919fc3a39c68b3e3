using Setout.Core.Pieces;

namespace Setout.Shop.Texts;

/// <summary>Reads what a piece is finished with.</summary>
internal static class FinishText
{
    // More coats than this are a slip of the pen: common practice, no source.
    private const int MostCoats = 30;

    /// <summary>A finish of the piece.</summary>
    public static Finish Read(KeyBook keys, Named name, MapReader map)
    {
        keys.Take(name.Text, name.Place);
        Named product = map.Required("finish", "clear varnish");
        int coats = map.Whole("coats", 1, 1, MostCoats);
        if (!map.IsThere("coats")) map.Missing("coats", "3");
        return new(name.Text, product, coats, map.Coverage("covers"), map.Volume("can"), map.OneOrMore("on"), name.Place);
    }
}
