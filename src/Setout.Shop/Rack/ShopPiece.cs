using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Rack;

/// <summary>A piece of the shop as its rack knows it.</summary>
/// <param name="Name">Of its piece file, without the folder: one in a shop. Empty where nobody said it.</param>
/// <param name="Piece">Whose materials its log names; without any where the file cannot be read, and then names of blanks are all that is known.</param>
/// <param name="Log">What it took and left.</param>
public sealed record ShopPiece(string Name, Piece Piece, Log Log)
{
    /// <summary>A log alone: names of blanks count, and no wood is known.</summary>
    public static ShopPiece Of(string name, Log log) =>
        new(name, new("", "", LengthUnit.Inch, null, ImmutableDictionary<string, Material>.Empty, ImmutableDictionary<string, DrawerKind>.Empty, [], ImmutableDictionary<string, Place>.Empty), log);

    /// <summary>The finding for a neighbour that cannot be read. The plan goes on; what is not known is said.</summary>
    /// <param name="file">The file, without the folder.</param>
    /// <param name="why">A sentence without its point.</param>
    /// <param name="unknown">What is not known, as a sentence.</param>
    public static Finding Unread(string file, string why, string unknown) =>
        new("rack.piece-unread", Severity.Warn, "", $"'{file}' beside this piece cannot be read: {why.TrimEnd('.')}. {unknown}", "Mend that file, or look in the rack before you cut.");

    /// <summary>What people call it: its own name; its file's where another piece has that name, or it has none.</summary>
    /// <param name="beside">Whoever is told.</param>
    public string Spoken(Piece beside) => Piece.Name.Length == 0 || Piece.Name == beside.Name ? Name : Piece.Name;
}
