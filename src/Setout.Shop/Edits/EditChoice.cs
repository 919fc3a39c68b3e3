using System.Collections.Immutable;
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

    /// <summary>True for the size of something that is no part of the piece, and may be larger: wood as it is sold, a door that the piece is carried through.</summary>
    internal bool IsElsewhere { get; init; }

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

    /// <summary>Does the edit to a text. It is refused for all that is wrong with what was typed at once, each slip with its field, in the order of the fields.</summary>
    /// <param name="values">By the names of the fields; what is missing has its default.</param>
    /// <param name="text">A piece file.</param>
    /// <param name="bench">What is known beside it.</param>
    public Edited ApplyTo(IReadOnlyDictionary<string, string> values, string text, EditBench bench)
    {
        var read = new FieldValues(Fields, values, Bare);
        return read.Told(_maker(read).ApplyTo(text, bench));
    }
}
