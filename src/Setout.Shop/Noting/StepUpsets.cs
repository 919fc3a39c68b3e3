using System.Collections.Immutable;
using Setout.Core.Fit.Mending;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Noting;

/// <summary>What a step of the text, taken back or made again, would upset of what is cut, built, bought or read: facts stay where they are when a text goes back.</summary>
public static class StepUpsets
{
    /// <summary>More than these are counted: whoever reads so far knows enough not to press.</summary>
    public const int MostTold = 8;

    /// <summary>What would be upset that is not now, a sentence each; empty for nothing, and where there are no facts.</summary>
    /// <param name="before">The piece as it stands.</param>
    /// <param name="after">The piece with the other text and the same facts.</param>
    /// <param name="log">The facts.</param>
    public static ImmutableArray<string> Of(SetPiece before, SetPiece after, Log log)
    {
        if (before.IsStopped || (after.Facts.Pins.Count == 0 && after.Facts.States.Count == 0)) return [];
        if (after.IsStopped) return [after.Findings.First(f => f.Severity == Severity.Stop).Words];
        HashSet<string> known = [.. Remedies.UpsetsOf(before).Select(u => u.Words), .. Doubts(before)];
        return
        [
            .. LettingStand.Of(Remedies.UpsetsOf(after), log).Open.Select(u => u.Words).Where(w => !known.Contains(w)),
            .. before.Parts.Where(p => before.Facts.CutOf(p) > 0 && after.Parts.All(a => a.Key != p.Key)).Select(p => $"{Edits.Fillings.Capital(p.Name)} is cut, and would be no part of the piece."),
            .. before.Facts.Pins.Where(p => !p.Value.IsFact && before.Worked.Values.ContainsKey(p.Key) && !after.Worked.Values.ContainsKey(p.Key))
                .Select(p => $"{Edits.Fillings.Capital(FactSentences.NameOf(before, p.Key))} is read, and would be no size of the piece."),
            .. Doubts(after).Where(w => !known.Contains(w)),
        ];
    }

    // A reading that is far off then. What is read or marked of what is not there is told above, by its name.
    private static IEnumerable<string> Doubts(SetPiece set) =>
        set.Findings.Where(f => f.Severity > Severity.Note && f.Code.StartsWith("reading.", StringComparison.Ordinal) && f.Code != Evaluation.NoQuantity).Select(f => f.Words);
}
