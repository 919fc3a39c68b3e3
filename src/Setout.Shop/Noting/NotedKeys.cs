using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Noting;

/// <summary>What the words mean that name a quantity to be read.</summary>
public static class NotedKeys
{
    /// <summary>The quantity that a reading of a key pins: for a size that is cut, the figure as cut; for a material its thickness.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="key">As it was typed or chosen.</param>
    public static (QuantityKey Key, Finding? Fault) Pinned(SetPiece set, string key)
    {
        // What a box is to aim for is nobody's to measure: what is measured is the box.
        if (key.EndsWith(".box.width", StringComparison.Ordinal) && set.Worked.Values.ContainsKey(QuantityKey.Of(key[..^".box.width".Length], "box.as-built"))) return (QuantityKey.Of(key[..^".box.width".Length], "box.as-built"), null);
        if (set.Worked.Values.ContainsKey(new(key))) return (AsCut(set, key) ?? new QuantityKey(key), null);
        if (set.Piece.Materials.ContainsKey(key)) return (QuantityKey.Of(key, "thickness"), null);
        // A sheet that nobody has read yet is not among the quantities.
        if (SheetName(key) is not var (material, sheet)) return (default, Unknown(set, key));
        (string name, Finding? fault) = Sheet(set, material, sheet);
        return (fault is null ? QuantityKey.Of(name, "thickness") : default, fault);
    }

    /// <summary>The key of a sheet of a material, read or not.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="material">Sheet goods of the piece.</param>
    /// <param name="sheet">Its name: 1 to 20 letters, digits and hyphens.</param>
    public static (string Key, Finding? Fault) Sheet(SetPiece set, string material, string sheet)
    {
        if (set.Piece.Materials.GetValueOrDefault(material) is not Core.Pieces.Panel)
            return ("", new("note.sheet", Severity.Stop, material, $"'{material}' is not sheet goods of this piece.", $"Name one of {string.Join(", ", set.Piece.Materials.Values.OfType<Core.Pieces.Panel>().Select(m => m.Name).Order(StringComparer.Ordinal))}."));
        if (sheet.Length is 0 or > 20 || !sheet.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'))
            return ("", new("note.sheet", Severity.Stop, material, $"'{TextContext.Shown(sheet)}' cannot be the name of a sheet.", "Use letters, digits and hyphens, such as 1 or oak-2."));
        return (material + BenchFacts.SheetWord + sheet, null);
    }

    /// <summary>The sheets of a material that have been read, by their names.</summary>
    public static ImmutableArray<string> SheetsRead(SetPiece set, string material)
    {
        string start = material + BenchFacts.SheetWord;
        return [.. set.Worked.Order.Select(k => k.Text).Where(k => k.StartsWith(start, StringComparison.Ordinal) && k.EndsWith(".thickness", StringComparison.Ordinal)).Select(k => k[start.Length..^".thickness".Length]).Distinct().Order(StringComparer.Ordinal)];
    }

    /// <summary>The refusal of a key that is not known, with the nearest that is.</summary>
    public static Finding Unknown(SetPiece set, string key)
    {
        IEnumerable<string> known = set.Worked.Order.Select(k => k.Text).Concat(set.Parts.Select(p => p.Key));
        return new("note.key", Severity.Stop, "", $"There is no quantity or part '{TextContext.Shown(key)}'.", NearestWord.Of(key, known) is { } guess ? $"Did you mean '{guess}'?" : set.Piece.Hand.Parts);
    }

    private static QuantityKey? AsCut(SetPiece set, string key) => set.Worked.Values.ContainsKey(new QuantityKey(key).AsCut) ? new QuantityKey(key).AsCut : null;

    private static (string Material, string Sheet)? SheetName(string key)
    {
        int at = key.IndexOf(BenchFacts.SheetWord, StringComparison.Ordinal);
        if (at <= 0) return null;
        string sheet = key[(at + BenchFacts.SheetWord.Length)..];
        return (key[..at], sheet.EndsWith(".thickness", StringComparison.Ordinal) ? sheet[..^".thickness".Length] : sheet);
    }
}
