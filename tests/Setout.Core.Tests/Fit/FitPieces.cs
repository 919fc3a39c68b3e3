using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using static Setout.Testing.Described;

namespace Setout.Core.Tests.Fit;

/// <summary>
/// A case 24 wide of 23/32 sheets with drawers D1, D2, ...: inside 22 9/16; less two slides of 1/2 and 1/32 of play the box is 21 17/32, less two
/// sides of 15/32 its ends are 20 19/32, on the grid of 1/32 as it is. So what is kept is what comes out.
/// </summary>
internal static class FitPieces
{
    public static QuantityKey Play { get; } = new("D1.play");

    /// <summary>A shop that errs in nothing.</summary>
    public static Accuracy Exact { get; } = new(
        ImmutableDictionary<string, Length>.Empty.Add("tape", Length.Zero).Add("rule", Length.Zero).Add("calliper", Length.Zero),
        Length.Zero, Length.Zero, Length.Zero, Length.Zero, Length.Zero, Length.Zero, Length.Zero);

    public static Accuracy With(this Accuracy accuracy, string instrument, Length off) => accuracy with { Instruments = accuracy.Instruments.SetItem(instrument, off) };

    public static SetPiece Drawers(int count, DrawerKind? kind = null, BenchFacts? facts = null) => PieceSetOut.Of(
        Piece(LengthUnit.Inch, UsualMaterials, [kind ?? Kind("box")],
            Case(Of("24"), Of("24"), Of("21"), new DrawerBank(Named("box"), [.. Enumerable.Range(1, count).Select(i => Drawer($"D{i}"))]))),
        Grid.ThirtySecond, facts ?? BenchFacts.Empty);

    public static SetPiece Drawers(int count, params (string Key, Pin Pin)[] pins) =>
        Drawers(count, facts: BenchFacts.Of(pins.ToDictionary(p => new QuantityKey(p.Key), p => p.Pin)));

    public static Pin Read(string length, string with) => new([Of(length)], new(OriginKind.Reading, "read"), "e") { With = [with] };

    public static ExactLength In(int numerator, int denominator) => ExactLength.FromInches(Rational.Of(numerator, denominator));

    public static Spread SpreadOf(SetPiece set, Accuracy accuracy, string key) => new Spreads(set, accuracy).Of(new(key))!;
}
