using Setout.Shop.Outputs;
using Setout.Workbench.ShopPages;

namespace Setout.Workbench.Shell;

/// <summary>The addresses of the places that words lead to.</summary>
internal static class PageLinks
{
    /// <summary>The address; null where the words lead nowhere from here.</summary>
    /// <param name="said">The words.</param>
    /// <param name="piece">The piece they are about, by its name in addresses; empty for none.</param>
    /// <param name="owner">The member they are about; empty for the whole piece.</param>
    public static string? Of(SaidStretch said, string piece, string owner)
    {
        string at = said.Piece.Length > 0 ? said.Piece : piece;
        return said.Place switch
        {
            SaidPlace.Shop => said.Key.Length == 0 ? ShopLinks.Shop : ShopLinks.Item(said.Key),
            SaidPlace.Facts when at.Length > 0 => Links.Stage(at, "facts"),
            SaidPlace.Fit when at.Length > 0 => Links.Stage(at, "fit"),
            SaidPlace.Working when at.Length > 0 => Links.Size(at, said.Key),
            SaidPlace.Sayings when at.Length > 0 => Says.SaysView.Link(at, owner),
            _ => null,
        };
    }
}
