using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Sets the size of an opening along its division so that the others can still share what is left.</summary>
/// <param name="Opening">Its key.</param>
/// <param name="Size">As typed, <c>rest</c>, such as <c>2 parts</c>, or null for an equal share.</param>
public sealed record SetShare(string Opening, string? Size) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"size of opening {Opening}: {Size ?? "an equal share"}";

    internal override void Do(EditDraft draft) => Do(draft, draft.Find(Opening, "opening"), Size);

    internal static void Do(EditDraft draft, Thing thing, string? size)
    {
        var shares = Shares.Beside(draft, thing);
        string before = shares.Of(thing.Index) ?? "an equal share";
        if (size is null)
        {
            foreach (int rest in shares.Members.Where(m => m != thing.Index && shares.Of(m) == "rest")) shares.Write(rest, null);
            shares.Write(thing.Index, null);
        }
        else shares.Set(thing.Index, size);
        draft.Chosen = thing.Key;
        draft.Name = thing.Word == "drawer" ? $"front of drawer {thing.Key}: {before} to {size ?? "an equal share"}" : $"{shares.What} of {thing.Words}: {before} to {size ?? "an equal share"}";
    }
}

/// <summary>Moves a divider: the openings on both sides of it change, the others stay as they are.</summary>
/// <param name="Divider">The key of a partition, a deck, a pair of rails or of posts.</param>
/// <param name="Before">The size of the opening at its left or above it then, as typed.</param>
public sealed record MoveDivider(string Divider, string Before) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"move {Divider}: {Before} before it";

    internal override void Do(EditDraft draft)
    {
        Thing divider = draft.Find(Divider, "partition", "deck", "rail", "posts");
        if (divider.List is null || divider.Index == 0) throw draft.Refused("edit.no-such-place", Divider, $"{Divider} stands between no two openings.", "Mend the division in the text.");
        Thing first = draft.Things.First(t => t.Steps.AsSpan().SequenceEqual(divider.List.To(divider.Index - 1).Steps.AsSpan()));
        var shares = Shares.Beside(draft, first);
        (int before, int after) = (divider.Index - 1, divider.Index + 1);
        string word = first.Key;
        ExactLength size = draft.Length(Before, Divider), old = shares.Size(before), next = shares.Size(after) - (size - old);
        if (size.Sign <= 0 || next.Sign <= 0)
            throw draft.Refused("edit.no-room", Divider, $"{Divider} has {draft.Written(old + shares.Size(after))} to move in: nothing would be left {(size.Sign <= 0 ? "before" : "behind")} it.", "Choose a place between its neighbours.");
        (string? share, string? other) = (shares.Of(before), shares.Of(after));
        // Whoever takes the rest goes on doing so; where nobody else would take it, the one behind does.
        bool isTaken = shares.Members.Any(m => m != before && m != after && shares.Of(m) is var s && (s is null or "rest" || IsParts(s)));
        if (share == "rest") shares.Write(after, draft.Written(next));
        else if (other == "rest") shares.Write(before, Before);
        else
        {
            shares.Write(before, Before);
            shares.Write(after, isTaken ? draft.Written(next) : "rest");
        }
        draft.Chosen = Divider;
        draft.Name = $"{divider.Words} moved: {shares.What} of {word} {draft.Written(old)} to {Before}";
    }

    private static bool IsParts(string? share) => share is not null && (share.EndsWith(" part", StringComparison.Ordinal) || share.EndsWith(" parts", StringComparison.Ordinal));
}

/// <summary>Sets any value of the text.</summary>
/// <param name="At">Which: its owner, then keys inwards.</param>
/// <param name="Value">As typed. Lengths in any usual form, sums too.</param>
public sealed record SetAny(TextPath At, string Value) : Edit
{
    /// <summary>An outside size of a frame or a case: <c>width</c>, <c>height</c> or <c>depth</c>.</summary>
    public static SetAny OutsideSize(string structure, string side, string length) => new(TextPath.Of(structure, side), length);

    /// <summary>The name that people read.</summary>
    public static SetAny NameOf(string key, string name) => new(TextPath.Of(key, "name"), name);

    /// <inheritdoc/>
    public override string Words => $"{At.Words()}: {Value}";

    internal override bool TakesMistakes => true;

    internal override void Do(EditDraft draft)
    {
        if (At.Steps is not [.., { Key: { } last }]) throw draft.Refused("splice.no-such-place", At.Owner, "No key is named.", "Name one.");
        string value = Value.Trim();
        Thing? owner = draft.Things.FirstOrDefault(t => t.Path.From(draft.Root) is { } own && TextPath.Find(draft.Root, At.Owner) is { } found && own.AsSpan().SequenceEqual(found.AsSpan()));
        if (last == "name" && At.Steps.Length == 1 && owner is { Word: not ("frame" or "case" or "top" or "part") })
            throw draft.Refused("edit.no-name", At.Owner, $"{Fillings.Capital(owner.Words)} has no name beside its key.", "Name the frame, the case or the top it belongs to; its key stays, for readings and marks refer to it.");
        if (owner is not null && At.Steps.Length == 1 && last == TextPath.WordOf(owner.Node))
            throw draft.Refused("edit.key", At.Owner, "A key is never changed: readings and marks refer to it.", "Give it a name instead, where it has one.");
        // Sizes that share a whole are set so that the others still can.
        if (owner is not null && At.Steps.Length == 1 && draft.Piece is not null && owner is { List.Steps: [.., { Key: { } list }] } && (owner.Word, list, last) is ("opening", "across", "width") or ("opening", "down", "height") or ("drawer", "down", "front"))
        {
            SetShare.Do(draft, owner, value);
            return;
        }
        YamlNode? old = draft.At(At);
        if (old is not (null or YamlScalar))
            throw draft.Refused("splice.no-room", At.Owner, $"{Fillings.Capital(At.Words())} cannot be set here: several things stand in it.", "Set what stands in it, or take it out first.");
        if (draft.At(At.Up) is null && At.Steps.Length > 1) draft.Do(Splice.SetLast(At.Up, Written.Fields((last, value))));
        else draft.Do(Splice.Set(At, value, s_behind));
        draft.Chosen = At.Owner;
        draft.Name = $"{At.Words(owner?.Words)}: {(old is YamlScalar { Text.Length: > 0 } text ? $"{TextContext.Shown(text.Text)} to " : "")}{TextContext.Shown(value)}";
    }

    // A new key stands behind those that tell what a thing is and how large.
    private static readonly string[] s_behind = ["frame", "case", "top", "opening", "partition", "deck", "posts", "rail", "drawer", "part", "name", "of", "width", "height", "depth", "setout", "unit"];
}

/// <summary>Sets a list or a map as it is written: for all that has no edit of its own.</summary>
/// <param name="At">Which: its owner, then keys inwards.</param>
/// <param name="Value">As in the text, such as <c>[slab, slab]</c> or <c>{of: oak, corners: mitred}</c>; on several lines too. Remarks in it are not taken over.</param>
public sealed record SetWritten(TextPath At, string Value) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"{At.Words()}, as written";

    internal override bool TakesMistakes => true;

    internal override void Do(EditDraft draft)
    {
        TextRead<YamlNode> value = YamlTree.Read(Value);
        if (value.Value is null || !value.IsSound) throw new RefusedException(value.Findings[0]);
        if (value.Value is YamlScalar scalar)
        {
            new SetAny(At, scalar.Text).Do(draft);
            return;
        }
        if (At.Steps.IsEmpty) throw draft.Refused("splice.no-such-place", At.Owner, "No key is named.", "Name one.");
        draft.Do(Splice.SetLast(At, value.Value));
        draft.Chosen = At.Owner;
        draft.Name = $"{draft.WordsOf(At)}, as written";
    }
}

/// <summary>Takes a value out, so that its default holds.</summary>
/// <param name="At">Which.</param>
public sealed record ClearAny(TextPath At) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"take out {At.Words()}";

    internal override bool TakesMistakes => true;

    internal override void Do(EditDraft draft)
    {
        Thing? owner = draft.Things.FirstOrDefault(t => t.Key == At.Owner);
        if (owner is not null && At.Steps is [{ Key: { } key }] && key == TextPath.WordOf(owner.Node)) throw draft.Refused("edit.key", At.Owner, "A key is never taken out: readings and marks refer to it.", "Take the whole thing out.");
        if (draft.At(At) is null) throw draft.Refused("edit.nothing", At.Owner, "Nothing is said there now, so nothing changes.", "Type what it is to be, or leave it as it is.");
        // A map with nothing in it says nothing.
        TextPath at = At;
        while (at.Steps.Length > 1 && draft.At(at.Up) is YamlMap { Entries.Length: 1 } or YamlList { Items.Length: 1 }) at = at.Up;
        draft.Do(Splice.TakeOut(at));
        draft.Chosen = At.Owner;
        draft.Name = $"take out {At.Words(owner?.Words)}";
    }
}
