using System.Collections.Immutable;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Edits;

/// <content>The whole piece, frames, cases, tops, parts, materials and kinds.</content>
internal sealed partial class Menu
{
    /// <summary>The edits of the whole piece.</summary>
    public IEnumerable<EditChoice> OfPiece()
    {
        yield return Value("name", "Name", TextPath.Of("", "name"), new("name", "name", FieldKind.Words, _piece.Name));
        yield return Value("about", "Remark", TextPath.Of("", "about"), new("about", "remark", FieldKind.Words, _piece.About) { MayBeEmpty = true });
        yield return Sized("grid", "Step of the figures to cut", TextPath.Of("", "grid"), _piece.Grid is { } grid ? Say(grid.Step) : "", Usual("1/32 in (common practice, no source)", "0.5 mm (common practice, no source)"), mayBeEmpty: true);
        if (_piece.Members.OfType<Structure>().LastOrDefault() is { } last)
        {
            foreach (EditChoice choice in Beside(last)) yield return choice;
            if (_piece.Members.OfType<Structure>().Any(s => !IsCovered(s.Key))) yield return TopOver(null);
        }
        yield return Add("sheet", "A sheet more", true, null);
        yield return Add("sticks", "Sticks more", false, null);
        string[] panels = [.. Panels];
        if (panels.Length > 0)
        {
            EditField Of(string name, string words) => OneOf(name, words, "", panels, mayBeEmpty: true);
            yield return Form("drawer-kind", "A kind of drawer", v => new AddDrawerKind(v.Text("name"), v.Text("sides"), v.Text("bottom"), v.Text("front")), new("name", "name", FieldKind.Words, "") { MayBeEmpty = true }, Of("sides", "sides"), Of("bottom", "bottom"), Of("front", "front"));
            yield return Form("door-kind", "A kind of door", v => new AddDoorKind(v.Text("name"), v.Text("of"), v.Text("lies")), new("name", "name", FieldKind.Words, "") { MayBeEmpty = true }, Of("of", "sheet"), OneOf("lies", "lies", "overlay", ["overlay", "half overlay", "inset"]));
        }
    }

    /// <summary>The edits of a frame or a case.</summary>
    public IEnumerable<EditChoice> OfStructure(Structure structure)
    {
        string key = structure.Key;
        yield return Named(key, structure.Name);
        foreach (string side in new[] { "width", "height", "depth" }) yield return Outside(structure, side);
        foreach (EditChoice choice in Made(key, structure.Of.Text, structure is Case)) yield return choice;
        if (structure is Frame frame)
        {
            yield return Sized("toe", "Floor to the bottom rails", TextPath.Of(key, "toe"), Say(frame.Toe));
            if (SticksThere.Any()) yield return Value("rails", "Rails of", TextPath.Of(key, "rails"), OneOf("rails", "sticks", frame.Rails?.Text ?? "", SticksThere, mayBeEmpty: true));
        }
        if (structure is Case @case)
        {
            if (Panels.Any() && (@case.Back is null || @case.BackFit == BackFit.Applied)) yield return Value("back", "Back of", TextPath.Of(key, "back"), OneOf("back", "sheet", @case.Back?.Text ?? "", Panels, mayBeEmpty: @case.Back is not null));
            yield return Value("hung", "Hangs on a wall", TextPath.Of(key, "hung"), OneOf("hung", "hung", @case.IsHung ? "yes" : "no", ["yes", "no"]));
            foreach (EditChoice choice in Filling(key, @case.Content, structure, isBay: false)) yield return choice;
        }
        foreach (EditChoice choice in Beside(structure)) yield return choice;
        if (!IsCovered(key)) yield return TopOver(key);
        yield return Button("take-out", $"Take out {key}", new TakeOut(key));
    }

    private EditChoice Outside(Structure structure, string side) => Sized(side, $"Outside {side} of {structure.Key}", TextPath.Of(structure.Key, side),
        Say(side switch { "width" => structure.Width, "height" => structure.Height, _ => structure.Depth }));

    private bool IsCovered(string key) => _piece.Members.OfType<Top>().Any(t => t.On.Any(o => o.Text == key) || (t.On.IsEmpty && !_piece.Members.OfType<Structure>().Any(s => s.Stand.On.Any(o => o.Text == key))));

    private IEnumerable<EditChoice> Beside(Structure by)
    {
        bool isFree = !_piece.Members.OfType<Structure>().Any(s => s.Stand.Beside?.Text == by.Key);
        foreach ((string id, string words, NewKind kind, bool isOn) in new[] { ("case-beside", "A case at the right", NewKind.Case, false), ("frame-beside", "A frame at the right", NewKind.Frame, false), ("case-on", "A case on it", NewKind.Case, true) })
        {
            if (isOn ? IsCovered(by.Key) : !isFree) continue;
            yield return Form(id, words, v => new AddStructure(kind, by.Key, isOn, v.Needed("width"), v.Needed("height"), v.Needed("depth")),
                Length("width", "width", isOn ? Say(by.Width) : Usual("24", "600")), Length("height", "height", Say(by.Height)), Length("depth", "depth", Say(by.Depth)));
        }
    }

    private EditChoice TopOver(string? on) => Form("top", on is null ? "A top" : $"A top on {on}", v => new AddTop(v.Text("of"), on, v.Needed("over")),
        OneOf("of", "sheet", Panels.FirstOrDefault() ?? "", Panels, mayBeEmpty: true) with { Usual = HeightUnderATop(on) }, Length("over", "stands over in front and at the ends", Usual("1", "25"), Usual("1 in (common practice, no source)", "25 mm (common practice, no source)")));

    private static EditChoice Named(string key, string name) => Value("name", "Name", TextPath.Of(key, "name"), new("name", "name", FieldKind.Words, name) { MayBeEmpty = name.Length > 0 });

    /// <summary>The edits of a top.</summary>
    public IEnumerable<EditChoice> OfTop(Top top)
    {
        string key = top.Key;
        yield return Named(key, top.Name);
        foreach (EditChoice choice in Made(key, top.Of.Text, isSheet: true)) yield return choice;
        foreach ((string side, Given over) in new[] { ("front", top.Front), ("back", top.Back), ("left", top.Left), ("right", top.Right) })
            yield return Sized($"overhang-{side}", $"Stands over, {side}", TextPath.Of(key, "overhang", side), Say(over));
        if (top.Edging is null)
        {
            // Posts of a frame are no edging: strips up to 2 in or 50 mm wide are offered.
            string[] strips = [.. SticksThere.Where(n => set.Worked.Values.ContainsKey(QuantityKey.Of(n, "width")) && set.Worked[QuantityKey.Of(n, "width")] <= (IsInch ? Core.Measures.Length.FromInches(2) : Core.Measures.Length.FromMillimetres(50))).OrderBy(n => set.Worked[QuantityKey.Of(n, "width")])];
            EditField corners = OneOf("corners", "corners", "mitred", ["mitred", "butted", "ends run past", "pinwheel"]);
            if (strips.Length > 0) yield return Form("edging", "Edging", v => new AddEdging(key, v.Needed("of"), v.Needed("corners")), OneOf("of", "sticks", strips[0], strips), corners);
            yield return Form("edging-new", "Edging of new sticks", v => new AddEdging(key, null, v.Needed("corners"), Wood.Stick(v.Needed("wood"), v.Needed("section"))),
                new("wood", "wood", FieldKind.Words, "oak"), new("section", "thickness x height", FieldKind.Size, Usual("3/4 x 3/4", "20 x 20")) { Usual = "as high as the top is thick, a little more to be planed flush (common practice, no source)" }, corners);
        }
        if (top.Edging is not null) yield return Button("edging-off", "Take the edging off", new ClearAny(TextPath.Of(key, "edging")));
        string[] bays = [.. PiecePlace.In(_piece).Where(p => p.Place is { IsBay: true, Content: null, Division: { } d } && d.Items[p.Place.Index] is Opening).Select(p => p.Key)];
        // Over a case there is the top of the case, which a well would go through.
        if (_piece.Members.OfType<Frame>().Any()) yield return Form("well", "A well", v => new AddWell(key, v.Needed("machine"), v.Text("bay") is null ? v.Wanted("left") : v.Text("left"), v.Needed("front"), v.Needed("footprint"), v.Needed("table"), v.Text("bay")),
            [OneOf("bay", "bay that it stands in", bays.FirstOrDefault() ?? "", bays, mayBeEmpty: true), Length("left", "from the left end, where it is in no bay", bays.Length > 0 ? "" : Usual("12", "300")) with { MayBeEmpty = true }, .. OfMachine]);
        foreach (Well well in top.Wells) yield return Button($"well-{well.Key}-out", $"Take out well {well.Key}", new TakeOut(well.Key));
        yield return Button("take-out", $"Take out top {key}", new TakeOut(key));
    }

    /// <summary>What hangs below the top that lies over an open bay; without a top, that one first.</summary>
    private IEnumerable<EditChoice> WellIn(string bay, Structure frame)
    {
        Top? over = _piece.Members.OfType<Top>().FirstOrDefault(t => t.On.Any(o => o.Text == frame.Key) || (t.On.IsEmpty && frame.Stand.On.IsEmpty));
        if (over is null) yield return TopOver(frame.Key) with { Words = $"A top on {frame.Key}, for a well here" };
        else if (!over.Wells.Any(w => w.Bay?.Text == bay)) yield return Form("well", "A well", v => new AddWell(over.Key, v.Needed("machine"), null, v.Needed("front"), v.Needed("footprint"), v.Needed("table"), bay), OfMachine);
    }

    // What the leaflet of the machine says.
    private ImmutableArray<EditField> OfMachine =>
    [
        // A guessed machine would be sawn through a good top: nothing stands here that was not measured.
        new("machine", "machine", FieldKind.Words, "") { Usual = "such as drum sander" }, new("footprint", "its feet, left to right x front to back", FieldKind.Size, "") { Usual = Usual("such as 18 x 14", "such as 450 x 350") },
        Length("table", "from its feet to its table", "", "the table comes level with the top; measure it on the machine itself"), Length("front", "from the front edge of the top", "", Usual("such as 4", "such as 100")),
    ];

    /// <summary>The edits of a part by its sizes alone.</summary>
    public IEnumerable<EditChoice> OfPart(LoosePart part)
    {
        yield return Named(part.Key, part.Name);
        yield return Sized("length", "Length", TextPath.Of(part.Key, "length"), Say(part.Length));
        if (part.Width is { } width) yield return Sized("width", "Width", TextPath.Of(part.Key, "width"), Say(width));
        yield return Value("count", "How many", TextPath.Of(part.Key, "count"), Count("count", "how many", part.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        yield return Button("take-out", $"Take out {part.Key}", new TakeOut(part.Key));
    }

    /// <summary>The edits of a material.</summary>
    public IEnumerable<EditChoice> OfMaterial(Material material)
    {
        TextPath at = TextPath.Of("", "materials", material.Name);
        if (material is Panel panel)
        {
            yield return Sized("thickness", "Thickness given", at.To("thickness"), panel.Thickness is { } thick ? Say(thick) : "", "a usual one for its label until you read the sheet", mayBeEmpty: panel.Label.Length > 0);
            yield return Value("label", "Label", at.To("label"), new("label", "label", FieldKind.Words, panel.Label) { MayBeEmpty = panel.Thickness is not null });
            yield return Value("grain", "Grain", at.To("grain"), OneOf("grain", "grain", panel.Grain == Grain.Keep ? "keep" : "free", ["keep", "free"]));
            yield return Value("edges", "Seen edges", at.To("edges"), OneOf("edges", "edges", panel.Edges.Work.ToString().ToLowerInvariant(), ["raw", "chamfered", "banded"]));
        }
        yield return Button("take-out", $"Take out {material.Name}", new TakeOut(material.Name));
    }

    /// <summary>The edits of a kind of drawer or of door.</summary>
    public IEnumerable<EditChoice> OfKind(string name)
    {
        if (_piece.DrawerKinds.GetValueOrDefault(name) is { } drawer)
        {
            TextPath at = TextPath.Of("", "drawers", name);
            foreach ((string key, Named of) in new[] { ("sides", drawer.Sides), ("bottom", drawer.Bottom), ("front", drawer.Front) })
                yield return Value(key, $"{Fillings.Capital(key)} of", at.To(key), OneOf(key, key, of.Text, Panels));
            yield return Sized("gap", "Gap between fronts", at.To("gap"), drawer.Gap is { } gap ? Say(gap) : "", Usual("1/8 in (common practice, no source)", "3 mm (trade article)"), mayBeEmpty: true);
            yield return Value("fronts", "Fronts", at.To("fronts"), OneOf("fronts", "fronts", drawer.Fronts switch { FrontWay.Inset => "inset", FrontWay.HalfOverlay => "half overlay", _ => "overlay" }, ["overlay", "half overlay", "inset"]));
        }
        else if (_piece.DoorKinds.GetValueOrDefault(name) is { } door)
        {
            TextPath at = TextPath.Of("", "doors", name);
            if (door.Make is Slab slab) yield return Value("of", "Made of", at.To("of"), OneOf("of", "sheet", slab.Of.Text, Panels));
            yield return Value("lies", "Lies", at.To("lies"), OneOf("lies", "lies", door.Lie switch { DoorLie.Inset => "inset", DoorLie.HalfOverlay => "half overlay", _ => "overlay" }, ["overlay", "half overlay", "inset"]));
            yield return Sized("gap", "Gap", at.To("gap"), door.Gap is { } gap ? Say(gap) : "", mayBeEmpty: true);
        }
        yield return Button("take-out", $"Take out {name}", new TakeOut(name));
    }
}
