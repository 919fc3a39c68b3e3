using System.Collections.Immutable;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Runs;

namespace Setout.Workbench.Breakdown;

/// <summary>One step at the saw: setting up, or one kind of cut.</summary>
/// <param name="Title">Which run, and which step of it.</param>
/// <param name="Lines">What is done.</param>
/// <param name="Desk">The cut, drawn; empty while setting up.</param>
/// <param name="Phone">The same for a phone.</param>
/// <param name="Back">The step before; null for the first.</param>
/// <param name="On">The step after; null for the last.</param>
/// <param name="Where">Such as <c>step 3 of 41</c>.</param>
public sealed record SawStep(string Title, ImmutableArray<ImmutableArray<SaidStretch>> Lines, string Desk, string Phone, string? Back, string? On, string Where)
{
    /// <summary>The number of its run.</summary>
    public int Run { get; init; }

    /// <summary>The step that is asked for; null where nothing is sawn.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="runs">Its runs in words.</param>
    /// <param name="run">The number of the run; null for the next to be cut.</param>
    /// <param name="cut">Which of its cuts, from 1; 0 for setting up.</param>
    /// <param name="href">The page with a step.</param>
    internal static SawStep? Of(Plan plan, ImmutableArray<WordedRun> runs, int run, int cut, Func<int, int, string> href)
    {
        (WordedRun Run, int Cut)[] all = [.. runs.SelectMany(r => Enumerable.Range(0, r.Cuts.Length + 1).Select(c => (r, c)))];
        int at = Array.FindIndex(all, s => s.Run.Run.Number == run && s.Cut == cut);
        if (at < 0) at = Array.FindIndex(all, s => s.Run.Run.Number == run);
        if (at < 0) return null;
        (WordedRun here, int of) = all[at];
        string? Href(int i) => i >= 0 && i < all.Length ? href(all[i].Run.Run.Number, all[i].Cut) : null;
        string where = $"step {at + 1} of {all.Length}";
        if (of == 0)
        {
            IEnumerable<string> lines = [.. here.Before, $"{here.Saw}.", .. here.Setting, .. here.Notes, $"Mind: {here.MindInTurn}"];
            return new($"{here.Heading}: set up", [.. lines.Select(l => PageWords.Of(l, plan.Set))], "", "", Href(at - 1), Href(at + 1), where) { Run = here.Run.Number };
        }
        WordedCuts cuts = here.Cuts[of - 1];
        string Drawn(double width, double most) => SvgWriter.Write(CutPicture.Of(plan, here.Run, cuts.Cuts[0], width, most), SvgOptions.Inline);
        return new(here.Heading,
            [.. new[] { $"{cuts.From}, {cuts.Often} ({cuts.Material})", cuts.Edge, $"off: {cuts.Off}", $"remains: {cuts.Remains}" }.Select(l => PageWords.Of(l))],
            Drawn(150, 80), Drawn(88, 80), Href(at - 1), Href(at + 1), where)
        { Run = here.Run.Number };
    }
}
