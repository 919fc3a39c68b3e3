using System.Collections.Immutable;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Workbench.Changing;
using Setout.Workbench.Noting;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Breakdown;

/// <summary>The drawings of one material.</summary>
/// <param name="Name">The material.</param>
/// <param name="Verdict">How many, and whether fewer are possible.</param>
/// <param name="Desk">Drawings for a desk.</param>
/// <param name="Phone">The same for a phone.</param>
public sealed record BrokenMaterial(string Name, string Verdict, ImmutableArray<string> Desk, ImmutableArray<string> Phone);

/// <summary>The third stage: sheets and boards as marking-out drawings.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="Notes">What stops the plan.</param>
/// <param name="Materials">Sheets, then boards.</param>
/// <param name="Cautions">What to mind; the last defers to local codes.</param>
/// <param name="Runs">The work at the saws.</param>
public sealed record BreakdownView(PieceHead Head, ImmutableArray<Note> Notes, ImmutableArray<BrokenMaterial> Materials, ImmutableArray<string> Cautions, WordedRuns Runs)
{
    private static readonly BreakdownPaper s_wide = new(220, 150), s_narrow = new(88, 220);

    /// <summary>The word of an address that asks for a plan of what is left, whatever was begun.</summary>
    internal const string Anew = "anew";

    /// <summary>What moved by the last thing that happened; null where nothing has.</summary>
    public MovedView? Moved { get; init; }

    /// <summary>The name of the piece in addresses.</summary>
    public string Piece { get; init; } = "";

    /// <summary>The piece set out, for the sizes that runs name; null where none are shown.</summary>
    public Setout.Core.SettingOut.SetPiece? Set { get; init; }

    /// <summary>How far the runs are; null while a plan is waited for.</summary>
    public MarkedRuns? Marked { get; init; }

    /// <summary>The step at the saw that is shown; null where nothing is sawn.</summary>
    public SawStep? Step { get; init; }

    /// <summary>What is waited for; null where nothing is. What is shown then is out of date.</summary>
    public WaitingView? WaitsFor { get; init; }

    /// <summary>What is on the page, from the top, each with where it stands.</summary>
    public ImmutableArray<(string Words, string Href)> Contents =>
    [
        .. Step is null ? [] : new[] { ("Step by step", "#saw") },
        .. Materials.Select(m => (m.Name, "#" + IdOf(m.Name))),
        .. Runs.Runs.IsEmpty ? [] : new[] { (Runs.Runs.Length == 1 ? "1 run" : $"{Runs.Runs.Length} runs", "#runs") },
        .. AsideOf(Runs).Where(a => !a.Wood.IsEmpty).Select(a => (a.Title, "#" + IdOf(a.Title))),
    ];

    /// <summary>Wood that is neither part nor waste, by what comes of it.</summary>
    internal static (string Title, ImmutableArray<PutAside> Wood)[] AsideOf(WordedRuns runs) => [("Put aside whole", runs.Waiting), ("To the rack", runs.Kept), ("In hand, not used by this plan", runs.Unused)];

    /// <summary>The id of what is called so on this page.</summary>
    internal static string IdOf(string words) => "of-" + string.Concat(words.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-'));

    internal static BreakdownView Of(OpenPiece piece, PlanAtTheSaw at, bool isAnew, int? run, int? cut)
    {
        string page = Links.Stage(piece.Name, "break-down") + (isAnew ? "?plan=" + Anew : "");
        string Href(int r, int c) => $"{page}{(isAnew ? "&" : "?")}run={r}&cut={c}#saw";
        BreakdownView view = Of(piece, at.Plan);
        int? next = RunMarking.Next(piece.Source.Log, at.Sawn)?.Number;
        FormHead Form() => new(Links.Stage(piece.Name, "cut"), ChangeForm.NewId(), piece.File.Document.Revision, page + "#runs");
        return view with
        {
            Notes = [.. at.Told.Select(f => Note.Of(f, piece.File.FileName)), .. view.Notes],
            Marked = new(MarkedRuns.Of(piece.Source, piece.Set, at, Form, r => Href(r, 0)), at.Sawn.Id, Links.Stage(piece.Name, "facts"), at.IsInHand ? Links.Stage(piece.Name, "break-down") + "?plan=" + Anew : null, []) { Buy = Links.Stage(piece.Name, "buy") },
            Step = SawStep.Of(at.Plan, view.Runs.Runs, run ?? next ?? 1, cut ?? 0, Href),
        };
    }

    /// <summary>The last plan there was, while one is waited for.</summary>
    internal static BreakdownView Waiting(OpenPiece piece, Plan? last, WaitingView waiting) =>
        (last is not null ? Of(piece, last) : new(PieceHead.Of(piece, "break-down"), [], [], [], new("", [], [], []))) with { WaitsFor = waiting };

    private static BreakdownView Of(OpenPiece piece, Plan plan) => new(
        PieceHead.Of(piece, "break-down"), StoppedNotes.Of(piece, plan),
        MaterialsOf(plan), CautionsOf(plan), RunWords.Of(plan))
    {
        Piece = piece.Name,
        Set = plan.Set,
        Moved = MovedView.Of(piece, Links.Stage(piece.Name, "break-down")),
    };

    /// <summary>The drawings of a plan.</summary>
    internal static ImmutableArray<BrokenMaterial> MaterialsOf(Plan plan) =>
    [
        .. plan.Sheets.Select(s => new BrokenMaterial(s.Material.Name, Verdicts.Of(s), Sheets(plan, s, s_wide), Sheets(plan, s, s_narrow))),
        .. plan.Boards.Select(b => new BrokenMaterial(b.Material.Name, Verdicts.Of(b), Boards(plan, b, s_wide), Boards(plan, b, s_narrow))),
    ];

    /// <summary>What to mind at the saws.</summary>
    internal static ImmutableArray<string> CautionsOf(Plan plan) => [.. CautionKeys(plan).Select(k => Core.Craft.Cautions.Of(k).Words), Core.Craft.Cautions.Deference];

    private static ImmutableArray<string> Sheets(Plan plan, SheetPlan sheets, BreakdownPaper paper) =>
        [.. MarkingOut.Of(plan, sheets, paper).Select(s => SvgWriter.Write(s.Scene, SvgOptions.Inline))];

    private static ImmutableArray<string> Boards(Plan plan, BoardPlan boards, BreakdownPaper paper) =>
        [.. BoardBars.Of(plan, boards, paper).Select(s => SvgWriter.Write(s, SvgOptions.Inline))];

    private static IEnumerable<string> CautionKeys(Plan plan)
    {
        yield return "saw";
        yield return "crosscut";
        if (plan.Sheets.Length > 0) yield return "sheet";
        if (plan.Boards.Any(b => b.IsRipped)) yield return "rip";
        yield return "narrow";
        yield return "lift";
        yield return "dust";
        yield return "ears";
    }
}
