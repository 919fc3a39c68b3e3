using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Cutting.Runs;

namespace Setout.Shop.Runs;

/// <summary>Equal cuts of one run, in words. Fractions stand in the words as <c>23 1/4</c>.</summary>
/// <param name="Cuts">The cuts, in the order of work.</param>
/// <param name="Material">The material.</param>
/// <param name="From">What is cut: one name or several, each cut as often.</param>
/// <param name="Times">How often each of them is cut.</param>
/// <param name="Off">What comes off each.</param>
/// <param name="Remains">What remains of each.</param>
/// <param name="Edge">Which edge or end lies at fence and stop, or where the figure is measured from.</param>
public sealed record WordedCuts(ImmutableArray<RunCut> Cuts, string Material, string From, int Times, string Off, string Remains, string Edge)
{
    /// <summary>Such as <c>4 times</c>, or <c>once each</c>.</summary>
    public string Often => (Times switch { 1 => "once", 2 => "twice", var n => $"{n} times" }) + (Cuts.Length > Times ? " each" : "");
}

/// <summary>One run as it is said on paper, on the screen and in plan.json.</summary>
/// <param name="Run">The run.</param>
/// <param name="Heading">Such as <c>Run 7 of 19: fence at 5 7/8</c>.</param>
/// <param name="Saw">Which saw, with which face up.</param>
/// <param name="Setting">How it is set, where the heading does not say it all: a sentence each.</param>
/// <param name="Cuts">What is cut.</param>
/// <param name="Notes">What else is to be done: a sentence each.</param>
/// <param name="Mind">Short cautions.</param>
public sealed record WordedRun(
    Run Run, string Heading, string Saw, ImmutableArray<string> Setting, ImmutableArray<WordedCuts> Cuts, ImmutableArray<string> Notes, ImmutableArray<Caution> Mind)
{
    /// <summary>What is cut into the strips before they are cut to length: a sentence each; empty for most runs.</summary>
    public ImmutableArray<string> Before { get; init; } = [];

    /// <summary>The cautions as they stand beside the run: each in full at the first run it belongs to, then its gist and the number of that run.</summary>
    public string MindInTurn { get; init; } = "";

    /// <summary>What all cuts of the run have at fence and stop; empty where they differ.</summary>
    public string Edge => Cuts.Select(c => c.Edge).Distinct().Take(2).ToArray() is [var only] ? only : "";
}

/// <summary>Wood that comes off and is neither part nor waste.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Material">The material.</param>
/// <param name="Words">Its size, and for which parts it is.</param>
public sealed record PutAside(string Name, string Material, string Words)
{
    /// <summary>The reading that it waits for, in words; empty for what waits for none.</summary>
    public string Until { get; init; } = "";

    /// <summary>All in one sentence.</summary>
    public string Whole => Until.Length > 0 ? $"{Words}: waits for a reading of {Until}" : Words;
}

/// <summary>A reading that runs, or wood that is put aside, wait for: with room on paper to write it down.</summary>
/// <param name="Words">What is read.</param>
/// <param name="With">With what.</param>
/// <param name="StandsIn">The figure that is reckoned with until then.</param>
public sealed record AskedReading(string Words, string With, string StandsIn);

/// <summary>The work at the saws in words.</summary>
/// <param name="Summary">Such as <c>19 settings, the fewest for this layout</c>.</param>
/// <param name="Runs">In the order of work.</param>
/// <param name="Waiting">What is put aside whole until a reading.</param>
/// <param name="Kept">What goes to the rack.</param>
public sealed record WordedRuns(string Summary, ImmutableArray<WordedRun> Runs, ImmutableArray<PutAside> Waiting, ImmutableArray<PutAside> Kept)
{
    /// <summary>What comes before the first run: what is still to be read, and which saws nobody has told of. A text each.</summary>
    public ImmutableArray<string> First { get; init; } = [];

    /// <summary>The readings that <see cref="First"/> asks for.</summary>
    public ImmutableArray<AskedReading> Ask { get; init; } = [];

    /// <summary>The readings that <see cref="Waiting"/> waits for.</summary>
    public ImmutableArray<AskedReading> Await { get; init; } = [];

    /// <summary>How wood is named in this plan; empty where nothing is sawn.</summary>
    public string Names { get; init; } = "";

    /// <summary>What earlier runs left and this plan does not use.</summary>
    public ImmutableArray<PutAside> Unused { get; init; } = [];
}
