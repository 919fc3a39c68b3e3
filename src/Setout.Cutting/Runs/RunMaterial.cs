using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;

namespace Setout.Cutting.Runs;

/// <summary>One material as it comes to the saw: a layout of sheets or of boards.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Held">Ids of parts that wait for a reading: no run cuts one.</param>
public abstract record RunMaterial(string Name, ImmutableHashSet<string> Held)
{
    /// <summary>The largest blank that one person lifts, by its face; null where its weight is not known or never matters.</summary>
    public Area? MostArea { get; init; }
}

/// <summary>Sheets.</summary>
/// <param name="Name">Of the material.</param>
/// <param name="Held">Ids of parts that wait.</param>
/// <param name="Instance">What was asked; its kerf is at least that of every saw.</param>
/// <param name="Layout">A sound layout.</param>
public sealed record RunSheets(string Name, ImmutableHashSet<string> Held, SheetInstance Instance, SheetLayout Layout) : RunMaterial(Name, Held)
{
    /// <summary>Sheets whose slices stay in the order they have, because a shop already follows them: indices into the layout.</summary>
    public ImmutableHashSet<int> Settled { get; init; } = [];
}

/// <summary>Boards.</summary>
/// <param name="Name">Of the material.</param>
/// <param name="Held">Ids of parts that wait.</param>
/// <param name="Instance">What was asked.</param>
/// <param name="Layout">A sound layout.</param>
/// <param name="Width">Of a board that is not ripped, and of each lane: across the blade of the crosscut saw; above zero.</param>
public sealed record RunBoards(string Name, ImmutableHashSet<string> Held, BoardInstance Instance, BoardLayout Layout, Length Width) : RunMaterial(Name, Held);

/// <summary>What a run planner gives back: the runs, and the layouts with their slices and parts in the order of sawing.</summary>
/// <param name="Plan">The runs.</param>
/// <param name="Sheets">Each sheet material's layout, by its index among all materials; the same cut trees but for the order of slices, and for waste that a rough cut takes.</param>
/// <param name="Boards">Each board material's layout, by its index; the same but for the order of parts within a stretch and of lanes on a board.</param>
public sealed record OrderedRuns(RunPlan Plan, ImmutableDictionary<int, SheetLayout> Sheets, ImmutableDictionary<int, BoardLayout> Boards);

/// <summary>The port of the run planner.</summary>
public interface IRunPlanner
{
    /// <summary>Puts all cuts of all materials in order, in as few settings as order and holds allow. Pure and deterministic.</summary>
    /// <param name="materials">Sheets and boards together; those that share a figure share a run.</param>
    /// <param name="limits">The saws.</param>
    /// <param name="cancel">Ends the search for fewer settings early with the best order so far; nothing is thrown.</param>
    OrderedRuns Plan(ImmutableArray<RunMaterial> materials, SawLimits limits, CancellationToken cancel = default);
}
