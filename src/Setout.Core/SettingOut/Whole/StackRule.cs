using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut.Joinery;
using Setout.Core.SettingOut.Tops;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Whole;

/// <summary>
/// A case on another, on a frame or on a top is screwed down through its bottom, so that nothing pulls it off what it stands on: one screw near each corner, which
/// stops inside what it goes into (common practice, no source). One with a base, a toe kick or feet of its own only stands there.
/// </summary>
internal static class StackRule
{
    private const int Screws = 4;

    /// <summary>How it is held, as the end of a sentence, with its screws among the hardware; empty where it only stands there.</summary>
    public static string Hold(Book book, Structure structure)
    {
        if (structure is not Case { IsHung: false, Base: null, Feet: null, Toe: null } described || structure.Stand.On.IsEmpty) return "";
        ExactLength bottom = book.Value(Book.ThicknessOf(described.Of.Text));
        ExactLength? into = null;
        foreach (Named named in structure.Stand.On)
        {
            QuantityKey? thick = book.Piece.Members.FirstOrDefault(m => m.Key == named.Text) switch
            {
                Top top => TopMakeUp.ThicknessOf(book, top),
                Case below => Book.ThicknessOf(below.Of.Text),
                // Into a rail on edge there is more than enough.
                _ => null,
            };
            if (thick is { } t && (into is null || book.Value(t) < into)) into = book.Value(t);
        }
        ExactLength? screw = into is { } least ? Fastening.IntoFace(book.Piece.Unit, bottom, least) : Fastening.IntoEdge(book.Piece.Unit, bottom);
        if (screw is not { } length) return ", and bolt it down through its bottom";
        book.Hardware.Add(new(described.Key, $"Wood screw no. 8 (4 mm), {book.Say(length)}", Screws, "piece", "down through its bottom into what it stands on; common practice, no source"));
        return $", and screw it down through its bottom near each corner, {Screws} screws";
    }
}
