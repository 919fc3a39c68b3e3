using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Adds a drawer to those of an opening.</summary>
/// <param name="Opening">The key of the opening, or of the case.</param>
/// <param name="Index">Where it stands, from the top, from 0; null for the lowest.</param>
/// <param name="Front">The height of its front, as typed; null for an equal share, or as its neighbour.</param>
public sealed record AddDrawer(string Opening, int? Index = null, string? Front = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"a drawer more in {Opening}";

    internal override void Do(EditDraft draft)
    {
        Thing opening = draft.FindOpening(Opening);
        TextPath list = opening.Path.To("drawers", "down");
        if (draft.At(list) is not YamlList { Items.Length: > 0 } drawers) throw draft.Refused("edit.no-drawers", Opening, $"There are no drawers in {opening.Words}.", "Put drawers into it first.");
        int at = Math.Clamp(Index ?? drawers.Items.Length, 0, drawers.Items.Length);
        string key = draft.Fresh(draft.StemOf(Opening), 1)[0];
        draft.Do(Splice.Add(list, at, Written.Fields(("drawer", key))));
        var shares = Shares.Beside(draft, draft.Find(key));
        int neighbour = at == 0 ? 1 : at - 1;
        bool isGraduated = Graduated.Changed(draft, opening, ratio => [.. ratio[..at], ratio[Math.Min(neighbour, ratio.Length - 1)], .. ratio[at..]]);
        if (Front is not null) shares.Set(at, Front);
        else if (!isGraduated && shares.Members.FirstOrDefault(m => shares.Of(m) == "rest", -1) is >= 0 and var rest)
        {
            // Beside a rest each wants a height: that of one that has some, or of the rest both make equal shares.
            if (shares.Members.FirstOrDefault(m => m != at && shares.Of(m) is { } s && s != "rest", -1) is >= 0 and var like)
                shares.Write(at, shares.Of(neighbour) is { } own and not "rest" ? own : shares.Of(like));
            else shares.Write(rest, null);
        }
        else if (!isGraduated) shares.Close(at);
        draft.Chosen = key;
        draft.Name = $"drawer {key} in {opening.Words}";
    }
}

/// <summary>Takes a drawer out.</summary>
/// <param name="Drawer">Its key.</param>
public sealed record TakeOutDrawer(string Drawer) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"take out drawer {Drawer}";

    internal override void Do(EditDraft draft)
    {
        Thing drawer = draft.Find(Drawer, "drawer");
        Thing? opening = draft.Around(drawer);
        var shares = Shares.Beside(draft, drawer);
        draft.Chosen = opening?.Key ?? "";
        if (shares.Members.Length == 1)
        {
            draft.Do(Splice.TakeOut(shares.List.Up));
            return;
        }
        int at = drawer.Index;
        draft.Do(Splice.TakeOut(drawer.Path));
        if (opening is not null && Graduated.Changed(draft, opening, ratio => at < ratio.Length && ratio.Length > 1 ? [.. ratio[..at], .. ratio[(at + 1)..]] : ratio)) return;
        if (opening?.Map["drawers"] is YamlMap bank && bank["graduated"] is not null) return;
        shares.CloseWith(Math.Max(0, at - 1));
    }
}

/// <summary>Sets the height of a drawer's front.</summary>
/// <param name="Drawer">Its key.</param>
/// <param name="Height">As typed, <c>rest</c>, such as <c>2 parts</c>, or null for an equal share.</param>
public sealed record SetFront(string Drawer, string? Height) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"front of drawer {Drawer}: {Height ?? "an equal share"}";

    internal override void Do(EditDraft draft)
    {
        Thing drawer = draft.Find(Drawer, "drawer");
        if (Height is not null and not "rest" && (draft.Around(drawer)?.Map["drawers"] as YamlMap)?["graduated"] is not null)
            throw draft.Refused("edit.graduated", Drawer, "These fronts are graduated: none has a height of its own.", "Take 'graduated' out first, or change its figures.");
        SetShare.Do(draft, drawer, Height);
    }
}

/// <summary>Gives the drawers of an opening another kind.</summary>
/// <param name="Opening">The key of the opening, of the case, or of one of the drawers.</param>
/// <param name="Like">The name of the kind.</param>
public sealed record SetKind(string Opening, string Like) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"kind of what is in {Opening}: {Like}";

    internal override void Do(EditDraft draft)
    {
        Thing opening = draft.Find(Opening, "opening", "case", "drawer", "door");
        if (!opening.Holds) opening = draft.Around(opening)!;
        string bank = opening.Map["drawers"] is YamlMap ? "drawers" : "doors", what = bank == "drawers" ? Thing.DrawerKind : Thing.DoorKind;
        if (opening.Map[bank] is not YamlMap map) throw draft.Refused("edit.no-drawers", Opening, $"There are neither drawers nor doors at {opening.Words}.", "Put some in first.");
        Fillings.WantThere(draft, Like, draft.Things.Where(t => t.Word == what).Select(t => t.Key), what, Opening);
        string before = (map["like"] as YamlScalar)?.Text ?? "";
        draft.Do(Splice.Set(opening.Path.To(bank, "like"), Like));
        (draft.Chosen, draft.Name) = (opening.Key, $"{bank} of {opening.Words}: {before} to {Like}");
    }
}

/// <summary>Adds a shelf to those of an opening.</summary>
/// <param name="Opening">The key of the opening, or of the case.</param>
/// <param name="Index">Where it stands, from the top, from 0; null for the lowest.</param>
public sealed record AddShelf(string Opening, int? Index = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"a shelf more in {Opening}";

    internal override void Do(EditDraft draft)
    {
        Thing opening = draft.FindOpening(Opening);
        TextPath list = opening.Path.To("shelves", "down");
        if (draft.At(list) is not YamlList { Items.Length: > 0 } shelves) throw draft.Refused("edit.no-shelves", Opening, $"There are no shelves in {opening.Words}.", "Put shelves into it first.");
        string key = draft.Fresh(draft.StemOf(Opening), 1)[0];
        draft.Do(Splice.Add(list, Math.Clamp(Index ?? shelves.Items.Length, 0, shelves.Items.Length), Written.Word(key)));
        (draft.Chosen, draft.Name) = (key, $"shelf {key} in {opening.Words}");
    }
}

/// <summary>Takes a shelf out.</summary>
/// <param name="Shelf">Its key.</param>
public sealed record TakeOutShelf(string Shelf) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"take out shelf {Shelf}";

    internal override void Do(EditDraft draft)
    {
        Thing shelf = draft.Find(Shelf, "shelf");
        TextPath list = shelf.Path.Up;
        draft.Chosen = draft.Around(shelf)?.Key ?? "";
        draft.Do(Splice.TakeOut(draft.At(list) is YamlList { Items.Length: 1 } ? list.Up : shelf.Path));
    }
}

/// <summary>Moves a drawer or a shelf up or down among its like; each keeps its key and its height.</summary>
/// <param name="Key">Its key.</param>
/// <param name="By">How many places down; below 0 up.</param>
public sealed record MoveItem(string Key, int By) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"move {Key} {(By < 0 ? "up" : "down")}";

    internal override void Do(EditDraft draft)
    {
        Thing thing = draft.Find(Key, "drawer", "shelf");
        long to = (long)thing.Index + By;
        if (thing.List is not { } list || draft.At(list) is not YamlList items || to < 0 || to >= items.Items.Length)
            throw draft.Refused("edit.no-room", Key, $"There is no place {(By < 0 ? "above" : "below")} {Key} to move it to.", "Choose another place among its like.");
        draft.Do(Splice.Move(list, thing.Index, (int)to));
        (draft.Chosen, draft.Name) = (Key, $"{thing.Words} moved {(By < 0 ? "up" : "down")}");
    }
}

/// <summary>Ratios of heights, such as <c>4:5:6</c>, which have one number for each drawer.</summary>
internal static class Graduated
{
    /// <summary>Changes the numbers where there are some; false where there are none.</summary>
    public static bool Changed(EditDraft draft, Thing opening, Func<string[], string[]> change)
    {
        TextPath at = opening.Path.To("drawers", "graduated");
        if (draft.At(at) is not YamlScalar { Text: var text }) return false;
        if (text.Contains(':', StringComparison.Ordinal) && string.Join(':', change([.. text.Split(':').Select(s => s.Trim())])) is var changed && changed != text) draft.Do(Splice.Set(at, changed));
        return true;
    }
}
