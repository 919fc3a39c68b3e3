using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Noting;
using Setout.Shop.Outputs;
using Setout.Shop.Texts;

namespace Setout.Workbench.Changing;

/// <summary>Something that is wrong with what a form sent.</summary>
/// <param name="Field">The field that is to blame, as the form names it; empty for none alone.</param>
/// <param name="Words">Why.</param>
/// <param name="Remedy">What to do.</param>
public sealed record Slip(string Field, string Words, string Remedy)
{
    /// <summary>All of it, to stand beside the field.</summary>
    public string Told => PageWords.Blanks($"{Words} {Remedy}".Trim());

    /// <summary>All that is to be told of a refusal: each field with its slip; where none is to blame, the first alone.</summary>
    /// <param name="faults">Why it was refused; one at least.</param>
    /// <param name="prefix">What the form puts before the names of its fields.</param>
    internal static ImmutableArray<Slip> Of(ImmutableArray<Finding> faults, string prefix = ChangeForm.Field)
    {
        ImmutableArray<Slip> blamed = [.. faults.Where(f => f.Field.Length > 0).DistinctBy(f => f.Field).Select(f => new Slip(prefix + f.Field, f.Words, f.Remedy))];
        return blamed.IsEmpty ? [new("", faults[0].Place.IsKnown ? $"Line {faults[0].Place.Line}: {faults[0].Words}" : faults[0].Words, faults[0].Remedy)] : blamed;
    }
}

/// <summary>What was typed into a field.</summary>
/// <param name="Name">The name of the field.</param>
/// <param name="Words">What it is called.</param>
/// <param name="Value">What was typed.</param>
public sealed record TypedField(string Name, string Words, string Value);

/// <summary>A form as it was sent, to be sent again: under the id it had, so that it changes things once.</summary>
/// <param name="Action">Where to.</param>
/// <param name="Hidden">What goes along unseen.</param>
/// <param name="Typed">What was typed, to be mended.</param>
public sealed record SentForm(string Action, ImmutableArray<(string Name, string Value)> Hidden, ImmutableArray<TypedField> Typed)
{
    /// <summary>The field that takes many lines.</summary>
    public const string Text = "text";

    // The fields of forms that are no edits' own, in which one types, in the order in which they stand.
    private static readonly (string Name, string Words)[] s_typed =
        [(Text, "the text"), ("to", "the new name"), ("point", "the name of this state"), ("name", "its name"), ("because", "because"), .. NotedReading.Typed];

    internal static SentForm Of(string action, IFormCollection fields)
    {
        // The sheet of a mark is chosen; that of a reading is typed.
        string? Words(string name) => name.StartsWith(ChangeForm.Field, StringComparison.Ordinal) ? name[ChangeForm.Field.Length..]
            : name != NotedReading.SheetField || fields.ContainsKey(NotedReading.ValueField) ? s_typed.FirstOrDefault(t => t.Name == name).Words ?? NotedMending.Words(name) : null;
        return new(action,
            [.. from field in fields where Words(field.Key) is null from value in field.Value select (field.Key, value ?? "")],
            [.. from field in fields where Words(field.Key) is not null from value in field.Value select new TypedField(field.Key, Words(field.Key)!, value ?? "")]);
    }
}

/// <summary>A change that was not made.</summary>
/// <param name="Slips">Why: each field with its slip, or one thing that no field is to blame for.</param>
/// <param name="Typed">What was typed, so that it is not lost.</param>
/// <param name="Back">Where it was typed.</param>
public sealed record RefusedView(ImmutableArray<Slip> Slips, string Typed, string Back)
{
    /// <summary>What did not happen.</summary>
    public string Title { get; init; } = "Nothing was changed";

    /// <summary>The form with all that was typed, to be sent again from here; null where that would lead nowhere.</summary>
    public SentForm? Again { get; init; }

    /// <summary>What takes it all the same: the name of a button or of a box; empty, the default, where it cannot be done.</summary>
    public string Overrule { get; init; } = "";

    /// <summary>What that is called.</summary>
    public string OverruleWords { get; init; } = "";

    /// <summary>Whether it is a box to be ticked, beside what may be mended.</summary>
    public bool IsTicked => OverruleWords.Length > 0 && Overrule != PieceChanges.Sure;

    /// <summary>What stands above the form: what no field of it shows.</summary>
    public IEnumerable<Slip> Above => Slips.Where(s => Again?.Typed.Any(t => t.Name == s.Field) != true);

    /// <summary>The slip of a field; null for none.</summary>
    /// <param name="field">By its name.</param>
    public Slip? Of(string field) => Slips.FirstOrDefault(s => s.Field == field);

    /// <summary>With what was typed, to be read.</summary>
    internal static RefusedView Of(Finding fault, string typed, string back) => new(Slip.Of([fault]), typed, back);

    /// <summary>With what was typed still in its fields; to be read only where something was changed meanwhile, as it would be refused again.</summary>
    internal static RefusedView Of(ImmutableArray<Finding> faults, HttpRequest request, IFormCollection fields, string back, bool isConflict = false)
    {
        var again = SentForm.Of(request.Path, fields);
        var view = new RefusedView(Slip.Of(faults), "", back);
        if (isConflict) return view with { Typed = string.Join('\n', again.Typed.Select(t => t.Value).Where(v => v.Length > 0)) };
        if (faults[0].Code == PieceChanges.Sure) return view with { Again = again, Overrule = PieceChanges.Sure, OverruleWords = request.Path.Value!.EndsWith("/redo", StringComparison.Ordinal) ? "Redo it all the same" : "Undo it all the same" };
        // Where nothing was typed, the same again is the same answer, unless it was the disk.
        return view with { Again = again.Typed.Length > 0 || IsOfTheStore(faults[0]) ? again : null };
    }

    /// <summary>A fact that was not taken: the same, and some may be taken all the same.</summary>
    internal static RefusedView OfFact(ImmutableArray<Finding> faults, HttpRequest request, IFormCollection fields, string back)
    {
        string overrule = faults[0].Code switch { Noted<LogEntry>.Slip or Noted<LogEntry>.Far => "force", Noted<LogEntry>.Already => "again", _ => "" };
        RefusedView view = Of(faults, request, fields, back) with { Title = "Nothing was written", Slips = Slip.Of(faults, "") };
        if (overrule.Length == 0) return view;
        var again = SentForm.Of(request.Path, fields);
        return view with { Again = again with { Hidden = [.. again.Hidden.Where(h => h.Name != overrule)] }, Overrule = overrule, OverruleWords = overrule == "again" ? "cut anew" : "take it all the same" };
    }

    /// <summary>True where nothing is wrong with what was sent: it is taken once there is room, or the disk can be written to.</summary>
    private static bool IsOfTheStore(Finding fault) => fault.Code.StartsWith("store.", StringComparison.Ordinal);
}
