using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>
/// What an edit that is offered would make of a piece. What could be built before can be built after: an edit that would leave nothing to draw, such as an opening wider than the frame, is
/// refused for what was typed, as one is that could not be read.
/// </summary>
/// <param name="Edited">What came of it.</param>
/// <param name="Set">The piece as it would be; null where the edit is refused.</param>
public sealed record EditTrial(Edited Edited, SetPiece? Set)
{
    /// <summary>Makes an edit without keeping it.</summary>
    /// <param name="offer">The edit, as it was offered.</param>
    /// <param name="values">What was typed, by the names of the fields.</param>
    /// <param name="text">The text that is edited.</param>
    /// <param name="bench">What is known beside it.</param>
    /// <param name="set">The piece as it was set out from that text.</param>
    /// <param name="setOut">Sets a text out; null for one that cannot be.</param>
    public static EditTrial Of(EditChoice offer, IReadOnlyDictionary<string, string> values, string text, EditBench bench, SetPiece set, Func<string, SetPiece?> setOut)
    {
        EditTrial trial = Made(offer, values, text, bench with { Set = set }, setOut);
        if (trial.Edited is { IsDone: false, Findings: [{ Field: "" } refused, ..] } && !s_ofNoField.Contains(refused.Code) && Typed(offer, values) is [{ } alone]) return new(trial.Edited with { Findings = [refused with { Field = alone }, .. trial.Edited.Findings[1..]] }, null);
        if (set.IsStopped || trial.Set is not { IsStopped: true } stopped) return trial;
        Finding why = stopped.Findings.First(f => f.Severity == Severity.Stop);
        (string blamed, string? room) = Blamed(offer, values, offer.Bare ?? set.Piece.Unit, v => Made(offer, v, text, bench with { Set = set }, setOut).Set is { IsStopped: false });
        // A place in a text that is not kept leads nowhere.
        return new(new(null, trial.Edited.Name, [why with { Place = default, Field = blamed, Remedy = room is null ? why.Remedy : $"There is room for {room} here." }]), null);
    }

    private static EditTrial Made(EditChoice offer, IReadOnlyDictionary<string, string> values, string text, EditBench bench, Func<string, SetPiece?> setOut)
    {
        TextRead<Edit> made = offer.Make(values);
        if (made.Value is not { } edit) return new(new(null, "", made.Findings), null);
        Edited edited = edit.ApplyTo(text, bench).In(offer, values);
        return new(edited, edited.Text is { } after ? setOut(after) : null);
    }

    // What stands against it is at the bench, in the text, or nowhere.
    private static readonly ImmutableHashSet<string> s_ofNoField = ["edit.cut", "edit.nothing", "edit.mistakes"];

    private static string[] Typed(EditChoice offer, IReadOnlyDictionary<string, string> values) =>
        [.. offer.Fields.Where(f => values.TryGetValue(f.Name, out string? value) && value.Trim() != f.Default).Select(f => f.Name)];

    // The field that was filled in, with how much there is room for; of several the one of which less would go, else the one without which it would.
    private static (string Field, string? Room) Blamed(EditChoice offer, IReadOnlyDictionary<string, string> values, LengthUnit unit, Func<IReadOnlyDictionary<string, string>, bool> goes)
    {
        string[] typed = Typed(offer, values);
        var rooms = new TypedRoom(offer, values, unit, goes);
        foreach (string field in typed)
            if (rooms.In(field) is { } room) return (field, room);
        return (typed.Length == 1 ? typed[0] : typed.FirstOrDefault(t => goes(values.Where(v => v.Key != t).ToDictionary(StringComparer.Ordinal))) ?? "", null);
    }
}
