using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Drawing.Documents;
using Setout.Shop.Plans;

namespace Setout.Shop.BenchSheets;

/// <summary>A stage of the work whose bench sheets can be printed alone: who stands at the saw wants those of the saw.</summary>
public enum SheetStage
{
    /// <summary>What it will be: views, parts, workings.</summary>
    SetOut,

    /// <summary>What is bought.</summary>
    Buy,

    /// <summary>Sheets and boards broken down: marking out, runs, the parts that come of it.</summary>
    BreakDown,

    /// <summary>Cuts and holes in parts.</summary>
    Machine,

    /// <summary>Put together.</summary>
    Assemble,

    /// <summary>What will fit, and what to measure first.</summary>
    Fit,

    /// <summary>Finished.</summary>
    Finish,
}

/// <summary>The words of those stages in addresses and names of files, and which of them a piece has sheets for.</summary>
public static class SheetStages
{
    private static readonly ImmutableArray<(SheetStage Stage, string Word)> s_words =
    [
        (SheetStage.SetOut, "set-out"), (SheetStage.Buy, "buy"), (SheetStage.BreakDown, "break-down"), (SheetStage.Machine, "machine"), (SheetStage.Assemble, "assemble"), (SheetStage.Fit, "fit"), (SheetStage.Finish, "finish"),
    ];

    /// <summary>Every word, in the order of the work.</summary>
    public static IEnumerable<string> Words => s_words.Select(w => w.Word);

    /// <summary>The stage of a word; null where there is none.</summary>
    public static SheetStage? Of(string word) => s_words.FirstOrDefault(w => w.Word == word) is { Word: not null } found ? found.Stage : null;

    /// <summary>Refuses a word that is none of them.</summary>
    public static string Unknown(string word) => $"There is no stage '{Texts.TextContext.Shown(word)}' to print the sheets of.";

    extension(SheetStage stage)
    {
        /// <summary>Its word.</summary>
        public string Word => s_words.First(w => w.Stage == stage).Word;

        /// <summary>The file of its sheets, in the folder of a plan or behind what a piece is called.</summary>
        public string FileName => $"{stage.Word}-sheets.pdf";

        /// <summary>Why a plan has no sheets of it; null where it has.</summary>
        /// <param name="plan">A plan that is not stopped.</param>
        public string? WhyNone(Plan plan) => plan.Source.Together is not null && stage > SheetStage.BreakDown ? "Of several pieces together, what follows the saw stands in the plan of each by itself."
            : stage.IsPrinted(plan.Set) ? null : $"Nothing is to be done at the stage '{stage.Word}', so it has no sheets.";

        /// <summary>Whether there is anything to print for it.</summary>
        /// <param name="set">A piece that is not stopped.</param>
        public bool IsPrinted(SetPiece set) => stage switch
        {
            SheetStage.Machine => !set.Machinings.IsEmpty,
            SheetStage.Assemble => !set.Steps.IsEmpty,
            SheetStage.Fit => !set.Gaps.IsEmpty,
            SheetStage.Finish => !FinishLines.Of(set).IsEmpty,
            _ => true,
        };
    }
}
