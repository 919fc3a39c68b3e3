using System.Collections.Immutable;
using Setout.Shop.Documents;
using Setout.Store;

namespace Setout.Workbench.Keeping;

/// <summary>A backup that was looked into.</summary>
/// <param name="Field">How the form names it: <c>backup</c> or <c>upload</c>.</param>
/// <param name="File">The name of its file.</param>
/// <param name="Holds">What it holds, in words.</param>
/// <param name="Lines">What would change, document by document; those that stay left out.</param>
/// <param name="Stay">How many stay as they are.</param>
public sealed record RestoreView(string Field, string File, string Holds, ImmutableArray<DifferenceLine> Lines, int Stay)
{
    /// <summary>What happens, in a word.</summary>
    public static string Word(DifferenceAct act) => act switch
    {
        DifferenceAct.Comes => "comes",
        DifferenceAct.Goes => "goes",
        _ => "changes",
    };

    internal static RestoreView Of(string field, string path, DataKeeping keeping) => Restoring.LookInto(Path.Combine(keeping.Place, "setout.look"), path, keeping.Time, (there, counts) =>
    {
        ImmutableArray<DifferenceLine> lines = StoreDifference.Of(keeping.Store, there);
        return new RestoreView(field, Path.GetFileName(path), counts.ToString(), [.. lines.Where(l => l.Act != DifferenceAct.Stays)], lines.Count(l => l.Act == DifferenceAct.Stays));
    });
}
