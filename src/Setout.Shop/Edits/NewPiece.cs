using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>What a new piece, or a new member of one, is.</summary>
public enum NewKind
{
    /// <summary>A case of panels.</summary>
    Case,

    /// <summary>A frame of posts and rails.</summary>
    Frame,

    /// <summary>A top alone: one part by its finished sizes, since a top of an assembly lies on something.</summary>
    Top,
}

/// <summary>A piece from nothing: the least that can be set out.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Unit">Of bare numbers.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Width">Outside, as typed. Of a top its length from left to right.</param>
/// <param name="Height">Outside, as typed; not looked at for a top.</param>
/// <param name="Depth">Outside, as typed.</param>
/// <param name="Wood">What it is made of: a sheet, for a frame sticks; null for the usual: 3/4 hardwood plywood, 18 mm birch plywood, 2x4 (common practice, no source).</param>
public sealed record NewPiece(string Name, LengthUnit Unit, NewKind Kind, string Width, string Height, string Depth, Wood? Wood = null)
{
    /// <summary>What is asked, by the names of the fields, in the words that stand beside them.</summary>
    public static ImmutableDictionary<string, string> Asked { get; } = new Dictionary<string, string>
    {
        ["name"] = "Its name",
        ["width"] = "Width outside",
        ["height"] = "Height outside",
        ["depth"] = "Depth outside",
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>Its text, or why there is none: all that is wrong with what was typed, each with its field.</summary>
    public Edited Text()
    {
        Wood wood = Wood ?? Usual(Unit, Kind);
        string unit = Unit.Mark, words = $"new piece: {Name}";
        if (Kind == NewKind.Frame == (wood.Word == "panel"))
            return new(null, words, [new("edit.other-wood", Severity.Stop, "", Kind == NewKind.Frame ? "A frame is made of sticks." : "Cases and tops are made of sheets.", Kind == NewKind.Frame ? "Choose lumber or sticks." : "Choose a sheet.")]);
        string material = Kind == NewKind.Frame ? "posts" : "sheet";
        YamlMap member = Kind == NewKind.Top
            ? Written.Fields(("part", "T"), ("name", "top"), ("of", material), ("length", Width), ("width", Depth))
            : Member(Kind, Kind == NewKind.Frame ? "F" : "C", "A", material, Width, Height, Depth, Unit, null);
        YamlMap piece = Written.Map(("setout", Written.Word("1")), ("name", Written.Word(Name)), ("unit", Written.Word(unit)),
            ("materials", Written.Map((material, wood.Written()))), (Kind == NewKind.Top ? "parts" : "assembly", Written.List(member)));
        if (Slips() is { IsEmpty: false } slips) return new(null, words, slips);
        string text = string.Concat(Written.Lines(piece, 0).Select(l => l + "\n"));
        text = text.Replace("\nmaterials:", "\n\nmaterials:", StringComparison.Ordinal).Replace("\nassembly:", "\n\nassembly:", StringComparison.Ordinal).Replace("\nparts:", "\n\nparts:", StringComparison.Ordinal);
        TextRead<Core.Pieces.Piece> read = PieceText.Read(text);
        return read.IsSound ? new(text, words, []) { Chosen = Kind switch { NewKind.Frame => "F", NewKind.Case => "C", _ => "T" } } : new(null, words, read.Findings);
    }

    private ImmutableArray<Finding> Slips()
    {
        IEnumerable<(string Field, string Typed, string Example)> sizes = [("width", Width, Usual("36", "900")), .. Kind == NewKind.Top ? [] : new[] { ("height", Height, Usual("30", "750")) }, ("depth", Depth, Usual("18", "450"))];
        return [.. new[] { NameSlip() }.Concat(sizes.Select(s => SizeSlip(s.Field, s.Typed, s.Example))).OfType<Finding>()];
    }

    private string Usual(string inches, string millimetres) => Unit == LengthUnit.Inch ? inches : millimetres;

    private Finding? NameSlip()
    {
        Finding Slip(string code, string words, string remedy) => new(code, Severity.Stop, "", words, remedy) { Field = "name" };
        string name = Name.Trim();
        if (name.Length == 0) return Slip("edit.missing", $"{Asked["name"]}: nothing is typed here.", "Type what you call it, such as Tool chest.");
        if (name.Length > MapReader.LongestWord) return Slip("text.too-long", $"{Asked["name"]} has {name.Length} letters.", $"Shorten it to {MapReader.LongestWord} at most.");
        return name.Any(char.IsControl) ? Slip("text.one-line", $"{Asked["name"]} goes over several lines or holds a sign that cannot be seen.", "Type it on one line.") : null;
    }

    private Finding? SizeSlip(string field, string typed, string example)
    {
        string words = Asked[field];
        if (typed.Trim().Length == 0) return new("edit.missing", Severity.Stop, "", $"{words}: nothing is typed here.", $"Type it in {Unit.Words}, such as {example}.") { Field = field };
        ParseResult<ExactLength> read = BelievedLength.Read(typed, Unit, words.ToLowerInvariant());
        return read.Fault is { } fault ? new(fault.Code, Severity.Stop, "", fault.Code.StartsWith("length.", StringComparison.Ordinal) ? $"{words}: {fault.Words}" : fault.Words, fault.Remedy) { Field = field } : null;
    }

    /// <summary>The usual wood of a kind.</summary>
    internal static Wood Usual(LengthUnit unit, NewKind kind) => kind == NewKind.Frame ? Edits.Wood.Lumber("2x4") : unit == LengthUnit.Inch ? Edits.Wood.Sheet("hardwood plywood", "3/4") : Edits.Wood.Sheet("birch plywood", "18 mm");

    /// <summary>A frame with one bay, or an open case. A frame stands on rails 4 in or 100 mm up (common practice, no source).</summary>
    internal static YamlMap Member(NewKind kind, string key, string bay, string of, string width, string height, string depth, LengthUnit unit, (string Word, string Key)? stand)
    {
        (string, YamlNode?) F(string k, string? v) => (k, v is null ? null : Written.Word(v.Trim()));
        (string, YamlNode?)[] by = stand is { } s ? [F(s.Word, s.Key)] : [];
        return kind == NewKind.Frame
            ? Written.Map([F("frame", key), F("of", of), .. by, F("width", width), F("height", height), F("depth", depth), F("toe", unit == LengthUnit.Inch ? "4" : "100"), ("across", Written.List(Written.Fields(("opening", bay))))])
            : Written.Map([F("case", key), F("of", of), .. by, F("width", width), F("height", height), F("depth", depth)]);
    }
}

/// <summary>Adds a frame or a case beside or on another one.</summary>
/// <param name="Kind">A case or a frame.</param>
/// <param name="By">The key of what it stands by.</param>
/// <param name="IsOn">True on it, false at its right.</param>
/// <param name="Width">Outside, as typed.</param>
/// <param name="Height">Outside, as typed.</param>
/// <param name="Depth">Outside, as typed.</param>
/// <param name="Of">Its material; null for that of what it stands by, where that suits.</param>
public sealed record AddStructure(NewKind Kind, string By, bool IsOn, string Width, string Height, string Depth, string? Of = null) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"a {(Kind == NewKind.Frame ? "frame" : "case")} {(IsOn ? "on" : "beside")} {By}";

    internal override void Do(EditDraft draft)
    {
        if (Kind == NewKind.Top) throw draft.Refused("edit.other-kind", By, "A top is added as a top.", "Add a top instead.");
        Thing by = IsOn ? draft.Find(By, "frame", "case", "top") : draft.Find(By, "frame", "case");
        string[] suiting = [.. Kind == NewKind.Frame ? Fillings.Sticks(draft) : Fillings.Sheets(draft)];
        string of = Of ?? (by.Text("of") is { } same && suiting.Contains(same) ? same : suiting.FirstOrDefault()) ?? AddMaterial.Add(draft, NewPiece.Usual(draft.Unit, Kind), null);
        if (Of is not null) Fillings.WantThere(draft, Of, suiting, Kind == NewKind.Frame ? "stick" : "sheet", By);
        if (IsOn && AddTop.TopOver(draft, By) is { } over) throw draft.Refused("edit.covered", By, $"{Fillings.Capital(over)} lies on {By}.", "Stand it on that top.");
        if (draft.Things.FirstOrDefault(t => t.Text("beside") == By) is { } there && !IsOn)
            throw draft.Refused("edit.stands-by", By, $"{Fillings.Capital(there.Words)} stands beside {By} already.", $"Put it beside {there.Key}.");
        string key = draft.Fresh(Kind == NewKind.Frame ? "F" : "C", 1, mayBeBare: true)[0];
        string bay = Kind == NewKind.Frame ? draft.Fresh(draft.StemOf(""), 1, mayBeBare: true)[0] : "";
        // Tops come after what they lie on.
        int at = IsOn && by.Word == "top" ? by.Index + 1 : draft.Things.Where(t => t.Word is "frame" or "case").Max(t => t.Steps[1].Index) + 1;
        draft.Do(Splice.Add(TextPath.Of("", "assembly"), at, NewPiece.Member(Kind, key, bay, of, Width, Height, Depth, draft.Unit, (IsOn ? "on" : "beside", By))));
        draft.Chosen = key;
        draft.Name = $"{(Kind == NewKind.Frame ? "frame" : "case")} {key} {(IsOn ? "on" : "beside")} {By}";
    }
}
