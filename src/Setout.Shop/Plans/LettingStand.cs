using System.Collections.Immutable;
using Setout.Core.Fit.Mending;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>
/// Findings, and what is upset, that somebody lets stand with a reason. It is told again when it gets worse; what stops a plan, and so all that is about safety, never stands.
/// </summary>
public static class LettingStand
{
    /// <summary>The code under which something upset is let stand.</summary>
    public static string CodeOf(Upset upset) => upset.Kind switch { UpsetKind.GapOut => "upset.gap", UpsetKind.PartDiffers => "upset.part", _ => "upset.bought" };

    /// <summary>By how much something upset is out: a gap outside its limits, a part off the figure that the plan asks for, a slide too long.</summary>
    public static ExactLength OffOf(Upset upset) => upset.By.Abs();

    /// <summary>The piece with its findings as they are let stand.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="log">Its log.</param>
    /// <param name="own">The same in the unit of its text, in which the log keeps what was said; null, the default, where it is shown in that.</param>
    public static SetPiece Into(SetPiece set, Log log, SetPiece? own = null)
    {
        if (Allowed(log) is not { Length: > 0 } allowed) return set;
        ImmutableArray<Finding> said = own?.Findings ?? set.Findings;
        // The same findings in the same order, but for their words; were they not, those of the log's own unit are the safe ones.
        bool isSame = said.Length == set.Findings.Length && said.Zip(set.Findings).All(p => (p.First.Code, p.First.Key) == (p.Second.Code, p.Second.Key));
        return set with { Findings = [.. said.Select((f, i) => Of(isSame ? set.Findings[i] : f, f.Words, allowed))] };
    }

    /// <summary>The findings, those let stand as notes with the reason; those that got worse as they are, with what they said when they were let stand.</summary>
    public static IEnumerable<Finding> Of(IEnumerable<Finding> findings, Log log)
    {
        AllowEntry[] allowed = Allowed(log);
        return allowed.Length == 0 ? findings : findings.Select(f => Of(f, f.Words, allowed));
    }

    /// <summary>What is upset still, and what of it is let stand.</summary>
    public static (ImmutableArray<Upset> Open, ImmutableArray<(Upset Upset, string Because)> Stand) Of(ImmutableArray<Upset> upset, Log log)
    {
        AllowEntry[] allowed = Allowed(log);
        AllowEntry? By(Upset one) => allowed.LastOrDefault(a => a.Code == CodeOf(one) && a.Key == one.Key.Text) is { } entry && !(entry.Off is { } off ? OffOf(one) > off : entry.Said.Length > 0 && entry.Said != Kept(one.Words)) ? entry : null;
        return ([.. upset.Where(u => By(u) is null)], [.. upset.Select(u => (u, By(u)?.Because ?? "")).Where(u => u.Item2.Length > 0)]);
    }

    /// <summary>So much of what was said as an entry can keep.</summary>
    public static string Kept(string words) => words.Length <= MostKept ? words : char.IsHighSurrogate(words[MostKept - 1]) ? words[..(MostKept - 1)] : words[..MostKept];

    private const int MostKept = 500;

    private static Finding Of(Finding finding, string words, AllowEntry[] allowed)
    {
        if (finding.Severity == Severity.Stop || finding.LetStand.Length > 0 || allowed.LastOrDefault(a => a.Code == finding.Code && a.Key == finding.Key) is not { } entry) return finding;
        return entry.Said.Length == 0 || entry.Said == Kept(words)
            ? finding with { Severity = Severity.Note, LetStand = entry.Because }
            : finding with { Remedy = $"{finding.Remedy} It was let stand when it said: {entry.Said}".TrimStart() };
    }

    private static AllowEntry[] Allowed(Log log) => [.. log.Standing.OfType<AllowEntry>()];
}
