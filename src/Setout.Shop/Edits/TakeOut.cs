using Setout.Core.Measures;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Takes an opening out with what is in it and one of the members beside it; its neighbours share its room.</summary>
/// <param name="Opening">Its key.</param>
public sealed record TakeOutOpening(string Opening) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"take out opening {Opening}";

    internal override void Do(EditDraft draft)
    {
        Thing opening = draft.Find(Opening, "opening");
        if (opening.List is null)
        {
            // Back to back with another one.
            draft.Do(Splice.TakeOut(opening.Path));
            return;
        }
        var shares = Shares.Beside(draft, opening);
        Thing? around = draft.Around(opening);
        draft.Chosen = around?.Key ?? "";
        if (shares.Members.Length == 1)
        {
            if (draft.BayOf(opening)?.Key == Opening) throw draft.Refused("edit.last-bay", Opening, "A frame has one bay at least.", "Take out what is in it, or the whole frame.");
            draft.Do(Splice.TakeOut(shares.List));
            return;
        }
        References.WantNone(draft, [Opening]);
        int at = opening.Index, member = at == 0 ? 1 : at - 1;
        draft.Do(Splice.TakeOut(shares.List.To(Math.Max(at, member))));
        draft.Do(Splice.TakeOut(shares.List.To(Math.Min(at, member))));
        shares.CloseWith(Math.Max(0, Math.Min(at, member) - 1));
    }
}

/// <summary>Takes a divider out: the openings on both sides of it become one, which keeps what one of them holds.</summary>
/// <param name="Divider">The key of a partition, a deck, a pair of rails or of posts.</param>
public sealed record TakeOutDivider(string Divider) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"take out {Divider}";

    internal override void Do(EditDraft draft)
    {
        Thing divider = draft.Find(Divider, "partition", "deck", "rail", "posts");
        if (divider.List is not { } list || divider.Index == 0 || draft.At(list.To(divider.Index + 1)) is not YamlMap next || draft.At(list.To(divider.Index - 1)) is not YamlMap first)
            throw draft.Refused("edit.no-such-place", Divider, $"{Divider} stands between no two openings.", "Mend the division in the text.");
        bool IsFilled(YamlMap map) => Fillings.Keys.Any(k => map[k] is not null) || map["from behind"] is not null;
        (string before, string after) = (TextPath.OwnerOf(first)!, TextPath.OwnerOf(next)!);
        if (IsFilled(first) && IsFilled(next))
            throw draft.Refused("edit.two-contents", Divider, $"Openings {before} and {after} both hold something, and one opening holds one thing.", $"Take out what is in {before} or in {after} first.");
        bool keepsNext = IsFilled(next);
        (string kept, string gone) = keepsNext ? (after, before) : (before, after);
        var shares = Shares.Beside(draft, draft.Find(kept));
        References.WantNone(draft, [gone, Divider]);
        string? merged = Merged(draft, shares, divider);
        int at = divider.Index;
        draft.Do(Splice.TakeOut(list.To(keepsNext ? at : at + 1)));
        draft.Do(Splice.TakeOut(list.To(keepsNext ? at - 1 : at)));
        shares.Write(at - 1, merged);
        shares.CloseWith(at - 1);
        draft.Chosen = kept;
        draft.Name = $"{divider.Words} taken out: {before} and {after} are {kept}";
    }

    // The rest where one of them was; else both lengths and what stood between; else as many shares as both had.
    private static string? Merged(EditDraft draft, Shares shares, Thing divider)
    {
        (string? a, string? b) = (shares.Of(divider.Index - 1), shares.Of(divider.Index + 1));
        if (a == "rest" || b == "rest") return "rest";
        if (Parts(a) is { } x && Parts(b) is { } y) return shares.Members.Length == 2 ? null : $"{x + y} parts";
        if (shares.Members.Length == 2) return null;
        ExactLength size = shares.Size(divider.Index - 1) + shares.Size(divider.Index + 1);
        if (divider.Word == "posts" && draft.StructureOf(divider) is { } frame) return draft.Written(size + Divide.PostWidth(draft, frame, shares));
        if (draft.Set?.Parts.Where(p => p.Key == divider.Key || p.Key.StartsWith(divider.Key + ".", StringComparison.Ordinal)).SelectMany(p => p.Placements).ToList() is not { Count: > 0 } boxes) return draft.Written(size);
        ExactLength low = boxes.Select(p => shares.What == "width" ? p.X : p.Z).Min(), high = boxes.Select(p => shares.What == "width" ? p.X + p.SizeX : p.Z + p.SizeZ).Max();
        return draft.Written(size + (high - low));
    }

    private static int? Parts(string? share) => share is null ? 1 : share.Split(' ') is [var number, "part" or "parts"] && int.TryParse(number, out int parts) && parts is > 0 and < 500 ? parts : null;
}

/// <summary>Takes out anything with a key: a frame, a case, a top, a part, a well, a slot, a stretcher, an opening, a divider, a drawer, a shelf, a door; a material or a kind that nothing uses.</summary>
/// <param name="Key">Its key or name.</param>
public sealed record TakeOut(string Key) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"take out {Key}";

    internal override void Do(EditDraft draft)
    {
        Thing thing = draft.Find(Key);
        switch (thing.Word)
        {
            case "opening": new TakeOutOpening(Key).Do(draft); break;
            case "partition" or "deck" or "rail" or "posts": new TakeOutDivider(Key).Do(draft); break;
            case "drawer": new TakeOutDrawer(Key).Do(draft); break;
            case "shelf": new TakeOutShelf(Key).Do(draft); break;
            case "door":
                TextPath keys = thing.Path.Up;
                draft.Chosen = draft.Around(thing)?.Key ?? "";
                draft.Do(Splice.TakeOut(draft.At(keys) is YamlList { Items.Length: 1 } ? keys.Up : thing.Path));
                break;
            default: Whole(draft, thing); break;
        }
        draft.Name ??= $"{thing.Words} taken out";
    }

    private static void Whole(EditDraft draft, Thing thing)
    {
        if (thing.Word is "material" or Thing.DrawerKind or Thing.DoorKind) References.WantUnused(draft, thing);
        else References.WantNone(draft, [.. draft.Things.Where(t => t.Steps.AsSpan().StartsWith(thing.Steps.AsSpan())).Select(t => t.Key)]);
        if (thing.Word is "frame" or "case" && draft.Things.Count(t => t.Word is "frame" or "case") == 1 && draft.Things.FirstOrDefault(t => t.Word == "top") is { } above)
            throw draft.Refused("edit.stands-by", thing.Key, $"{Fillings.Capital(above.Words)} would have nothing to lie on.", $"Take out {above.Key} first.");
        TextPath at = thing.Path;
        bool isLast = draft.At(at.Up) is YamlMap { Entries.Length: 1 } or YamlList { Items.Length: 1 };
        if (isLast && at.Steps is [{ Key: "assembly" or "parts" }, _] && draft.Things.All(t => t.Steps[0].Key is not ("assembly" or "parts") || t.Steps[0].Key == at.Steps[0].Key))
            throw draft.Refused("edit.last-member", thing.Key, "Nothing would be left of the piece.", "Add what is to take its place first.");
        draft.Do(Splice.TakeOut(isLast ? at.Up : at));
    }
}
