using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Edits;

/// <summary>
/// What an edit that is offered would make of a piece. What could be built before can be built after: an edit that would leave nothing to draw, such as an opening wider than the frame, is
/// refused for what was typed, as one is that could not be read; and so is a size within the piece that is larger than the whole of it.
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
        if (set.IsStopped || trial.Set is not { } would) return trial;
        LengthUnit unit = offer.Bare ?? set.Piece.Unit;
        ImmutableArray<Finding> beyond = Beyond(offer, values, unit, set, would);
        if (!would.IsStopped && beyond.IsEmpty) return trial;
        bool Goes(IReadOnlyDictionary<string, string> tried) => Made(offer, tried, text, bench with { Set = set }, setOut).Set is { IsStopped: false } then && Beyond(offer, tried, unit, set, then).IsEmpty;
        string Remedy(string? room, string other) => room is null ? other : $"There is room for {room} here.";
        if (beyond.Length > 1) return new(new(null, trial.Edited.Name, beyond), null);
        if (!would.IsStopped) return new(new(null, trial.Edited.Name, [beyond[0] with { Remedy = Remedy(new TypedRoom(offer, values, unit, Goes).In(beyond[0].Field), beyond[0].Remedy) }]), null);
        Finding why = would.Findings.First(f => f.Severity == Severity.Stop);
        (string blamed, string? room) = Blamed(offer, values, unit, Goes);
        // A place in a text that is not kept leads nowhere.
        return new(new(null, trial.Edited.Name, [why with { Place = default, Field = blamed, Remedy = Remedy(room, why.Remedy) }]), null);
    }

    // What no rule stops and nobody can mean: a size within the piece that is larger than the whole of it.
    private static ImmutableArray<Finding> Beyond(EditChoice offer, IReadOnlyDictionary<string, string> values, LengthUnit unit, SetPiece set, SetPiece would)
    {
        ExactLength whole = Whole(set, would);
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        return whole.Sign == 0 ? [] :
        [
            .. from name in Typed(offer, values)
               let field = offer.Fields.First(f => f.Name == name)
               where !field.IsElsewhere
               let large = TypedRoom.Lengths(field, values[name], unit).Where(l => l > whole).ToArray()
               where large.Length > 0
               select new Finding("edit.beyond", Severity.Stop, "", $"{format.Text(large[0])} is larger than the whole piece: {format.Text(whole)}.", "Look at the figure and at its unit.") { Field = name },
        ];
    }

    // As it would be described, its frames, cases and parts end to end; or, for what reaches past them, as far as it reached before.
    private static ExactLength Whole(SetPiece set, SetPiece would)
    {
        ExactLength whole = would.Piece.Members.Aggregate(ExactLength.Zero, (sum, member) => sum + (member switch
        {
            Structure s => ExactLength.Max(s.Width.Value, ExactLength.Max(s.Height.Value, s.Depth.Value)),
            LoosePart p => ExactLength.Max(p.Length.Value, p.Width?.Value ?? ExactLength.Zero),
            _ => ExactLength.Zero,
        }));
        Placement[] all = [.. set.Parts.SelectMany(p => p.Placements)];
        if (all.Length == 0) return whole;
        ExactLength Reach(Func<Placement, ExactLength> from, Func<Placement, ExactLength> size) => all.Max(p => from(p) + size(p)) - all.Min(from);
        return new[] { whole, Reach(p => p.X, p => p.SizeX), Reach(p => p.Y, p => p.SizeY), Reach(p => p.Z, p => p.SizeZ) }.Max();
    }

    private static EditTrial Made(EditChoice offer, IReadOnlyDictionary<string, string> values, string text, EditBench bench, Func<string, SetPiece?> setOut)
    {
        Edited edited = offer.ApplyTo(values, text, bench);
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
