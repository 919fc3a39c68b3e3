using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Outputs;

namespace Setout.Workbench.Changing;

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
    // The fields of forms that are no edits' own, in which one types.
    private static readonly ImmutableDictionary<string, string> s_typed = new Dictionary<string, string>
    {
        [Text] = "the text",
        ["to"] = "the new name",
        ["point"] = "the name of this state",
        ["name"] = "its name",
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>The field that takes many lines.</summary>
    public const string Text = "text";

    internal static SentForm Of(string action, IFormCollection fields)
    {
        string? Words(string name) => name.StartsWith(ChangeForm.Field, StringComparison.Ordinal) ? name[ChangeForm.Field.Length..] : s_typed.GetValueOrDefault(name);
        return new(action,
            [.. from field in fields where Words(field.Key) is null from value in field.Value select (field.Key, value ?? "")],
            [.. from field in fields where Words(field.Key) is not null from value in field.Value select new TypedField(field.Key, Words(field.Key)!, value ?? "")]);
    }
}

/// <summary>A change that was not made.</summary>
/// <param name="Words">Why.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="Typed">What was typed, so that it is not lost.</param>
/// <param name="Back">Where it was typed.</param>
public sealed record RefusedView(string Words, string Remedy, string Typed, string Back)
{
    /// <summary>The form with all that was typed, to be sent again from here; null where that would lead nowhere.</summary>
    public SentForm? Again { get; init; }

    /// <summary>The field that is to blame, as the form names it; empty, the default, for none alone.</summary>
    public string Field { get; init; } = "";

    /// <summary>What is pressed to do it all the same; empty, the default, where it cannot be done.</summary>
    public string Sure { get; init; } = "";

    /// <summary>With what was typed, to be read.</summary>
    internal static RefusedView Of(Finding fault, string typed, string back) => new(PageWords.Blanks(fault is { Place.IsKnown: true, Field: "" } ? $"Line {fault.Place.Line}: {fault.Words}" : fault.Words), fault.Remedy, typed, back) { Field = fault.Field.Length > 0 ? ChangeForm.Field + fault.Field : "" };

    /// <summary>With what was typed still in its fields; to be read only where something was changed meanwhile, as it would be refused again.</summary>
    internal static RefusedView Of(Finding fault, HttpRequest request, IFormCollection fields, string back, bool isConflict = false)
    {
        var again = SentForm.Of(request.Path, fields);
        if (isConflict) return Of(fault, string.Join('\n', again.Typed.Select(t => t.Value).Where(v => v.Length > 0)), back);
        if (fault.Code == PieceChanges.Sure) return Of(fault, "", back) with { Again = again, Sure = request.Path.Value!.EndsWith("/redo", StringComparison.Ordinal) ? "Redo it all the same" : "Undo it all the same" };
        // Where nothing was typed, the same again is the same answer, unless it was the disk.
        return Of(fault, "", back) with { Again = again.Typed.Length > 0 || IsOfTheStore(fault) ? again : null };
    }

    /// <summary>True where nothing is wrong with what was sent: it is taken once there is room, or the disk can be written to.</summary>
    internal static bool IsOfTheStore(Finding fault) => fault.Code.StartsWith("store.", StringComparison.Ordinal);
}
