using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Noting;

namespace Setout.Shop.Plans;

/// <summary>What is to be known where the thickness of sheet goods is read: a spot stands for a whole sheet, sheets differ in themselves and from each other, and the more spots there are the closer it is known.</summary>
public static class SpotWords
{
    /// <summary>How many spots of which sheets are read so far, such as <c>sheet 1 at 2 spots, sheet 2 at 1 spot</c>; empty for none.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="material">The sheet goods.</param>
    public static string ReadSoFar(SetPiece set, string material)
    {
        string At(QuantityKey key) => Count(set.Worked.Values.GetValueOrDefault(key)) is > 0 and int many ? $" at {Spots(many)}" : "";
        string lot = At(QuantityKey.Of(material, "thickness")) is { Length: > 0 } all ? "all of them as one" + all : "";
        return string.Join(", ", NotedKeys.SheetsRead(set, material).Select(s => $"sheet {s}{At(QuantityKey.Of(material + BenchFacts.SheetWord + s, "thickness"))}").Append(lot).Where(w => w.Length > 0));
    }

    /// <summary>How far sheets differ, with whose figure that is.</summary>
    /// <param name="accuracy">How closely the shop works.</param>
    /// <param name="unit">The unit it is told in.</param>
    public static string Differ(Accuracy accuracy, LengthUnit unit) =>
        $"a sheet differs in itself by about {Say(accuracy.Spot, unit)} to either side, sheets of a lot by {Say(accuracy.Sheet, unit)} ({(accuracy.Spot == Accuracy.Usual.Spot && accuracy.Sheet == Accuracy.Usual.Sheet ? "common practice, no source" : "by the shop file")})";

    /// <summary>What a reading of a thickness says of its sheet: how many spots it is, and that they stand for all of it. Empty for what is no reading of sheet goods.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="key">The thickness.</param>
    /// <param name="accuracy">How closely the shop works.</param>
    public static string Of(SetPiece set, QuantityKey key, Accuracy accuracy)
    {
        if (set.Worked.Values.GetValueOrDefault(key) is not { Quantity.Scatter: Scatter.Sheet } worked || Count(worked) is not (> 0 and int many)) return "";
        string whole = key.Text.Contains(BenchFacts.SheetWord, StringComparison.Ordinal) ? "the whole sheet" : "all sheets of it";
        return many == 1 ? $"one spot counts for {whole}: {Differ(accuracy, set.Piece.Shown)}" : $"the mean of {Spots(many)} counts for {whole}: {Differ(accuracy, set.Piece.Shown)}";
    }

    private static int Count(Worked? worked) => worked?.Pin is { IsFact: false, Values.IsDefault: false } pin ? pin.Values.Length : 0;

    private static string Spots(int many) => many == 1 ? "1 spot" : $"{many} spots";

    private static string Say(Length length, LengthUnit unit) => unit == LengthUnit.Inch ? LengthFormat.Inches(256).Text(length) : LengthFormat.Millimetres(2).Text(length);
}
