using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>How far a part has come; each state holds what the one before holds.</summary>
public enum PartState
{
    /// <summary>On paper only.</summary>
    Planned,

    /// <summary>Cut: its figures are facts.</summary>
    Cut,

    /// <summary>Glued or screwed to its neighbours.</summary>
    Assembled,

    /// <summary>In its place, and found to go.</summary>
    Fitted,
}

/// <summary>
/// What is known from the bench: readings, what is cut and from which sheet, what is together, what is bought. Immutable. States and sheets
/// are kept under the words of the mark: one member (<c>L3.side#2</c>), a part (<c>L3.side</c>), or all parts of an owner (<c>L3</c>).
/// </summary>
/// <param name="Pins">Readings, and figures that are facts, by the quantity they pin.</param>
/// <param name="Sheets">The sheet that something came from: <c>L3.side#1</c> to <c>boxes.sheet-2</c>.</param>
/// <param name="States">How far something has come; what is missing is planned.</param>
/// <param name="Bought">Keys and names of what is bought.</param>
public sealed record BenchFacts(
    IReadOnlyDictionary<QuantityKey, Pin> Pins, ImmutableDictionary<string, string> Sheets,
    ImmutableDictionary<string, PartState> States, ImmutableHashSet<string> Bought)
{
    /// <summary>What stands between the name of a material and that of one of its sheets.</summary>
    public const string SheetWord = ".sheet-";

    /// <summary>Where in the facts something was last finished, and last cut anew, under the words of the mark: a finish goes with the part it is on.</summary>
    public ImmutableDictionary<string, int> FinishedAt { get; init; } = ImmutableDictionary<string, int>.Empty;

    /// <inheritdoc cref="FinishedAt"/>
    public ImmutableDictionary<string, int> AnewAt { get; init; } = ImmutableDictionary<string, int>.Empty;

    /// <summary>Nothing is known yet.</summary>
    public static BenchFacts Empty { get; } = Of(ImmutableDictionary<QuantityKey, Pin>.Empty);

    /// <summary>Readings only.</summary>
    public static BenchFacts Of(IReadOnlyDictionary<QuantityKey, Pin> pins) =>
        new(pins, ImmutableDictionary<string, string>.Empty, ImmutableDictionary<string, PartState>.Empty, []);

    /// <summary>The name of one member of a part: <c>L3.side#2</c>.</summary>
    public static string Member(string part, int number) => $"{part}#{number}";

    /// <summary>How far one member has come.</summary>
    /// <param name="part">The key of the part.</param>
    /// <param name="number">Which member, from 1.</param>
    public PartState StateOf(string part, int number)
    {
        if (States.Count == 0) return PartState.Planned;
        PartState own = States.GetValueOrDefault(Member(part, number)), all = States.GetValueOrDefault(part), owner = States.GetValueOrDefault(new QuantityKey(part).Owner);
        return (PartState)Math.Max((int)own, Math.Max((int)all, (int)owner));
    }

    /// <summary>How far a part has come: as far as the member that has come furthest, for its figures are frozen from then on.</summary>
    public PartState StateOf(Part part)
    {
        PartState furthest = PartState.Planned;
        for (int i = 1; i <= part.Count && States.Count > 0; i++)
            if (StateOf(part.Key, i) is var state && state > furthest) furthest = state;
        return furthest;
    }

    /// <summary>Whether one member has its finish.</summary>
    /// <param name="part">The key of the part.</param>
    /// <param name="number">Which member, from 1.</param>
    public bool IsFinished(string part, int number)
    {
        if (FinishedAt.Count == 0) return false;
        int Last(ImmutableDictionary<string, int> at) => Math.Max(at.GetValueOrDefault(Member(part, number), -1), Math.Max(at.GetValueOrDefault(part, -1), at.GetValueOrDefault(new QuantityKey(part).Owner, -1)));
        return Last(FinishedAt) > Last(AnewAt);
    }

    /// <summary>How many members of a part have their finish.</summary>
    public int FinishedOf(Part part) => FinishedAt.Count == 0 ? 0 : Enumerable.Range(1, part.Count).Count(i => IsFinished(part.Key, i));

    /// <summary>How many members of a part are cut, or further.</summary>
    public int CutOf(Part part) => States.Count == 0 ? 0 : Enumerable.Range(1, part.Count).Count(i => StateOf(part.Key, i) >= PartState.Cut);

    /// <summary>The sheet that one member came from; null while it is not known.</summary>
    /// <param name="part">The key of the part.</param>
    /// <param name="number">Which member, from 1.</param>
    public string? SheetOf(string part, int number) => Sheets.GetValueOrDefault(Member(part, number)) ?? Sheets.GetValueOrDefault(part);
}
