using CsCheck;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Testing;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Whatever length is written, the program does not fail: either a finding stops the plan and says what to change, or what comes out can be built.</summary>
public class ExtremePieceTests
{
    [Fact]
    public void ExtremeLengths_StopOrCanBeBuilt()
    {
        int whole = 0, all = 0;
        ExtremePiece.Text.Holds(text =>
        {
            // What the reader refuses has its place in the text already.
            if (PieceSource.Read(text, null, Sample.Text("shop.yaml")).Source is not { } source) return;
            SetPiece set = source.SetOut();
            Interlocked.Increment(ref all);
            Assert.All(set.Findings, f => Assert.False(string.IsNullOrEmpty(f.Remedy), f.Code));
            string wrong = string.Join("\n", Wrong(set, text));
            Assert.True(wrong.Length == 0, $"{wrong}\n{text}");
            if (!set.IsStopped) Interlocked.Increment(ref whole);
        }, iter: 600, print: t => t);
        Assert.True(whole * 8 > all, $"Only {whole} of {all} pieces could be set out: the others tell little.");
    }

    private static IEnumerable<string> Wrong(SetPiece set, string text)
    {
        foreach (Finding echo in set.Findings.Where(f => f.Code.StartsWith("working.", StringComparison.Ordinal) || (set.IsStopped && IsVague(set, f))))
            yield return $"{echo.Code}: {echo.Words} says nothing of what to change";
        if (set.IsStopped) yield break;
        bool isWarned = set.Findings.Any(f => f.Severity == Severity.Warn), isAlone = !text.Contains("beside: P", StringComparison.Ordinal) && !text.Contains("on: P", StringComparison.Ordinal);
        // Steps of a coarse grid are in every gap, and a shelf without play is what was asked for.
        bool isCoarse = set.Findings.Any(f => f.Code == "grid.coarse"), isTight = text.Contains("play: 0", StringComparison.Ordinal);
        foreach (string wrong in PieceBounds.Violations(set)) yield return wrong;
        // So is what stands behind fronts that lie over more than their edges.
        if (isCoarse || set.Findings.Any(f => f.Code == "front.overhang")) yield break;
        foreach (string wrong in RandomPieceTests.Wrong(set).Concat(AssemblyChecker.Violations(set))) yield return wrong;
        // The checker takes the smallest size of a part for its thickness.
        bool isBlock = set.Parts.Any(p => set.Worked[p.Length.AsCut] < set.Worked[p.Thickness] || set.Worked[p.Width.AsCut] < set.Worked[p.Thickness]);
        if (!isAlone || isWarned || isTight || isBlock) yield break;
        foreach (string wrong in SetPieceChecker.Violations(set)) yield return wrong;
    }

    /// <summary>A size below nothing is only an echo: it does not say what to change. On a coarse grid that says it.</summary>
    private static bool IsVague(SetPiece set, Finding finding) => finding.Code == "part.no-size" && !set.Findings.Any(f => f.Code == "grid.coarse");
}
