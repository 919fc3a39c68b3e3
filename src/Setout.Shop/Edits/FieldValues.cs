using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>What was typed into the fields of an edit, and what is wrong with it.</summary>
/// <param name="fields">The fields.</param>
/// <param name="values">By their names; what is missing has its default.</param>
/// <param name="bare">The unit of bare figures where that is not the unit of the text; null where it is.</param>
internal sealed class FieldValues(ImmutableArray<EditField> fields, IReadOnlyDictionary<string, string> values, LengthUnit? bare)
{
    public List<Finding> Findings { get; } = [];

    /// <summary>Words; null for nothing, where nothing may be typed.</summary>
    public string? Text(string name) => Text(name, isWanted: false);

    private string? Text(string name, bool isWanted)
    {
        EditField field = fields.First(f => f.Name == name);
        string text = Typed(field);
        if (text.Length > 0 && field.Kind == FieldKind.OneOf && !field.Options.Contains(text))
            Findings.Add(new("edit.field", Severity.Stop, "", $"'{TextContext.Shown(text)}' is not known for {field.Words}.", $"Choose one of {string.Join(", ", field.Options)}.") { Field = name });
        if (text.Length == 0 && (isWanted || !field.MayBeEmpty)) Findings.Add(new("edit.field", Severity.Stop, "", $"“{Fillings.Capital(field.Words)}” is empty.", Asked(field.Kind)) { Field = name });
        if (bare is { } shown && FieldUnits.MayBeOther(field.Kind, text, shown))
            Findings.Add(new("edit.two-units", Severity.Stop, "", $"'{TextContext.Shown(text)}' would be {Written(field)}: you are shown {shown.Words}, and the text is in {shown.Other.Words}.", $"Write the unit beside it: {text} in, or mm.") { Field = name });
        return Findings.Any(f => f.Field == name) ? StandIn(field) : text.Length == 0 ? null : Written(field);
    }

    // What is refused is done all the same, to see what else is wrong: without the word that says what something is, the rest of it could not be read.
    private string? StandIn(EditField field) => field.Kind switch { FieldKind.OneOf => field.Options.FirstOrDefault(), FieldKind.Words => "not-told-yet", _ => Typed(field) is { Length: > 0 } typed ? typed : null };

    private static string Asked(FieldKind kind) => kind switch
    {
        FieldKind.OneOf => "Choose one.",
        FieldKind.Count => "Type a whole number, such as 3.",
        FieldKind.Size => "Type two lengths with an x between them.",
        FieldKind.Length or FieldKind.Share or FieldKind.Lengths => "Type a length.",
        _ => "Type what it is to be.",
    };

    /// <summary>Words that are wanted.</summary>
    public string Needed(string name) => Text(name) ?? "";

    /// <summary>Words that are wanted here although nothing may be typed elsewhere, as where another field is left empty.</summary>
    public string Wanted(string name) => Text(name, isWanted: true) ?? "";

    /// <summary>A whole number.</summary>
    public int Count(string name) => Count(name, 0, int.MaxValue);

    /// <summary>A whole number within bounds.</summary>
    public int Count(string name, int least, int most)
    {
        string text = Needed(name);
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count >= least && count <= most) return count;
        string wanted = most < int.MaxValue ? $"a whole number from {least.ToString(CultureInfo.InvariantCulture)} to {most.ToString(CultureInfo.InvariantCulture)}" : "a whole number";
        if (text.Length > 0) Findings.Add(new("edit.field", Severity.Stop, "", $"'{TextContext.Shown(text)}' is not {wanted}.", "Write one such as 3.") { Field = name });
        return least;
    }

    // As it stands in the field, and as it is written into the text.
    private string Typed(EditField field) => (values.TryGetValue(field.Name, out string? typed) ? typed : field.Default).Trim();

    private string Written(EditField field) => bare is { } unit ? FieldUnits.Named(field.Kind, Typed(field), unit) : Typed(field);

    /// <summary>
    /// An edit as it came out, with all that is wrong with what was typed: what the fields themselves tell, then what the edit or the text tells of a field that nothing is told of yet. What no field is
    /// to blame for waits until the fields are right, as it may follow from them.
    /// </summary>
    /// <param name="edited">The edit as it came out, made of what was typed whether that is right or not.</param>
    public Edited Told(Edited edited)
    {
        if (Findings.Count == 0 && edited.IsDone) return edited;
        var told = new Dictionary<string, Finding>(StringComparer.Ordinal);
        foreach (Finding slip in Findings) told.TryAdd(slip.Field, slip);
        // First what stands in one field alone; what stands in several is then told of those that are left.
        foreach (bool isLast in new[] { false, true })
        {
            for (int i = 0; !edited.IsDone && i < edited.Findings.Length; i++)
            {
                Finding slip = edited.Findings[i];
                string field = slip.Severity != Severity.Stop ? "" : slip.Field.Length > 0 ? slip.Field
                    : i < edited.Typed.Length ? FieldOf(edited.Typed[i], isLast && slip.Code.StartsWith("length.", StringComparison.Ordinal) ? told.ContainsKey : null) : "";
                if (field.Length > 0) told.TryAdd(field, slip with { Field = field });
            }
        }
        if (told.Count == 0) return edited;
        return new(null, edited.Name, [.. fields.OrderBy(f => f.IsMore).Select(f => told.GetValueOrDefault(f.Name)).OfType<Finding>()]);
    }

    /// <summary>The field that some words were typed into, by name; empty where there is none, or more than one and nothing tells them apart.</summary>
    /// <param name="at">The words, with the key of the text that they stand under.</param>
    /// <param name="isTold">Where the words cannot be read at all, so that each field that they stand in is to blame: whether a field is already; null elsewhere.</param>
    private string FieldOf(TypedAt at, Func<string, bool>? isTold)
    {
        if (at.Words is not { Length: > 0 } words) return "";
        string[] all = [.. fields.Where(f => Typed(f) is { Length: > 0 } there && (there == words || Written(f) == words || IsAmong(f, there, words))).Select(f => f.Name)];
        if (all.Length <= 1) return all.FirstOrDefault("");
        // The field that is called as the key is, such as "left" for "from left".
        string[] named = [.. all.Where(f => f.Split('/')[^1] is var name && (name == at.Key || at.Key.Split(' ').Contains(name)))];
        return named.Length == 1 ? named[0] : isTold is null ? "" : all.FirstOrDefault(f => !isTold(f)) ?? "";
    }

    // Where several are typed apart by commas, one of them may be to blame.
    private static bool IsAmong(EditField field, string there, string typed) =>
        field.Kind is FieldKind.Words or FieldKind.Lengths && there.Contains(',', StringComparison.Ordinal) && there.Split(',', StringSplitOptions.TrimEntries).Contains(typed);
}
