using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Adds a top.</summary>
/// <param name="Of">Its sheet; null for the first that there is.</param>
/// <param name="On">The key of the frame or case it lies on; null for all that nothing stands on.</param>
/// <param name="Over">How far it stands over in front and at both ends, as typed; null for 1 in or 25 mm (common practice, no source).</param>
public sealed record AddTop(string? Of = null, string? On = null, string? Over = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => On is null ? "a top" : $"a top on {On}";

    internal override void Do(EditDraft draft)
    {
        if (!draft.Things.Any(t => t.Word is "frame" or "case")) throw draft.Refused("edit.nothing-below", "", "There is nothing for a top to lie on.", "Add a frame or a case first.");
        if (On is not null) _ = draft.Find(On, "frame", "case");
        if (On is not null && TopOver(draft, On) is { } there) throw draft.Refused("edit.covered", On, $"{there} lies on {On}.", $"Change {there}, such as by layers, or take it out first.");
        string[] carriers = [.. draft.Things.Where(t => t.Word is "frame" or "case").Select(t => t.Key)], bare = [.. carriers.Where(c => TopOver(draft, c) is null)];
        if (bare.Length == 0) throw draft.Refused("edit.covered", "", "Everything has a top already.", "Change that one, or take it out first.");
        string of = Of ?? Fillings.FirstSheet(draft) ?? Sheets.About(draft, "3/4", "18 mm");
        Fillings.WantThere(draft, of, Fillings.Sheets(draft), "sheet", "");
        // Left out it is all that nothing stands on: so it is said where others lie there.
        YamlNode? on = On is not null ? Written.Word(On) : bare.Length < carriers.Length ? Written.Words(bare) : null;
        string over = Over?.Trim() ?? draft.Usual("1", "25"), key = draft.Fresh("T", 1, mayBeBare: true)[0];
        bool isFlush = draft.Length(over, key).Sign == 0;
        draft.Do(Splice.Add(TextPath.Of("", "assembly"), (draft.At(TextPath.Of("", "assembly")) as YamlList)?.Items.Length ?? 0,
            Written.Map(("top", Written.Word(key)), ("of", Written.Word(of)), ("on", on), ("overhang", isFlush ? null : Written.Fields(("front", over), ("left", over), ("right", over))))));
        draft.Chosen = key;
        draft.Name = $"top {key}{(On is null ? "" : $" on {On}")}";
    }

    /// <summary>The top that lies on a frame or a case, in words; null for none.</summary>
    internal static string? TopOver(EditDraft draft, string carrier) => draft.Things.FirstOrDefault(t => t.Word == "top" && t.Map["on"] switch
    {
        YamlScalar { Text.Length: > 0 } one => one.Text == carrier,
        YamlList list => list.Items.Any(i => i is YamlScalar named && named.Text == carrier),
        _ => !draft.Things.Any(o => o.Word is "frame" or "case" && (o.Text("on") == carrier || (o.Map["on"] is YamlList on && on.Items.Any(i => i is YamlScalar named && named.Text == carrier)))),
    })?.Words;
}

/// <summary>Adds a well to a top.</summary>
/// <param name="Top">The key of the top.</param>
/// <param name="Machine">What stands in it, such as <c>drum sander</c>.</param>
/// <param name="FromLeft">From the finished left end to the opening, as typed; null for one in a bay.</param>
/// <param name="FromFront">From the finished front edge to the opening.</param>
/// <param name="Footprint">Of the machine, left to right and front to back, such as <c>18 x 14</c>.</param>
/// <param name="TableHeight">From its feet to its table.</param>
/// <param name="Bay">The bay of a frame that it stands in; null for none.</param>
public sealed record AddWell(string Top, string Machine, string? FromLeft, string FromFront, string Footprint, string TableHeight, string? Bay = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"a well for {Machine} in {Top}";

    internal override void Do(EditDraft draft)
    {
        Thing top = draft.Find(Top, "top");
        if (Bay is not null && draft.BayOf(draft.Find(Bay, "opening"))?.Key != Bay) throw draft.Refused("edit.no-bay", Bay, $"{Bay} is not a bay of a frame.", "Choose a bay, or say how far from the left the well is.");
        if (Bay is null && FromLeft is null) throw draft.Refused("edit.no-place", Top, "Where the well is from the left is not said.", "Type how far it is from the left end of the top, or choose the bay it stands in.");
        string key = draft.Fresh("W", 1, mayBeBare: true)[0];
        string? sticks = Bay is null ? null : Fillings.Sticks(draft).FirstOrDefault();
        YamlMap well = Written.Fields(("well", key), ("machine", Machine), ("bay", Bay), ("from left", Bay is null ? FromLeft : null), ("from front", FromFront), ("footprint", Footprint), ("table height", TableHeight), ("bearers", sticks));
        if (top.Map["wells"] is YamlList { Items.Length: > 0 and var count }) draft.Do(Splice.Add(top.Path.To("wells"), count, well));
        else draft.Do(Splice.SetLast(top.Path.To("wells"), Written.List(well)));
        draft.Chosen = key;
        draft.Name = $"well {key} for {Machine} in top {Top}";
    }
}

/// <summary>Puts strips of wood round a top.</summary>
/// <param name="Top">The key of the top.</param>
/// <param name="Of">The sticks; null for the narrowest that there are.</param>
/// <param name="Corners"><c>mitred</c>, <c>butted</c>, <c>ends run past</c> or <c>pinwheel</c>; null for the usual.</param>
/// <param name="New">Sticks that are added for it; null for none.</param>
public sealed record AddEdging(string Top, string? Of = null, string? Corners = null, Wood? New = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"an edging round {Top}";

    internal override void Do(EditDraft draft)
    {
        Thing top = draft.Find(Top, "top");
        if (top.Map["edging"] is not null) throw draft.Refused("edit.not-open", Top, $"Top {Top} has an edging.", "Change that one, or take it out first.");
        string of = New is not null ? AddMaterial.Add(draft, New, null) : Of ?? Fillings.Sticks(draft).MinBy(n => draft.Worked(n, "width") ?? Core.Measures.ExactLength.Zero)
            ?? throw draft.Refused("edit.no-sticks", Top, "There are no sticks in this piece.", "Add sticks first, such as oak of 3/4 x 1 1/2.");
        Fillings.WantThere(draft, of, Fillings.Sticks(draft), "stick", Top);
        draft.Do(Splice.SetLast(draft.Find(Top).Path.To("edging"), Written.Fields(("of", of), ("corners", Corners))));
        draft.Chosen = Top;
        draft.Name = $"edging of {of} round top {Top}";
    }
}
