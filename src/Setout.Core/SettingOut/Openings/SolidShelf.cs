using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Openings;

/// <summary>Shelves of solid wood grow from front to back. Between sides that do not, they leave room for that behind them; in a case of the same wood they move with it.</summary>
internal static class SolidShelf
{
    /// <summary>What comes off the width of a shelf; nothing for sheet goods, and where its grain runs from front to back.</summary>
    public static ImmutableArray<Term> Room(Book book, Space space, Panel panel, bool isGrainDeep)
    {
        if (isGrainDeep || WoodMoves.Solid(panel) is not { } wood) return [];
        var key = QuantityKey.Of(space.Prefix, "shelf-room");
        if (!book.Knows(key))
        {
            // What is behind it goes with the side that follows it least.
            Rational follows = Carriers.Beside(space).Select(e => GrainWay.Moves(book, e.Part, Along.Y)).Min();
            if ((WoodMoves.Share(panel, book.Piece.MoistureChange) - follows).Sign <= 0) return [];
            book.Define(space.Prefix, "shelf-room", $"{space.Name}, room behind its shelves for what they move", new Sum([WoodMoves.Term(panel, wood, book.Piece.MoistureChange, space.Depth),
                .. follows.Sign == 0 ? ImmutableArray<Term>.Empty : [Term.From("what stands beside them moves too", -follows, space.Depth)]]));
        }
        return [Term.From("room for what it moves", -1, key)];
    }
}
