using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>Sets the piece out afresh with amendments and looks at what came of them. Remembers what it was set out from.</summary>
internal sealed class Proof(SetPiece before)
{
    private readonly HashSet<(string Code, string Key)> _stops = [.. before.Findings.Where(f => f.Severity == Severity.Stop).Select(f => (f.Code, f.Key))];
    private readonly ImmutableArray<Gap> _inside = [.. before.Gaps.Where(g => IsInside(before, g))];

    /// <summary>The piece as it will be.</summary>
    public SetPiece With(IEnumerable<Amendment> amendments) => PieceSetOut.Of(before.Piece, before.Grid, Amendment.Apply(before.Facts, amendments));

    /// <summary>True when what was claimed holds, no gap that was inside falls out, and nothing stops the plan that did not before.</summary>
    public bool Holds(SetPiece after, Func<SetPiece, bool> claim) =>
        claim(after) && !Fallen(after).Any() && after.Findings.All(f => f.Severity != Severity.Stop || _stops.Contains((f.Code, f.Key)));

    /// <summary>Gaps that were inside their limits, or were none at all, and are outside now.</summary>
    public IEnumerable<QuantityKey> Fallen(SetPiece after) =>
        _inside.Select(g => g.Key).Where(k => !IsInside(after, k))
            .Concat(after.Gaps.Where(g => !IsInside(after, g)).Select(g => g.Key).Where(k => before.Gaps.All(b => b.Key != k)));

    /// <summary>The gaps that moved.</summary>
    public ImmutableArray<GapMove> Moves(SetPiece after) =>
    [
        .. from gap in before.Gaps
           where before.Worked.Values.ContainsKey(gap.Key) && after.Worked.Values.ContainsKey(gap.Key) && before.Worked[gap.Key] != after.Worked[gap.Key]
           select new GapMove(gap.Key, before.Worked[gap.Key], after.Worked[gap.Key]),
    ];

    /// <summary>Whether a gap lies inside its limits, the limits themselves counted in.</summary>
    public static bool IsInside(SetPiece set, QuantityKey key) => set.Gaps.FirstOrDefault(g => g.Key == key) is { } gap && IsInside(set, gap);

    /// <summary>Whether a gap lies inside its limits, the limits themselves counted in.</summary>
    public static bool IsInside(SetPiece set, Gap gap) =>
        set.Worked.Values.TryGetValue(gap.Key, out Worked? worked) && worked.Value >= gap.Least && worked.Value <= gap.Most;

    /// <summary>How far a gap lies from the nearer of its limits.</summary>
    public static ExactLength ToLimit(SetPiece set, Gap gap) => ExactLength.Min(set.Worked[gap.Key] - gap.Least, gap.Most - set.Worked[gap.Key]);
}
