using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Outputs;
using Setout.Workbench.Changing;

namespace Setout.Workbench.Beginning;

/// <summary>One thing to choose.</summary>
/// <param name="Value">As the form sends it.</param>
/// <param name="Words">What it is called.</param>
/// <param name="IsChosen">Whether it is chosen.</param>
public sealed record BeginChoice(string Value, string Words, bool IsChosen);

/// <summary>One thing to type.</summary>
/// <param name="Name">Of the field.</param>
/// <param name="Words">What it is called.</param>
/// <param name="Typed">What was typed.</param>
/// <param name="Example">What might be typed, in either unit; empty for none.</param>
/// <param name="Hint">What is worth knowing first; empty for nothing.</param>
/// <param name="Fault">Why what was typed cannot be taken, with what to do; empty where it can, or nothing was sent yet.</param>
public sealed record BeginField(string Name, string Words, string Typed, string Example, string Hint, string Fault);

/// <summary>The form that begins a piece: empty at first; else with all that was typed and chosen, and with each slip beside its field.</summary>
/// <param name="Change">The id of the change: a form sent twice begins one piece.</param>
/// <param name="Kinds">What it may be.</param>
/// <param name="Units">What sizes may be in.</param>
/// <param name="Fields">What is typed.</param>
/// <param name="Samples">What can be begun with instead.</param>
/// <param name="Fault">Why it was not begun where no field is to blame, with what to do; empty for nothing.</param>
public sealed record BeginView(string Change, ImmutableArray<BeginChoice> Kinds, ImmutableArray<BeginChoice> Units, ImmutableArray<BeginField> Fields, ImmutableArray<SamplePiece> Samples, string Fault)
{
    /// <summary>The first field that is to blame, by name; empty for none.</summary>
    public string FirstToBlame => Fields.FirstOrDefault(f => f.Fault.Length > 0)?.Name ?? "";

    /// <summary>Nothing typed yet.</summary>
    /// <param name="samples">What can be begun with instead.</param>
    /// <param name="unit">That figures are shown in to whoever begins; null for that of each piece.</param>
    internal static BeginView Empty(Samples samples, LengthUnit? unit) => Of(samples, ChangeForm.NewId(), f => f == "unit" && unit == LengthUnit.Millimetre ? "mm" : "", []);

    /// <summary>With what was typed, and what is wrong with it.</summary>
    internal static BeginView Of(Samples samples, string change, Func<string, string> typed, ImmutableArray<Finding> slips)
    {
        static string Told(Finding slip) => PageWords.Blanks($"{slip.Words} {slip.Remedy}");
        string Fault(string field) => slips.FirstOrDefault(s => s.Field == field) is { } slip ? Told(slip) : "";
        BeginField Field(string name, string example = "", string hint = "") => new(name, NewPiece.Asked[name], typed(name), example, hint, Fault(name));
        string kind = KindOf(typed("kind")) switch { NewKind.Frame => "frame", NewKind.Top => "top", _ => "case" }, unit = UnitOf(typed("unit")).Mark;
        return new(change,
            [.. new[] { ("case", "a case of sheets"), ("frame", "a frame of posts and rails"), ("top", "a top alone") }.Select(k => new BeginChoice(k.Item1, k.Item2, k.Item1 == kind))],
            [.. new[] { LengthUnit.Inch, LengthUnit.Millimetre }.Select(u => new BeginChoice(u.Mark, u.Words, u.Mark == unit))],
            [Field("name"), Field("width", "36 in or 900 mm"), Field("height", "30 in or 750 mm", "Without a top that is put on later: its thickness comes on this."), Field("depth", "18 in or 450 mm")],
            samples.All, slips.FirstOrDefault(s => !NewPiece.Asked.ContainsKey(s.Field)) is { } other ? Told(other) : "");
    }

    /// <summary>What was chosen.</summary>
    internal static NewKind KindOf(string chosen) => chosen switch { "frame" => NewKind.Frame, "top" => NewKind.Top, _ => NewKind.Case };

    /// <summary>What was chosen.</summary>
    internal static LengthUnit UnitOf(string chosen) => chosen == "mm" ? LengthUnit.Millimetre : LengthUnit.Inch;
}
