using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Texts;

namespace Setout.Shop.ShopEdits;

/// <summary>A shop file from nothing: the least that differs from shop to shop. All else is as in a usual shop until somebody says it.</summary>
/// <param name="Name">What it is called; empty for no name.</param>
/// <param name="Unit">Of bare figures.</param>
/// <param name="Grid">The step that figures to cut land on, as typed, for pieces in that unit; empty for the usual one.</param>
/// <param name="Kerf">What the saw takes, as typed; empty for the usual one.</param>
/// <param name="Currency">Of the prices; empty for none.</param>
public sealed record NewShop(string Name, LengthUnit Unit, string Grid, string Kerf, string Currency)
{
    /// <summary>The name of the step.</summary>
    public const string Step = "the shop begun";

    /// <summary>Its text, or why there is none: all that is wrong with what was typed, each with its field.</summary>
    public Edited Text()
    {
        static string? Typed(string text) => text.Trim() is { Length: > 0 } typed ? typed : null;
        string unit = Unit.Mark;
        YamlMap shop = Written.Map(("setout-shop", Written.Word("1")), ("name", Of(Typed(Name))), ("currency", Of(Typed(Currency))), ("unit", Written.Word(unit)),
            ("grid", Typed(Grid) is { } grid ? Written.Fields((unit, grid)) : null),
            ("kerf", Typed(Kerf) is { } kerf ? Written.Fields(("sheets", kerf), ("boards", kerf)) : null));
        string text = "# What stands here holds for every piece. What is left out is as in a usual shop.\n" + string.Concat(Written.Lines(shop, 0).Select(l => l + "\n"));
        TextRead<Texts.Shop> read = ShopText.Read(text, null, new(null) { IsTyped = true });
        if (read.IsSound) return new(text, Step, []);
        var typed = new Dictionary<string, string> { ["name"] = Name, ["grid"] = Grid, ["kerf"] = Kerf, ["currency"] = Currency };
        return new FieldValues([.. typed.Keys.Select(k => new EditField(k, k, FieldKind.Words, "") { MayBeEmpty = true })], typed, null)
            .Told(new(null, Step, [.. read.Findings.Select(f => f with { Place = Place.None })]) { Typed = TypedWords.At(text, read.Findings) });
    }

    private static YamlNode? Of(string? word) => word is null ? null : Written.Word(word);
}
