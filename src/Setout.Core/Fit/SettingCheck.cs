using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit;

/// <summary>
/// The first piece as the pattern for the rest: what was read of one tells that a stop stood off its figure, and others are still to be cut
/// at it.
/// </summary>
internal static class SettingCheck
{
    /// <summary>A finding for each setting that readings say stood off by more than they can be wrong, and by half a step of the grid or more.</summary>
    public static IEnumerable<Finding> Of(Spreads spreads)
    {
        SetPiece set = spreads.Set;
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        foreach ((string id, Spread instead) in spreads.Learned.Known)
        {
            ExactLength off = instead.Value;
            if (off.Abs() * 2 < set.Grid.Step || off.Abs().ApproximateMillimetres <= 2 * instead.StandardDeviation.Millimetres.Value) continue;
            // Spreads of these sizes have been walked for this: all that is cut and all that is not.
            FirstCut[] atIt = [.. spreads.CutsAt(id)];
            Part[] uncut = [.. set.Parts.Where(p => atIt.Any(c => c.AsCut == p.Length.AsCut || c.AsCut == p.Width.AsCut))];
            // Only what was made at the stop tells of the stop: without such a part it is a guess about what nobody has cut.
            if (uncut.Length == 0 || !set.Parts.Any(p => set.Facts.StateOf(p) >= PartState.Cut && spreads.IsCutAt(id, p))) continue;
            string way = off.Sign > 0 ? "long" : "short";
            yield return new("setting.stands-off", Severity.Warn, uncut[0].Key,
                $"By what was read, the stop for {atIt[0].Words["setting ".Length..]} stood about {format.Text(off.Abs())} too {way}. {string.Join(", ", uncut.Select(p => p.Mark))} {(uncut.Length == 1 ? "is" : "are")} still to be cut at it.",
                $"Set it {format.Text(off.Abs())} {(off.Sign > 0 ? "shorter" : "longer")}, cut one and measure it before the rest.", uncut[0].Place);
        }
    }
}
