using System.Globalization;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;

namespace Setout.Shop.Texts;

/// <content>Things that a shop may not have, and weights.</content>
internal sealed partial class MapReader
{
    /// <summary>True where <c>no</c> stands in the place of a map: the thing is not there. Some editors make <c>false</c> of it.</summary>
    public bool IsNo(string key) => Node(key) is YamlScalar { Text: "no" or "false" };

    /// <summary>The map under a key that may also say <c>no</c>; null where it is not there, or says so.</summary>
    public MapReader? MapUnlessNo(string key, string kind)
    {
        if (Node(key) is not { } node || IsNo(key)) return null;
        if (node is YamlMap map) return new(_context, map, kind);
        _context.Stop("text.wanted-map", node.Place, $"'{key}' wants keys with values, or no.", "Write them below it, indented, or 'no' where there is none.");
        return null;
    }

    /// <summary>A weight with its unit, such as <c>51 lb</c> or <c>23 kg</c>, or null.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="least">The least that is believed, in kilograms.</param>
    /// <param name="most">The most, in kilograms.</param>
    public Mass? Mass(string key, double least, double most)
    {
        if (Scalar(key, "text.wanted-weight", "a weight", LongestWord) is not { } text) return null;
        Match found = WeightPattern().Match(text.Text);
        if (!found.Success || !double.TryParse(found.Groups[1].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number))
        {
            _context.Stop("text.wanted-weight", text.Place, $"'{TextContext.Shown(text.Text)}' is not a weight with its unit.", _context.IsTyped ? "Type one such as 51 lb or 23 kg." : $"Write '{key}: 51 lb' or '{key}: 23 kg'.");
            return null;
        }
        double kilograms = found.Groups[2].Value == "lb" ? number / Core.Measures.Mass.PoundsPerKilogram : number;
        if (kilograms >= least && kilograms <= most) return new(Estimate.Of(kilograms));
        _context.Stop("text.absurd-weight", text.Place, $"'{TextContext.Shown(text.Text)}' cannot be the {key}.", string.Create(CultureInfo.InvariantCulture, $"Write a weight from {least} to {most} kg, such as {(_context.IsTyped ? "23 kg or 51 lb" : $"'{key}: 23 kg' or '{key}: 51 lb'")}."));
        return null;
    }

    /// <summary>How much of a liquid, such as <c>1 quart</c> or <c>0.75 l</c>, or null.</summary>
    public Volume? Volume(string key) => Amount(key, "an amount", AmountText.ReadVolume);

    /// <summary>How far a finish goes, such as <c>125 sq ft per quart</c>, or null.</summary>
    public Coverage? Coverage(string key) => Amount(key, "how far a can goes", AmountText.ReadCoverage);

    private T? Amount<T>(string key, string what, Func<string, ParseResult<T>> parse) where T : struct
    {
        if (Scalar(key, "text.wanted-amount", what, LongestWord) is not { } scalar) return null;
        ParseResult<T> read = parse(scalar.Text);
        if (read.IsRead) return read.Value;
        _context.Stop(read.Fault!.Code, scalar.Place, TextContext.Shown(read.Fault.Words), read.Fault.Remedy);
        return null;
    }

    [GeneratedRegex(@"^([0-9]+(?:\.[0-9]+)?|\.[0-9]+) ?(lb|kg)\z")]
    private static partial Regex WeightPattern();
}
