using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Drawing.Scenes;
using Setout.Shop.BenchSheets;
using Setout.Workbench.Noting;
using Setout.Workbench.Pieces;
using Setout.Workbench.Viewing;

namespace Setout.Workbench.Shell;

/// <summary>A stage of the work, in the row along the top.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Href">Its page.</param>
/// <param name="IsCurrent">Whether it is the page shown.</param>
public sealed record Stage(string Name, string Href, bool IsCurrent)
{
    /// <summary>What can be done there now, or waits, in two words; empty where nothing is to say.</summary>
    public string Stand { get; init; } = "";

    /// <summary>How much is upset there.</summary>
    public int Upset { get; init; }
}

/// <summary>The head of every page of a piece.</summary>
/// <param name="Name">The piece's own name.</param>
/// <param name="Href">Its first page.</param>
/// <param name="Stages">In the order of the work.</param>
/// <param name="Unit">Unit and grid, such as <c>inch · 1/32</c>.</param>
/// <param name="BenchSheets">Where the bench sheets are fetched; null when the plan is stopped.</param>
/// <param name="Paper">The paper it is printed on, <c>letter</c> or <c>a4</c>, as for the bench sheets.</param>
/// <param name="Stand">What the page stands on: rule set, inputs, time of the files.</param>
public sealed record PieceHead(string Name, string Href, ImmutableArray<Stage> Stages, Phrase Unit, string? BenchSheets, string Paper, string Stand)
{
    /// <summary>What has to be known of figures that are not shown in the unit of the piece; empty where they are.</summary>
    public string Caution { get; init; } = "";

    /// <summary>The page of what was read and marked.</summary>
    public string Facts { get; init; } = "";

    /// <summary>Where the bench sheets of the stage of this page alone are fetched; null where it has none.</summary>
    public string? StageSheets { get; init; }

    /// <summary>How the stage of this page stands, to begin the page with; null where the page is none that is marked.</summary>
    public StageStrip? Strip { get; init; }

    private static readonly (string Name, string Word)[] s_stages =
    [
        ("Set out", ""), ("Buy", SheetStage.Buy.Word), ("Break down", SheetStage.BreakDown.Word), ("Machine", SheetStage.Machine.Word), ("Assemble", SheetStage.Assemble.Word), ("Fit", SheetStage.Fit.Word),
        ("Finish", SheetStage.Finish.Word),
    ];

    internal static PieceHead Of(OpenPiece piece, string current)
    {
        bool isOwn = piece.Set.Piece.Shown == piece.Set.Piece.Unit;
        var grid = LengthFormat.For(piece.Set.Piece.Unit);
        string unit = $"{(isOwn ? "" : "shown in ")}{(piece.Set.Piece.Shown == LengthUnit.Inch ? "inch" : "mm")}";
        bool isStopped = piece.Plan?.IsStopped ?? piece.Set.IsStopped;
        return new(piece.Set.Piece.Name, Links.Stage(piece.Name, ""),
            [.. s_stages.Select(s => StageStrip.Marked(new Stage(s.Name, Links.Stage(piece.Name, s.Word), s.Word == current), piece, s.Word))],
            Phrase.Of($"{unit} · grid ").Add((isOwn ? grid.Bare : grid).Format(piece.Set.Grid.Step)),
            isStopped ? null : Links.BenchSheets(piece.Name), piece.Set.Piece.Unit == LengthUnit.Inch ? "letter" : "a4",
            $"Rule set {Core.SettingOut.Whole.PieceSetOut.RuleSet} · inputs {piece.Source.Hash} · {piece.File.Stand()}")
        {
            Caution = ViewingView.Caution(piece),
            Facts = Links.Stage(piece.Name, "facts"),
            Strip = StageStrip.Of(piece, current),
            StageSheets = !isStopped && SheetStages.Of(current.Length == 0 ? SheetStage.SetOut.Word : current) is { } stage && stage.IsPrinted(piece.Set) ? Links.BenchSheets(piece.Name, stage) : null,
        };
    }
}
