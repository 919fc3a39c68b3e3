using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>
/// The names of what is in hand, of one text. Layouts and lists call a blank by its name, so that one can go and fetch it: within one wood a name is one thing.
/// What has to be bought may share a name, such as that of who sells it.
/// </summary>
/// <param name="context">Of the text.</param>
internal sealed class RackNames(TextContext context)
{
    private readonly Dictionary<(string Wood, string Name), Place> _places = [];

    /// <summary>Says so where the name stands already.</summary>
    /// <param name="wood">Tells one wood from another.</param>
    /// <param name="size">What the entry gave; null for nothing.</param>
    /// <param name="entry">Where its name stands.</param>
    public void Take(string wood, StockSize? size, MapReader entry)
    {
        if (size is not { InHand: not null, Name.Length: > 0 }) return;
        Place place = entry.PlaceOf("name");
        if (_places.TryAdd((wood, size.Name), place)) return;
        context.Stop("stock.name-twice", place, $"'{TextContext.Shown(size.Name)}' is in hand in line {_places[(wood, size.Name)].Line} already, of the same wood.",
            "Give each a name of its own, or count those that are alike in one line with 'have'.");
    }
}
