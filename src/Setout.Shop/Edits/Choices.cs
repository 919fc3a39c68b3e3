using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>Which edits make sense for what is chosen on the drawing or in the outline.</summary>
public static class Choices
{
    /// <summary>The edits of a thing, each with its fields; empty where nothing of it is edited by itself.</summary>
    /// <param name="set">The piece as set out.</param>
    /// <param name="key">A permanent key, the name of a material or a kind, the key of a part (<c>C.side</c>), or a quantity such as <c>L.width</c>; empty for the whole piece.</param>
    /// <param name="shop">The shop, whose rack offers wood; null for none.</param>
    public static ImmutableArray<EditChoice> For(SetPiece set, string key, Texts.Shop? shop = null) => [.. Of(set, key, shop).Select(c => c.For(set.Piece.Unit, set.Piece.Shown))];

    private static ImmutableArray<EditChoice> Of(SetPiece set, string key, Texts.Shop? shop)
    {
        Piece piece = set.Piece;
        var menu = new Menu(set, shop ?? Texts.Shop.Usual);
        if (key.Length == 0) return [.. menu.OfPiece()];
        if (key.Contains('.', StringComparison.Ordinal) && !piece.Keys.ContainsKey(key))
        {
            string owner = new QuantityKey(key).Owner;
            if (menu.OfSize(owner, key[(owner.Length + 1)..]) is { } size) return [size];
            if (piece.Materials.ContainsKey(owner) && key == owner + ".thickness") return Of(set, owner, shop);
            return set.Parts.Any(p => p.Key == key) ? Of(set, owner, shop) : [];
        }
        if (PiecePlace.In(piece).FirstOrDefault(p => p.Key == key) is { Place: { } place })
            return [.. place.Division?.Items[place.Index] is Divider divider ? menu.OfDivider(divider, place) : menu.OfOpening(key, place)];
        if (PiecePlace.Holding(piece, key) is { } held) return [.. menu.OfHeld(key, held.Key, held.Content)];
        if (piece.Members.FirstOrDefault(m => m.Key == key) is { } member)
            return [.. member switch { Structure structure => menu.OfStructure(structure), Top top => menu.OfTop(top), _ => menu.OfPart((LoosePart)member) }];
        if (piece.Materials.GetValueOrDefault(key) is { } material) return [.. menu.OfMaterial(material)];
        if (piece.DrawerKinds.ContainsKey(key) || piece.DoorKinds.ContainsKey(key)) return [.. menu.OfKind(key)];
        return piece.Keys.ContainsKey(key) ? [Menu.Button("take-out", $"Take out {key}", new TakeOut(key))] : [];
    }
}

/// <summary>What all menus are made of.</summary>
internal sealed partial class Menu(SetPiece set, Texts.Shop shop)
{
    private readonly Piece _piece = set.Piece;

    private bool IsInch => _piece.Unit == LengthUnit.Inch;

    public static EditChoice Button(string id, string words, Edit edit) => new(id, words, [], _ => edit);

    private static EditChoice Form(string id, string words, Func<FieldValues, Edit> maker, params ImmutableArray<EditField> fields) => new(id, words, fields, maker);

    private static EditField Length(string name, string words, string value = "", string usual = "") => new(name, words, FieldKind.Length, value) { Usual = usual };

    private static EditField OneOf(string name, string words, string value, IEnumerable<string> options, bool mayBeEmpty = false) =>
        new(name, words, FieldKind.OneOf, value) { Options = [.. options], MayBeEmpty = mayBeEmpty };

    private static EditField Count(string name, string words, string value) => new(name, words, FieldKind.Count, value);

    /// <summary>A form of one field that sets one value.</summary>
    private static EditChoice Value(string id, string words, TextPath at, EditField field) =>
        new(id, words, [field], v => v.Text(field.Name) is { } text ? new SetAny(at, text) : new ClearAny(at));

    private static EditChoice Sized(string id, string words, TextPath at, string value, string usual = "", bool mayBeEmpty = false) =>
        Value(id, words, at, Length("size", words, value, usual) with { MayBeEmpty = mayBeEmpty });

    private IEnumerable<string> Panels => _piece.Materials.Values.OfType<Panel>().OrderBy(m => m.Place.Line).ThenBy(m => m.Name, StringComparer.Ordinal).Select(m => m.Name);

    private IEnumerable<string> SticksThere => _piece.Materials.Values.OfType<Stick>().OrderBy(m => m.Place.Line).ThenBy(m => m.Name, StringComparer.Ordinal).Select(m => m.Name);

    private string Usual(string inches, string millimetres) => IsInch ? inches : millimetres;

    private string Say(ExactLength length)
    {
        Figure figure = LengthFormat.For(_piece.Unit).Bare.Format(length);
        return figure.IsExact ? figure.ToString() : NamedLength.Exactly(length);
    }

    private string Say(Given given) => Say(given.Value);

    private string Say(ShareOfWhole share) => share.Value is { } value ? Say(value) : share.IsRest ? "rest" : share.Parts > 1 ? $"{share.Parts} parts" : "";

    /// <summary>A worked size; empty where it is not known.</summary>
    private string Worked(string key, params ReadOnlySpan<string> whats)
    {
        foreach (string what in whats)
            if (set.Worked.Values.ContainsKey(QuantityKey.Of(key, what))) return Say(set.Worked[QuantityKey.Of(key, what)]);
        return "";
    }

    /// <summary>Half of a worked size, on the grid; empty where it is not known.</summary>
    private string Half(string key, params ReadOnlySpan<string> whats)
    {
        foreach (string what in whats)
            if (set.Worked.Values.ContainsKey(QuantityKey.Of(key, what))) return Say((set.Worked[QuantityKey.Of(key, what)] / Rational.Of(2)).RoundTo(set.Grid, Rounding.Down).Value);
        return "";
    }

    /// <summary>Wood that can be added: first what the shop has or buys, then kinds on record.</summary>
    private ImmutableArray<Wood> Woods(bool isSheet) =>
    [
        .. shop.Stock.Select(Wood.Of).OfType<Wood>()
            .Concat(isSheet ? PanelTable.All.Select(p => Wood.Sheet(p.Kind, p.Label)) : LumberTable.All.Select(l => Wood.Lumber(l.Nominal)))
            .Where(w => w.Word == "panel" == isSheet).Distinct(),
    ];

    private EditChoice Add(string id, string words, bool isSheet, TextPath? useAt)
    {
        ImmutableArray<Wood> woods = Woods(isSheet);
        string first = woods.Length > 0 ? woods[0].Words : "";
        return new(id, words, [OneOf("wood", "wood", first, woods.Select(w => w.Words).Distinct())],
            v => v.Needed("wood") is var chosen && woods.FirstOrDefault(w => w.Words == chosen) is { } wood ? new AddMaterial(wood, null, useAt) : new AddMaterial(Wood.Sheet("", "")));
    }

    /// <summary>Choices of what something is of: another material of the piece, or a new one.</summary>
    private IEnumerable<EditChoice> Made(string key, string of, bool isSheet) =>
    [
        Form("of", "Made of", v => new UseMaterial(TextPath.Of(key, "of"), v.Needed("of")), OneOf("of", "material", of, isSheet ? Panels : SticksThere)),
        Add("of-new", "Made of new wood", isSheet, TextPath.Of(key, "of")),
    ];
}
