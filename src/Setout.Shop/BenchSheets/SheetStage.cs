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

    extension(SheetStage stage)
    {
        /// <summary>Its word.</summary>
        public string Word => s_words.First(w => w.Stage == stage).Word;

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
