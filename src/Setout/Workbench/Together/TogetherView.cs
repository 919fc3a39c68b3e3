using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Workbench.Breakdown;
using Setout.Workbench.Buying;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Together;

/// <summary>A piece that can be chosen.</summary>
/// <param name="Document">Its name in addresses.</param>
/// <param name="Name">Its own.</param>
/// <param name="IsChosen">Whether it is.</param>
public sealed record ChoosablePiece(string Document, string Name, bool IsChosen);

/// <summary>What is printed of several pieces.</summary>
/// <param name="Sheets">The bench sheets of all.</param>
/// <param name="All">All files of the plan.</param>
/// <param name="Each">The sheets of each piece by itself; empty while those are worked out.</param>
public sealed record PapersView(string Sheets, string All, ImmutableArray<(string Name, string Href)> Each);

/// <summary>Several pieces in one breakdown.</summary>
/// <param name="Title">Their names.</param>
/// <param name="Choice">What can be chosen.</param>
/// <param name="Notes">What stands in the way.</param>
/// <param name="Saving">What it saves.</param>
/// <param name="Groups">What to buy.</param>
/// <param name="Sum">What all that has a price costs; empty where nothing has one.</param>
/// <param name="Materials">The drawings.</param>
/// <param name="Cautions">What to mind.</param>
/// <param name="Runs">The work at the saws; null where there is none.</param>
public sealed record TogetherView(
    string Title, ImmutableArray<ChoosablePiece> Choice, ImmutableArray<Note> Notes, ImmutableArray<SavedFigure> Saving, ImmutableArray<BuyingGroup> Groups, string Sum,
    ImmutableArray<BrokenMaterial> Materials, ImmutableArray<string> Cautions, WordedRuns? Runs)
{
    /// <summary>Where a run is marked.</summary>
    internal const string Cut = Links.Together + "/cut";

    /// <summary>The bench sheets of all of them.</summary>
    internal const string BenchSheets = Links.Together + "/bench-sheets.pdf";

    /// <summary>All files of the plan.</summary>
    internal const string AllFiles = Links.Together + "/plan.zip";

    /// <summary>Where the search for layouts is ended.</summary>
    internal const string Enough = Links.Together + "/enough";

    /// <summary>What is waited for; null where nothing is. What is shown then is out of date.</summary>
    public WaitingView? Waits { get; init; }

    /// <summary>The layout of a piece by itself that is waited for, to tell what is saved: by which news of it come, how far it has come, and where to look again; null for none.</summary>
    public (string Name, string Found, string Page)? AloneWaits { get; init; }

    /// <summary>How far the runs are; null where there are none.</summary>
    public MarkedRuns? Marked { get; init; }

    /// <summary>What it costs to save, where the saws are set more often together; empty where they are not.</summary>
    public string Price { get; init; } = "";

    /// <summary>The one piece that is ticked, with its own page; null where none is, or several are.</summary>
    public (string Name, string Href)? Only { get; init; }

    /// <summary>What is printed of them; null while there is no plan that holds.</summary>
    public PapersView? Papers { get; init; }

    internal static string Href(ImmutableArray<string> names, bool isAnew = false) => Href(Links.Together, names, isAnew);

    private static string Href(string address, ImmutableArray<string> names, bool isAnew) =>
        $"{address}?{string.Join('&', names.Select(n => "piece=" + Uri.EscapeDataString(n)))}{(isAnew ? $"&plan={BreakdownView.Anew}" : "")}";

    internal static TogetherView Choosing(KeptPieces pieces, ImmutableArray<string> chosen) => new("Several pieces together", ChoiceOf(pieces, chosen), [], [], [], "", [], [], null)
    {
        Only = chosen is [var one] && pieces.Read(one) is { } file ? (file.Source?.Piece.Name ?? one, Links.Stage(one, "break-down")) : null,
    };

    internal static TogetherView Refused(KeptPieces pieces, ImmutableArray<string> chosen, ImmutableArray<Note> notes) => Choosing(pieces, chosen) with { Notes = notes };

    internal static TogetherView Of(KeptPieces pieces, ChosenPieces of, PlanAtTheSaw at, bool isAnew, ImmutableArray<Plan> alone, (string Name, string Found, string Page)? waits)
    {
        (Plan plan, PieceSource source, ImmutableArray<string> chosen) = (at.Plan, of.Source, of.Names);
        ImmutableArray<Note> notes = [.. plan.Findings.OrderByDescending(f => f.Severity).Concat(at.Told).Select(f => source.Together is { } together ? TogetherNotes.Of(f, together, of.Files) : Note.Of(f, ""))];
        string page = Href(chosen), anew = Href(chosen, true);
        FormHead Form() => new(Cut, ChangeForm.NewId(), 1, page);
        if (plan.IsStopped) return Refused(pieces, chosen, [.. notes.Where(n => n.IsRed)]);
        return Of(pieces, chosen, plan) with
        {
            Notes = notes,
            Saving = alone.IsEmpty || alone.Any(p => p.IsStopped) ? [] : TogetherSaving.Of(alone, plan),
            Price = alone.IsEmpty || alone.Any(p => p.IsStopped) ? "" : TogetherSaving.Price(alone, plan),
            AloneWaits = waits,
            Papers = new(Href(BenchSheets, chosen, isAnew), Href(AllFiles, chosen, isAnew), waits is null ? [.. of.Files.Select(f => (f.Source!.Piece.Name, Links.BenchSheets(f.Name)))] : []),
            Marked = new(MarkedRuns.Of(source, source.SetOut(), at, Form, _ => ""), at.Sawn.Id, Links.Stage(chosen[0], "facts"), at.IsInHand ? anew : null, chosen),
        };
    }

    /// <summary>The last plan there was of them, while one is waited for.</summary>
    internal static TogetherView Waiting(KeptPieces pieces, ImmutableArray<string> chosen, Plan? last, WaitingView waits) =>
        (last is { IsStopped: false } ? Of(pieces, chosen, last) : Choosing(pieces, chosen) with { Title = TitleOf(pieces, chosen) }) with { Waits = waits };

    /// <summary>What is waited for where pieces are laid out together.</summary>
    internal static WaitingView WaitsFor(PlanDesk desk, string name, ImmutableArray<string> chosen, bool isAnew)
    {
        string page = Href(chosen), anew = Href(chosen, true), here = isAnew ? anew : page;
        return WaitingView.Of(desk, name, new($"{Enough}{page[Links.Together.Length..]}", ChangeForm.NewId(), 1, here), here, anew);
    }

    /// <summary>The first of the pieces that is being laid out by itself.</summary>
    internal static (string Name, string Found, string Page)? Alone(PlanDesk desk, ImmutableArray<string> chosen, bool isAnew)
    {
        ImmutableDictionary<string, string> all = desk.LayingOut;
        string name = chosen.FirstOrDefault(all.ContainsKey, chosen[0]);
        return (name, all.GetValueOrDefault(name, "") is { Length: > 0 } found ? found : "just begun", Href(chosen, isAnew));
    }

    private static TogetherView Of(KeptPieces pieces, ImmutableArray<string> chosen, Plan plan) => new(TitleOf(pieces, chosen), ChoiceOf(pieces, chosen), [], [],
        BuyingView.GroupsOf(plan), plan.Cost > Money.Zero ? $"{plan.Cost} {plan.Source.Shop.Currency}" : "", BreakdownView.MaterialsOf(plan), BreakdownView.CautionsOf(plan), RunWords.Of(plan));

    private static string TitleOf(KeptPieces pieces, ImmutableArray<string> chosen) => string.Join(" + ", chosen.Select(c => pieces.Read(c)?.Source?.Piece.Name ?? c));

    private static ImmutableArray<ChoosablePiece> ChoiceOf(KeptPieces pieces, ImmutableArray<string> chosen)
    {
        (string Document, string Name)[] all = [.. pieces.ReadAll().Where(f => f.Source is not null).Select(f => (f.Name, f.Source!.Piece.Name))];
        // Copies are told apart by what they are kept as.
        return [.. all.Select(p => new ChoosablePiece(p.Document, all.Count(o => o.Name == p.Name) > 1 ? $"{p.Name} ({p.Document})" : p.Name, chosen.Contains(p.Document)))];
    }
}
