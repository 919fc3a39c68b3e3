using System.Collections.Immutable;
using Setout.Core.SettingOut;

namespace Setout.Core.Fit.Mending;

/// <summary>
/// Remedies of different upsets that undo each other. A drawer is trimmed to a bay that reads narrow, and the rails that made it narrow are cut anew: done both, the drawer is loose. Each is proven by itself, so each says in its own line
/// instead of which others it is.
/// </summary>
internal static class InsteadOf
{
    // Each is a set-out; beyond these everything hangs together, and the words say so without a proof.
    private const int MostProven = 24;

    /// <summary>The advice with what each remedy stands instead of.</summary>
    public static ImmutableArray<MendingAdvice> Into(Bench bench, ImmutableArray<MendingAdvice> advice)
    {
        if (advice.Length < 2) return advice;
        int proven = 0;
        bool GoTogether(MendingAdvice one, Remedy a, MendingAdvice other, Remedy b)
        {
            if (proven++ >= MostProven) return false;
            SetPiece both = bench.Proof.With([.. a.Amendments, .. b.Amendments]);
            return !both.IsStopped && IsRight(both, one.Upset) && IsRight(both, other.Upset);
        }
        ImmutableArray<string> Of(MendingAdvice one, Remedy remedy)
        {
            if (remedy.Acts.IsEmpty) return [];
            var instead = ImmutableArray.CreateBuilder<string>();
            foreach (MendingAdvice other in advice.Where(o => o.Upset.Key != one.Upset.Key))
            {
                Remedy[] others = [.. other.Remedies.Where(r => !r.Acts.IsEmpty)];
                if (others.Length == 0) continue;
                if (PutsRight(remedy, other.Upset))
                {
                    instead.Add($"all that is offered for {other.Upset.Name}, which it puts right too");
                    continue;
                }
                foreach (Remedy than in others)
                {
                    if (than.Lead == remedy.Lead || !(Moves(remedy, other.Upset) || Moves(than, one.Upset) || remedy.Parts.Any(than.Parts.Contains))) continue;
                    if (PutsRight(than, one.Upset) || !GoTogether(one, remedy, other, than)) instead.Add($"“{than.Lead}”, offered for {other.Upset.Name}: one moves what the other is fitted to");
                }
            }
            return instead.ToImmutable();
        }
        return [.. advice.Select(one => one with { Remedies = [.. one.Remedies.Select(r => r with { Instead = Of(one, r) })] })];
    }

    private static bool Moves(Remedy remedy, Upset upset) => remedy.Moves.Any(m => m.Key == upset.Key);

    // By itself it brings the other gap in as well.
    private static bool PutsRight(Remedy remedy, Upset upset) => remedy.Moves.Any(m => m.Key == upset.Key && m.After >= upset.Least && m.After <= upset.Most);

    private static bool IsRight(SetPiece set, Upset upset) => upset.Kind != UpsetKind.GapOut || Proof.IsInside(set, upset.Key);
}
