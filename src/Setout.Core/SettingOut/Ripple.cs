using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>A figure to cut that moved.</summary>
/// <param name="Part">The part, as it is now.</param>
/// <param name="IsLength">True for its length (along the grain), false for its width.</param>
/// <param name="Size">The size.</param>
/// <param name="Before">The figure as it was.</param>
/// <param name="After">The figure now.</param>
/// <param name="Through">
/// The shortest working that carried the move, from what was read or decided to the size: <c>L.width</c>, <c>L3.opening</c>, <c>L3.box.width</c>,
/// <c>L3.end.length</c>. Where no reading carried it (the piece was changed, another sheet was named), it begins with what moved by itself.
/// </param>
public sealed record FigureMoved(Part Part, bool IsLength, PartSize Size, ExactLength Before, ExactLength After, ImmutableArray<QuantityKey> Through)
{
    /// <summary>After less before: more than zero is longer.</summary>
    public ExactLength By => After - Before;
}

/// <summary>Figures of like parts that moved alike, from the same cause: one line to read.</summary>
/// <param name="By">By how much each moved; more than zero is longer.</param>
/// <param name="From">What moved them.</param>
/// <param name="Role">What the parts are for.</param>
/// <param name="IsLength">True for their lengths, false for their widths.</param>
/// <param name="Figures">One or more, in the order of the parts.</param>
public sealed record MovedTogether(ExactLength By, QuantityKey From, PartRole Role, bool IsLength, ImmutableArray<FigureMoved> Figures);

/// <summary>Parts that one reading would release. Each may have another that does as well: <see cref="Part.HeldUntil"/>.</summary>
/// <param name="Until">What is to be read: of what the parts wait for, that which releases most of them.</param>
/// <param name="Parts">One or more, in order.</param>
public sealed record StillWaiting(QuantityKey Until, ImmutableArray<Part> Parts);

/// <summary>What changed between two settings out of a piece: what a reading, its voiding or a mark comes to. Pure data.</summary>
/// <param name="Moved">Figures to cut that moved, like ones together, in the order of the parts.</param>
/// <param name="Came">Parts that are new.</param>
/// <param name="Went">Parts that are no more.</param>
/// <param name="Released">Parts that waited for a reading and may be cut now.</param>
/// <param name="HeldAgain">Parts that could be cut and wait now.</param>
/// <param name="Waiting">What waits, and for what; like ones together.</param>
/// <param name="NewFindings">Findings that were not there before.</param>
/// <param name="GoneFindings">Findings that are there no more.</param>
public sealed record Ripple(
    ImmutableArray<MovedTogether> Moved, ImmutableArray<Part> Came, ImmutableArray<Part> Went, ImmutableArray<Part> Released,
    ImmutableArray<Part> HeldAgain, ImmutableArray<StillWaiting> Waiting, ImmutableArray<Finding> NewFindings, ImmutableArray<Finding> GoneFindings)
{
    /// <summary>Figures of grooves and other cuts into parts that moved, like ones together.</summary>
    public ImmutableArray<SettingMoved> Settings { get; init; } = [];

    /// <summary>Holes that stand elsewhere on their parts, by what they are for.</summary>
    public ImmutableArray<StationsMoved> Stations { get; init; } = [];

    /// <summary>How many figures to cut moved.</summary>
    public int Figures => Moved.Sum(m => m.Figures.Length);

    /// <summary>What changed from one setting out to the next.</summary>
    /// <param name="before">Before.</param>
    /// <param name="after">After; the same piece, or a changed one.</param>
    public static Ripple Of(SetPiece before, SetPiece after)
    {
        var old = before.Parts.ToDictionary(p => p.Key, StringComparer.Ordinal);
        var now = after.Parts.ToDictionary(p => p.Key, StringComparer.Ordinal);
        // A finding that only stands on another line is the same.
        static Finding Told(Finding finding) => finding with { Place = Place.None };
        var toldBefore = before.Findings.Select(Told).ToHashSet();
        var toldAfter = after.Findings.Select(Told).ToHashSet();
        bool Free(SetPiece set, Dictionary<string, Part> parts, string key) => parts.TryGetValue(key, out Part? part) && !set.IsHeld(part);
        bool Held(SetPiece set, Dictionary<string, Part> parts, string key) => parts.TryGetValue(key, out Part? part) && set.IsHeld(part);
        return new(
            Together(FiguresOf(before, after)),
            [.. after.Parts.Where(p => !old.ContainsKey(p.Key))], [.. before.Parts.Where(p => !now.ContainsKey(p.Key))],
            [.. after.Parts.Where(p => Held(before, old, p.Key) && Free(after, now, p.Key) && after.Facts.StateOf(p) == PartState.Planned)], [.. after.Parts.Where(p => Free(before, old, p.Key) && Held(after, now, p.Key))],
            WaitingIn(after),
            [.. after.Findings.Where(f => !toldBefore.Contains(Told(f)))], [.. before.Findings.Where(f => !toldAfter.Contains(Told(f)))])
        {
            Settings = SettingsMovedIn.Cuts(before, after),
            Stations = SettingsMovedIn.Holes(before, after),
        };
    }

    private static IEnumerable<FigureMoved> FiguresOf(SetPiece before, SetPiece after)
    {
        RippleWalk? walk = null;
        foreach (Part part in after.Parts)
        {
            foreach ((PartSize size, bool isLength) in new[] { (part.Length, true), (part.Width, false) })
            {
                // The section of a stick is not cut; and what cannot be worked out has its own finding.
                if (size.ToCut == size.Exact || !before.Worked.Values.TryGetValue(size.ToCut, out Worked? old) || !after.Worked.Values.TryGetValue(size.ToCut, out Worked? now) || old.Value == now.Value) continue;
                walk ??= new RippleWalk(before, after);
                yield return new(part, isLength, size, old.Value, now.Value, walk.To(size.ToCut));
            }
        }
    }

    private static ImmutableArray<MovedTogether> Together(IEnumerable<FigureMoved> figures) =>
        [.. figures.GroupBy(f => (f.By, From: f.Through[0], f.Part.Role, f.IsLength)).Select(g => new MovedTogether(g.Key.By, g.Key.From, g.Key.Role, g.Key.IsLength, [.. g]))];

    private static ImmutableArray<StillWaiting> WaitingIn(SetPiece set)
    {
        List<Part> held = [.. set.Parts.Where(set.IsHeld)];
        var waiting = ImmutableArray.CreateBuilder<StillWaiting>();
        while (held.Count > 0)
        {
            // The first of those that release most: the order is that of the parts.
            QuantityKey until = held.SelectMany(p => p.HeldUntil.Where(set.Worked.Values.ContainsKey)).GroupBy(k => k).MaxBy(g => g.Count())!.Key;
            waiting.Add(new(until, [.. held.Where(p => p.HeldUntil.Contains(until))]));
            held.RemoveAll(p => p.HeldUntil.Contains(until));
        }
        return waiting.ToImmutable();
    }
}
