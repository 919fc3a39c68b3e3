using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;

namespace Setout.Core.Fit.Mending;

/// <summary>Wood that a part can be cut anew from: an offcut, a sheet, a stick.</summary>
/// <param name="Name">The shop's own name for it, for people.</param>
/// <param name="Material">The name of its material in the piece.</param>
/// <param name="Length">Along the grain, trued.</param>
/// <param name="Width">Across the grain, trued; of a stick its section.</param>
/// <param name="Price">What it costs; null for what the shop has already.</param>
public sealed record Blank(string Name, string Material, Length Length, Length Width, Money? Price)
{
    /// <summary>Equal for blanks that are one piece of wood: lengths of one board, or a board that more than one material may come from. Empty for a piece that is like no other.</summary>
    public string Piece { get; init; } = "";
}

/// <summary>Finds wood for parts that are cut anew: the smallest blank in hand that holds each, else the cheapest to buy.</summary>
internal sealed class Rack
{
    // A full kerf between two parts of one blank. Common practice, no source.
    private static readonly Length s_kerf = Length.FromInches(1, 8);

    private readonly List<(Blank Blank, Length Along, Length Across)> _left;
    private readonly List<string> _words = [];
    private readonly HashSet<string> _bought = new(StringComparer.Ordinal);
    private bool _mustBuy;
    private Money _cost;
    private Area _area;

    public Rack(ImmutableArray<Blank> blanks) => _left =
        [.. blanks.OrderBy(b => b.Price is not null).ThenBy(b => b.Price ?? Money.Zero).ThenBy(b => b.Length * b.Width).ThenBy(b => b.Name, StringComparer.Ordinal).Select(b => (b, b.Length, b.Width))];

    /// <summary>What all that was taken comes to.</summary>
    public StockUse Use => new(string.Join("; ", _words.Distinct(StringComparer.Ordinal)), _mustBuy, _cost, _area);

    /// <summary>Takes wood for so many of a part, one after another; what is cut from one blank lies side by side.</summary>
    public void Take(Part part, ExactLength length, ExactLength width, int count, bool isStick)
    {
        (Length along, Length across) = (length.RoundTo(Grid.HalfMillimetre, Rounding.Up).Value, width.RoundTo(Grid.HalfMillimetre, Rounding.Up).Value);
        for (int i = 0; i < count; i++)
        {
            _area += along * across;
            int at = _left.FindIndex(b => b.Blank.Material == part.Material && Holds(b.Along, b.Across, along, across, part.Grain, isStick));
            if (at < 0)
            {
                _mustBuy = true;
                _words.Add($"no blank of {part.Material} holds the {part.Name}: a new {(isStick ? "stick" : "sheet")} must be bought");
                continue;
            }
            (Blank blank, Length l, Length w) = _left[at];
            _left[at] = isStick ? (blank, l - along - s_kerf, w) : l >= along && w >= across ? (blank, l, w - across - s_kerf) : (blank, l, w - along - s_kerf);
            // What one material is cut from is no blank of another any more.
            if (blank.Piece.Length > 0) _left.RemoveAll(b => b.Blank.Piece == blank.Piece && b.Blank.Material != blank.Material);
            if (blank.Price is { } price)
            {
                _mustBuy = true;
                if (_bought.Add(blank.Name)) _cost += price;
            }
            _words.Add($"{part.Name} from {blank.Name}{(blank.Price is null ? "" : ", to buy")}");
        }
    }

    // A stick has its section already; sheet goods must hold the part with its grain.
    private static bool Holds(Length along, Length across, Length length, Length width, Grain grain, bool isStick) =>
        isStick ? along >= length : (along >= length && across >= width) || (grain == Grain.Free && along >= width && across >= length);
}
