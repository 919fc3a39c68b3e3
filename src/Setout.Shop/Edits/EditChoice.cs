using System.Collections.Immutable;
using System.Globalization;
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
}

/// <summary>Something that can be done to what is chosen, as a page shows it.</summary>
/// <param name="Id">Stable; names it among those of the same thing.</param>
/// <param name="Words">On its button.</param>
/// <param name="Fields">What is asked; empty for a button alone.</param>
public abstract record Offer(string Id, string Words, ImmutableArray<EditField> Fields);

/// <summary>An edit that makes sense for what is chosen, as the page offers it.</summary>
public sealed record EditChoice : Offer
{
    private readonly Func<FieldValues, Edit> _maker;

    internal EditChoice(string id, string words, ImmutableArray<EditField> fields, Func<FieldValues, Edit> maker) : base(id, words, fields) => _maker = maker;

    /// <summary>The edit, by what was typed; or what is wrong with that.</summary>
    /// <param name="values">By the names of the fields; what is missing has its default.</param>
    public TextRead<Edit> Make(IReadOnlyDictionary<string, string> values)
    {
        var read = new FieldValues(Fields, values);
        Edit edit = _maker(read);
        return read.Findings.Count > 0 ? new(null, [.. read.Findings]) : new(edit, []);
    }
}

/// <summary>What was typed into the fields of an edit.</summary>
internal sealed class FieldValues(ImmutableArray<EditField> fields, IReadOnlyDictionary<string, string> values)
{
    public List<Finding> Findings { get; } = [];

    /// <summary>Words; null for nothing, where nothing may be typed.</summary>
    public string? Text(string name)
    {
        EditField field = fields.First(f => f.Name == name);
        string text = (values.TryGetValue(name, out string? typed) ? typed : field.Default).Trim();
        if (text.Length > 0 && field.Kind == FieldKind.OneOf && !field.Options.Contains(text))
            Findings.Add(new("edit.field", Severity.Stop, "", $"'{TextContext.Shown(text)}' is not known for {field.Words}.", $"Choose one of {string.Join(", ", field.Options)}."));
        if (text.Length == 0 && !field.MayBeEmpty) Findings.Add(new("edit.field", Severity.Stop, "", $"Nothing is said for {field.Words}.", "Fill it in."));
        return text.Length > 0 ? text : null;
    }

    /// <summary>Words that are wanted.</summary>
    public string Needed(string name) => Text(name) ?? "";

    /// <summary>A whole number.</summary>
    public int Count(string name)
    {
        string text = Needed(name);
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count)) return count;
        if (text.Length > 0) Findings.Add(new("edit.field", Severity.Stop, "", $"'{TextContext.Shown(text)}' is not a whole number.", "Write one such as 3."));
        return 0;
    }
}
