using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>What is typed or chosen in a field.</summary>
public enum FieldKind
{
    /// <summary>A length in any usual form.</summary>
    Length,

    /// <summary>A length, such as <c>2 parts</c>, <c>rest</c>, or nothing for an equal share.</summary>
    Share,

    /// <summary>Two lengths, such as <c>96 x 48</c>.</summary>
    Size,

    /// <summary>Lengths apart by commas.</summary>
    Lengths,

    /// <summary>A whole number.</summary>
    Count,

    /// <summary>One of some words.</summary>
    OneOf,

    /// <summary>Words.</summary>
    Words,
}

/// <summary>A field of an edit.</summary>
/// <param name="Name">By which its value is given back.</param>
/// <param name="Words">For people.</param>
/// <param name="Kind">What is typed.</param>
/// <param name="Default">What stands in it at first; empty for nothing.</param>
public sealed record EditField(string Name, string Words, FieldKind Kind, string Default)
{
    /// <summary>What may be chosen, for <see cref="FieldKind.OneOf"/>; for words what is often said, and others may be.</summary>
    public ImmutableArray<string> Options { get; init; } = [];

    /// <summary>The usual figure with its basis; empty where there is none.</summary>
    public string Usual { get; init; } = "";

    /// <summary>True where nothing may be typed.</summary>
    public bool MayBeEmpty { get; init; }

    /// <summary>True for what few people need: a page folds it away, under <see cref="Offer.MoreWords"/>.</summary>
    public bool IsMore { get; init; }
}

/// <summary>Something that can be done to what is chosen, as a page shows it.</summary>
/// <param name="Id">Stable; names it among those of the same thing.</param>
/// <param name="Words">On its button.</param>
/// <param name="Fields">What is asked; empty for a button alone.</param>
public abstract record Offer(string Id, string Words, ImmutableArray<EditField> Fields)
{
    /// <summary>What the fields are called that are folded away.</summary>
    public string MoreWords { get; init; } = "More";

    /// <summary>The unit that bare figures are typed in where that is not the unit of the text; null, the default, where it is.</summary>
    internal LengthUnit? Bare { get; init; }
}

/// <summary>An edit that makes sense for what is chosen, as the page offers it.</summary>
public sealed record EditChoice : Offer
{
    private readonly Func<FieldValues, Edit> _maker;

    internal EditChoice(string id, string words, ImmutableArray<EditField> fields, Func<FieldValues, Edit> maker) : base(id, words, fields) => _maker = maker;

    /// <summary>The same for a person who is shown figures in a unit of his own: what stands in the text names its unit, and bare figures that are typed are in his.</summary>
    /// <param name="own">The unit of the text.</param>
    /// <param name="shown">The unit of the person.</param>
    public EditChoice For(LengthUnit own, LengthUnit shown) => own == shown ? this : this with { Fields = FieldUnits.Named(Fields, own), Bare = shown };

    /// <summary>The edit, by what was typed; or what is wrong with that.</summary>
    /// <param name="values">By the names of the fields; what is missing has its default.</param>
    public TextRead<Edit> Make(IReadOnlyDictionary<string, string> values)
    {
        var read = new FieldValues(Fields, values, Bare);
        Edit edit = _maker(read);
        return read.Findings.Count > 0 ? new(null, [.. read.Findings]) : new(edit, []);
    }
}

/// <summary>What was typed into the fields of an edit.</summary>
internal sealed class FieldValues(ImmutableArray<EditField> fields, IReadOnlyDictionary<string, string> values, LengthUnit? bare)
{
    public List<Finding> Findings { get; } = [];

    /// <summary>Words; null for nothing, where nothing may be typed.</summary>
    public string? Text(string name)
    {
        EditField field = fields.First(f => f.Name == name);
        string text = (values.TryGetValue(name, out string? typed) ? typed : field.Default).Trim();
        if (text.Length > 0 && field.Kind == FieldKind.OneOf && !field.Options.Contains(text))
            Findings.Add(new("edit.field", Severity.Stop, "", $"'{TextContext.Shown(text)}' is not known for {field.Words}.", $"Choose one of {string.Join(", ", field.Options)}.") { Field = name });
        if (text.Length == 0 && !field.MayBeEmpty) Findings.Add(new("edit.field", Severity.Stop, "", $"“{Fillings.Capital(field.Words)}” is empty.", Asked(field.Kind)) { Field = name });
        if (bare is { } shown && FieldUnits.MayBeOther(field.Kind, text, shown))
            Findings.Add(new("edit.two-units", Severity.Stop, "", $"'{TextContext.Shown(text)}' would be {FieldUnits.Named(field.Kind, text, shown)}: you are shown {shown.Words}, and the text is in {shown.Other.Words}.", $"Write the unit beside it: {text} in, or mm.") { Field = name });
        return text.Length == 0 ? null : bare is { } unit ? FieldUnits.Named(field.Kind, text, unit) : text;
    }

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

    /// <summary>A whole number.</summary>
    public int Count(string name)
    {
        string text = Needed(name);
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count)) return count;
        if (text.Length > 0) Findings.Add(new("edit.field", Severity.Stop, "", $"'{TextContext.Shown(text)}' is not a whole number.", "Write one such as 3.") { Field = name });
        return 0;
    }
}
