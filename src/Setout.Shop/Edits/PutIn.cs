using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Puts drawers into an opening.</summary>
/// <param name="Opening">Its key, or that of a case that is not divided.</param>
/// <param name="Count">How many, 1 to 30.</param>
/// <param name="Like">The kind of drawer; null for the first there is, and where there is none for a usual one, which is added.</param>
public sealed record PutDrawers(string Opening, int Count, string? Like = null) : Edit
{
    /// <summary>The most drawers in one opening.</summary>
    public const int Most = 30;

    /// <inheritdoc/>
    public override string Words => $"{Count.ToString(CultureInfo.InvariantCulture)} {(Count == 1 ? "drawer" : "drawers")} in {Opening}";

    internal override void Do(EditDraft draft)
    {
        if (Count is < 1 or > Most) throw draft.Refused("edit.count", Opening, $"An opening takes 1 to {Most} drawers.", "Choose another number.", Count.ToString(CultureInfo.InvariantCulture));
        Thing opening = draft.FindOpening(Opening);
        Fillings.WantOpen(draft, opening);
        if (opening.Map["doors"] is not null)
            throw draft.Refused("edit.behind-doors", Opening, $"{Fillings.Capital(opening.Words)} has doors; drawers behind doors want an opening of their own.", $"Divide {Opening} down first and put the drawers into one of its parts.");
        string like = Like ?? draft.Things.FirstOrDefault(t => t.Word == Thing.DrawerKind)?.Key ?? AddDrawerKind.Usual(draft);
        Fillings.WantThere(draft, like, draft.Things.Where(t => t.Word == Thing.DrawerKind).Select(t => t.Key), "kind of drawer", Opening);
        string[] keys = draft.Fresh(draft.StemOf(Opening), Count);
        Fillings.Carry(draft, opening, like);
        draft.Do(Splice.SetLast(opening.Path.To("drawers"), Written.Map(("like", Written.Word(like)), ("down", Written.List(keys.Select(k => Written.Fields(("drawer", k))))))));
        draft.Chosen = keys[0];
    }
}

/// <summary>Puts shelves into an opening.</summary>
/// <param name="Opening">Its key, or that of a case that is not divided.</param>
/// <param name="Count">How many, 1 to 50.</param>
/// <param name="Fit"><c>fixed</c>, <c>dado</c> or <c>adjustable</c>.</param>
/// <param name="Of">Their sheet; null for that of the case, in a frame for one that suits.</param>
public sealed record PutShelves(string Opening, int Count, string Fit = "fixed", string? Of = null) : Edit
{
    /// <summary>How they may be carried.</summary>
    public static ImmutableArray<string> Fits { get; } = ["fixed", "dado", "adjustable"];

    /// <inheritdoc/>
    public override string Words => $"{Count.ToString(CultureInfo.InvariantCulture)} {(Fit == "adjustable" ? "adjustable " : "")}{(Count == 1 ? "shelf" : "shelves")} in {Opening}";

    internal override void Do(EditDraft draft)
    {
        if (Count is < 1 or > Divide.Most) throw draft.Refused("edit.count", Opening, $"An opening takes 1 to {Divide.Most} shelves.", "Choose another number.", Count.ToString(CultureInfo.InvariantCulture));
        Thing opening = draft.FindOpening(Opening);
        Fillings.WantOpen(draft, opening);
        string? of = Of ?? Fillings.SheetIn(draft, opening);
        if (of is not null) Fillings.WantThere(draft, of, Fillings.Sheets(draft), "sheet", Opening);
        string[] keys = draft.Fresh(draft.StemOf(Opening), Count);
        draft.Do(Splice.SetLast(opening.Path.To("shelves"), Written.Map(("of", of is null ? null : Written.Word(of)), ("fit", Fit == "fixed" ? null : Written.Word(Fit)), ("down", Written.Words(keys)))));
        draft.Chosen = keys[0];
    }
}

/// <summary>Closes an opening with a door or a pair; what is behind stays.</summary>
/// <param name="Opening">Its key, or that of a case.</param>
/// <param name="IsPair">True for two doors.</param>
/// <param name="Like">The kind of door; null for the first there is, and where there is none for a plain one, which is added.</param>
/// <param name="Hinges">Where one alone hangs: <c>left</c> or <c>right</c>; null for the left.</param>
public sealed record PutDoors(string Opening, bool IsPair, string? Like = null, string? Hinges = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"{(IsPair ? "a pair of doors" : "a door")} before {Opening}";

    internal override void Do(EditDraft draft)
    {
        Thing opening = draft.FindOpening(Opening);
        if (opening.Map["doors"] is not null) Fillings.WantOpen(draft, opening, alsoDoors: true);
        if (opening.Map["drawers"] is not null)
            throw draft.Refused("edit.behind-doors", Opening, $"{Fillings.Capital(opening.Words)} holds drawers; drawers behind doors want an opening of their own.", $"Take the drawers out, divide {Opening} down, and put them into one of its parts.");
        Fillings.WantNothingOnTheFace(draft, opening);
        if (IsPair && Hinges is not null) throw draft.Refused("edit.hinges", Opening, "A pair hangs on both sides.", "Leave the side of the hinges out.");
        string like = Like ?? draft.Things.FirstOrDefault(t => t.Word == Thing.DoorKind)?.Key ?? AddDoorKind.Usual(draft, opening);
        Fillings.WantThere(draft, like, draft.Things.Where(t => t.Word == Thing.DoorKind).Select(t => t.Key), "kind of door", Opening);
        string[] keys = draft.Fresh(draft.StemOf(Opening), IsPair ? 2 : 1);
        draft.Do(Splice.SetLast(opening.Path.To("doors"), Written.Map(("like", Written.Word(like)), ("keys", Written.Words(keys)), ("hinges", Hinges is null ? null : Written.Word(Hinges)))));
        draft.Chosen = keys[0];
    }
}

/// <summary>Takes out what is in an opening: it is open then.</summary>
/// <param name="Opening">Its key, or that of a case.</param>
/// <param name="What">Of <c>across</c>, <c>down</c>, <c>drawers</c>, <c>shelves</c> and <c>doors</c> one; null for all.</param>
public sealed record Empty(string Opening, string? What = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"{(What == "doors" ? "take the doors off" : "take out what is in")} {Opening}";

    internal override void Do(EditDraft draft)
    {
        Thing opening = draft.FindOpening(Opening);
        string[] there = [.. Fillings.Keys.Where(k => opening.Map[k] is not null && (What is null || What == k))];
        if (there.Length == 0) throw draft.Refused("edit.nothing", Opening, $"{Fillings.Capital(opening.Words)} holds no {What ?? "such thing"}: there is nothing to take out.", "Choose another opening.");
        foreach (string key in there) draft.Do(Splice.TakeOut(opening.Path.To(key)));
        draft.Chosen = Opening;
    }
}
