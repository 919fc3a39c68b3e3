using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>The usual figures of the trade.</summary>
internal static class Usual
{
    /// <summary>A figure that is said in inches and in millimetres: that of the unit of the piece.</summary>
    public static ExactLength Length(Book book, string id) => TradeRules.Get(id).Series[book.Piece.Unit == LengthUnit.Inch ? 0 : ^1];

    /// <summary>What is given, or the usual figure with its source.</summary>
    public static Stated Or(Book book, Given? given, string id, string words) =>
        given?.Stated ?? new Stated(Length(book, id), new(OriginKind.Rule, words, TradeRules.Get(id).Cited));
}
