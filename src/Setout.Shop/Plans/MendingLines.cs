using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.Fit.Mending;

namespace Setout.Shop.Plans;

/// <summary>Writes remedies as lines of plain text.</summary>
public static class MendingLines
{
    // Beyond these a person would not choose.
    private const int MostRemedies = 4;

    /// <summary>What is upset, each with what can be done, the quickest first.</summary>
    public static IEnumerable<string> Of(IEnumerable<MendingAdvice> advice)
    {
        foreach (MendingAdvice one in advice)
        {
            yield return $"  upset: {one.Upset.Words}";
            if (one.Words.Length > 0) yield return $"    {one.Words}";
            foreach ((int index, Remedy remedy) in one.Remedies.Take(MostRemedies).Index())
            {
                string minutes = remedy.Minutes == 0 ? "no work" : $"about {remedy.Minutes} min";
                string stock = remedy.Stock.Words.Length > 0 ? $"; {remedy.Stock.Words}" : "";
                yield return $"    {(char)('a' + index)}) {remedy.Words} ({minutes}{stock})";
                if (remedy.InsteadWords.Length > 0) yield return $"         {remedy.InsteadWords}";
                if (remedy.Steps is [var only] && only == remedy.Words) continue;
                foreach (string step in remedy.Steps.Where(s => s != remedy.Words)) yield return $"         {step}";
                if (Caution(remedy.Caution) is { } caution) yield return $"         caution: {caution}";
                foreach (string command in remedy.Commands) yield return $"         when done: {command}";
            }
            if (one.Remedies.Length > MostRemedies) yield return $"    and {one.Remedies.Length - MostRemedies} more that take longer";
        }
    }

    private static string? Caution(string key) => key.Length > 0 ? Cautions.Of(key).Words : null;
}
