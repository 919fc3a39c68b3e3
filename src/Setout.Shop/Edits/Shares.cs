using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>
/// The sizes of openings in a division, or of fronts in a bank: lengths, equal shares, or one rest beside lengths alone. Whatever is set, added or taken out, they can
/// be shared after it: one rest at most, none beside shares, and always one that takes up what is left.
/// </summary>
internal sealed class Shares
{
    private readonly EditDraft _draft;
    private readonly TextPath _list;
    private readonly string _key, _what;

    private Shares(EditDraft draft, TextPath list, string what) =>
        (_draft, _list, _what, _key) = (draft, list, what, what == "front" ? "drawer" : "opening");

    /// <summary>The sizes beside which one of these stands.</summary>
    /// <param name="draft">The text.</param>
    /// <param name="thing">An opening or a drawer in a list.</param>
    public static Shares Beside(EditDraft draft, Thing thing)
    {
        if (thing.List is not { } list || list.Steps is not [.., { Key: { } word }])
            throw draft.Refused("edit.no-size", thing.Key, $"{thing.Words} has no size of its own: it is as large as what it stands in.", "Set the size of that.");
        return new(draft, list, thing.Word == "drawer" ? "front" : word == "across" ? "width" : "height");
    }

    /// <summary>What the sizes are called.</summary>
    public string What => _what;

    /// <summary>The list they stand in.</summary>
    public TextPath List => _list;

    /// <summary>Which items of the list have sizes.</summary>
    public int[] Members => [.. Items.Index().Where(i => TextPath.WordOf(i.Item) == _key).Select(i => i.Index)];

    private ImmutableArray<YamlNode> Items => (_draft.At(_list) as YamlList)?.Items ?? [];

    /// <summary>The size of an item as written; null for an equal share.</summary>
    public string? Of(int item) => ((Items[item] as YamlMap)?[_what] as YamlScalar)?.Text is { Length: > 0 } text ? text : null;

    /// <summary>The key of an item.</summary>
    public string KeyOf(int item) => TextPath.OwnerOf(Items[item]) ?? "";

    private static bool IsRest(string? share) => share == "rest";

    private static bool IsEqual(string? share) => share is null || share.EndsWith(" part", StringComparison.Ordinal) || share.EndsWith(" parts", StringComparison.Ordinal);

    /// <summary>Writes a size, or takes it out for an equal share.</summary>
    public void Write(int item, string? share)
    {
        TextPath at = _list.To(item, _what);
        if (share is not null && share != Of(item)) _draft.Do(Splice.Set(at, share));
        else if (share is null && _draft.At(at) is not null) _draft.Do(Splice.TakeOut(at));
    }

    /// <summary>How large an item is: as given, else as it was set out.</summary>
    public ExactLength Size(int item)
    {
        string? share = Of(item);
        if (!IsRest(share) && !IsEqual(share)) return _draft.Length(share!, KeyOf(item));
        string[] known = _what == "front" ? ["front.set-height", "front.height", "front-height"] : [$"set-{_what}", _what];
        return _draft.Worked(KeyOf(item), known) ?? throw _draft.Refused("edit.size-not-known", KeyOf(item), $"How large {KeyOf(item)} is cannot be told: the piece cannot be set out.", "Mend the findings first, or type the sizes of all that stand beside it.");
    }

    /// <summary>Sets one size so that all can still be shared.</summary>
    public void Set(int item, string share)
    {
        int[] others = [.. Members.Where(m => m != item)];
        if (IsRest(share) || (IsEqual(share) && others.Any(o => IsRest(Of(o)))))
        {
            // Beside a rest all others have sizes; beside shares none is the rest.
            foreach (int other in others.Where(o => IsRest(share) ? IsRest(Of(o)) || IsEqual(Of(o)) : IsRest(Of(o)))) Write(other, _draft.Written(_draft.Rounded(Size(other))));
        }
        else if (!IsEqual(share)) _ = _draft.Length(share, KeyOf(item));
        Write(item, share);
        Close(item);
    }

    /// <summary>Sees to it that one takes up what is left: where all have lengths, a neighbour gives its own up.</summary>
    /// <param name="near">The item that keeps its length.</param>
    public void Close(int near)
    {
        int[] members = Members;
        if (members.Length == 0 || members.Any(m => IsRest(Of(m)) || IsEqual(Of(m)))) return;
        int taker = members.FirstOrDefault(m => m > near, members.LastOrDefault(m => m < near, members[0]));
        if (members.Length == 1) Write(members[0], null);
        else Write(taker, "rest");
    }

    /// <summary>Sees to it that one takes up what is left: where all have lengths, this one gives its own up.</summary>
    public void CloseWith(int item)
    {
        if (Members.Any(m => IsRest(Of(m)) || IsEqual(Of(m)))) return;
        Write(item, Members.Length == 1 ? null : "rest");
    }

    /// <summary>Sizes for things that take the place of one: such as are given, and shares for others, so that all can be shared with what stands beside them.</summary>
    /// <param name="item">The one whose place is taken.</param>
    /// <param name="sizes">As typed; null for an equal share, one at most <c>rest</c>.</param>
    /// <param name="between">What stands between each two, in all.</param>
    public string?[] InPlaceOf(int item, IReadOnlyList<string?> sizes, Func<ExactLength> between)
    {
        string? was = Of(item);
        bool wantsShares = sizes.Any(s => IsRest(s) || IsEqual(s)), othersShare = Members.Any(m => m != item && (IsRest(Of(m)) || IsEqual(Of(m))));
        // Where nothing beside takes up what is left, these may; where equal shares do, equal shares may too.
        if (!wantsShares) return othersShare ? [.. sizes] : [.. sizes.Select((s, i) => i == sizes.Count - 1 ? "rest" : s)];
        bool othersAreEqual = Members.Any(m => m != item && IsEqual(Of(m)));
        if (!othersShare || (othersAreEqual && IsEqual(was) && sizes.All(IsEqual))) return [.. sizes];
        ExactLength left = Size(item) - between();
        string[] given = [.. sizes.Where(s => !IsRest(s) && !IsEqual(s)).Select(s => s!)];
        foreach (string size in given) left -= _draft.Length(size, KeyOf(item));
        if (left.Sign <= 0) throw _draft.Refused("edit.no-room", KeyOf(item), $"The sizes given leave nothing of the {_draft.Written(Size(item))} of {KeyOf(item)}.", "Make one of them smaller.");
        // The one whose place is taken may have been the rest: the last then is it.
        int open = sizes.Count(s => IsRest(s) || IsEqual(s)), last = Enumerable.Range(0, sizes.Count).Last(i => IsRest(sizes[i]) || IsEqual(sizes[i]));
        string each = _draft.Written(_draft.Rounded(left / Rational.Of(open, 1)));
        return [.. sizes.Select((s, i) => !IsRest(s) && !IsEqual(s) ? s : IsRest(was) && i == last ? "rest" : each)];
    }
}
