using System.Globalization;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;

namespace Setout.Shop.ShopEdits;

/// <summary>The figures of a shop in words, by the keys that they stand under in its text.</summary>
public static class ShopFigures
{
    /// <summary>The figure of a key; empty where a shop has none, or it is one of many.</summary>
    /// <param name="shop">The shop, such as the usual one.</param>
    /// <param name="unit">In which lengths are said.</param>
    /// <param name="kind">The kind of map, as the schema names it; empty for the whole.</param>
    /// <param name="key">The key.</param>
    public static string Of(Texts.Shop shop, LengthUnit unit, string kind, string key)
    {
        LengthFormat format = LengthFormat.For(unit);
        string Say(Length? length) => length is not { } known ? "" : format.Format(known) is { IsExact: true } ? format.Text(known)
            : Plans.SumFigure.Decimal(known, unit) is { } exact ? $"{exact} {unit.Mark}" : NamedLength.Exactly(known);
        Accuracy accuracy = shop.Accuracy;
        return (kind, key) switch
        {
            ("", "lift") => Plans.WeightWords.Short(shop.Lift, unit),
            ("", "slack") => Say(shop.SheetSlack),
            ("", "most stages") => shop.MostStages is { } stages ? stages.ToString(CultureInfo.InvariantCulture) : "any number",
            ("grid", "in") => LengthFormat.For(LengthUnit.Inch).Text(shop.InchGrid.Step),
            ("grid", "mm") => LengthFormat.For(LengthUnit.Millimetre).Text(shop.MetricGrid.Step),
            ("kerf", "sheets") => Say(shop.Saws.Fence?.Kerf ?? shop.Saws.Guided?.Kerf),
            ("kerf", "boards") => Say(shop.Saws.Boards?.Kerf),
            ("kerf", "rips") => Say(shop.RipKerf),
            ("fence", "widest") => Say(shop.Saws.Fence?.Widest),
            ("fence", "room") => Say(shop.Saws.Fence?.Room),
            ("fence", "narrowest") => Say(shop.Saws.Fence?.Narrowest),
            ("fence", "carrier") => Say(shop.Saws.Fence?.NarrowestCarried),
            ("sled", "deepest") => Say(shop.Saws.Sled?.Deepest),
            ("sled", "longest") => Say(shop.Saws.Sled?.Longest),
            ("guided", "kerf") => "as in sheets",
            ("guided", "shoe") => shop.Saws.Guided?.Shoe is { } shoe ? Say(shoe) : "not measured",
            ("guided", "longest") => Say(shop.Saws.Guided?.Longest),
            ("guided", "rough") => Say(shop.Saws.Guided?.Rough),
            ("board-saw", "widest") => Say(shop.Saws.Boards?.Widest),
            ("trim", "sheets") => Say(shop.SheetTrim),
            ("trim", "boards") => Say(shop.BoardTrim),
            ("keep", "sheets") => $"{format.Bare.Text(shop.KeepAlong)} x {format.Text(shop.KeepAcross)}",
            ("keep", "boards") => Say(shop.KeepBoard),
            ("instruments", _) => accuracy.Instruments.TryGetValue(key, out Length off) ? Say(off) : "",
            ("spread", "setting") => Say(accuracy.Setting),
            ("spread", "repeat") => Say(accuracy.Repeat),
            ("spread", "sheet") => Say(accuracy.Sheet),
            ("spread", "spot") => Say(accuracy.Spot),
            ("spread", "section") => Say(accuracy.Section),
            ("spread", "placing") => Say(accuracy.Placing),
            ("spread", "slides") => Say(accuracy.Bought),
            _ => "",
        };
    }
}
