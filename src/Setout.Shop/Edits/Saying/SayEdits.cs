using Setout.Shop.Texts;

namespace Setout.Shop.Edits.Saying;

/// <summary>Sets a value of any form where one may stand.</summary>
/// <param name="At">Which.</param>
/// <param name="Value">A word, a list or a map.</param>
/// <param name="Name">Where nothing may stand there yet, as under a name of one's own: that name as it was typed; null, the default, where something may.</param>
internal sealed record SetNode(TextPath At, YamlNode Value, string? Name = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"{At.Words()}: {Written.InWords(Value)}";

    internal override void Do(EditDraft draft)
    {
        if (At.Steps is not [.., { Key: { } last }]) throw draft.Refused("splice.no-such-place", At.Owner, "No key is named.", "Name one.");
        if (Name is not null && Unfit(draft, last) is { } unfit)
        {
            // Under another name, to see what else is wrong.
            draft.Slip(unfit);
            new SetNode(At.Up.To(draft.Fresh("new", 1)[0]), Value).Do(draft);
            return;
        }
        string words = draft.WordsOf(At);
        if (At.Steps.Length > 1 && draft.At(At.Up) is not YamlMap) draft.Do(Splice.SetLast(At.Up, Written.Map((last, Value))));
        else draft.Do(Splice.SetLast(At, Value));
        draft.Chosen = Name is not null ? last : At.Owner;
        draft.Name = TextContext.Shown($"{words}: {Written.InWords(Value)}");
    }

    private RefusedException? Unfit(EditDraft draft, string name) => FreshKeys.Unfit(draft, name, Name!)
        ?? (draft.At(At) is null ? null : draft.Refused("edit.name-taken", At.Owner, $"There is something called '{TextContext.Shown(name)}' already.", "Give it another name.", Name!));
}

/// <summary>Adds something under a name of its own.</summary>
/// <param name="Map">The map of names.</param>
/// <param name="Name">As typed; null for one made of what it is called after.</param>
/// <param name="After">What that is.</param>
/// <param name="Value">What is added.</param>
internal sealed record AddNamed(TextPath Map, string? Name, string After, YamlMap Value) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"{Map.Words()}: {Written.InWords(Value)}";

    internal override void Do(EditDraft draft)
    {
        string name = Name is { } typed ? FreshKeys.Name(typed) : draft.Fresh(FreshKeys.StemAfter(After, "finish"), 1, mayBeBare: true)[0];
        new SetNode(Map.To(name), Value, Name ?? name).Do(draft);
    }
}

/// <summary>Adds an item to a list that may not be there yet.</summary>
/// <param name="List">The list.</param>
/// <param name="Item">A word or a map.</param>
/// <param name="KeyWord">The word before the item's permanent key; null for what has none. A key that is not given is found.</param>
internal sealed record AddItem(TextPath List, YamlNode Item, string? KeyWord) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"one more in {List.Words()}: {Written.InWords(Item)}";

    internal override void Do(EditDraft draft)
    {
        YamlNode item = Item;
        string words = draft.WordsOf(List);
        if (KeyWord is { } word && item is YamlMap map && map[word] is null)
            item = Written.Map(map.Entries.Select(e => (e.Key.Text, (YamlNode?)e.Value)).Prepend((word, Written.Word(draft.Fresh(word[..1].ToUpperInvariant(), 1)[0]))));
        switch (draft.At(List))
        {
            case YamlList { Items.Length: > 0 and var count }: draft.Do(Splice.Add(List, count, item)); break;
            case null when List.Steps.Length > 1 && draft.At(List.Up) is not YamlMap: draft.Do(Splice.SetLast(List.Up, Written.Map((List.Steps[^1].Key!, Written.List(item))))); break;
            default: draft.Do(Splice.SetLast(List, Written.List(item))); break;
        }
        draft.Chosen = KeyWord is { } key && item is YamlMap made ? ((YamlScalar)made[key]!).Text : List.Owner;
        draft.Name = TextContext.Shown($"one more in {words}: {Written.InWords(item)}");
    }
}
