using Setout.Core.Fit;
using Setout.Core.Measures.Text;
using Setout.Drawing.Documents;
using Setout.Shop.BenchSheets;
using Setout.Shop.Plans;
using Setout.Workbench.Pieces;

namespace Setout.Workbench.BenchSheets;

/// <summary>The bench sheets as a file, made when they are asked for.</summary>
internal static class BenchSheetEndpoints
{
    public static void MapBenchSheets(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/piece/{name}/bench-sheets.pdf", (string name, string? paper, string? only, PieceDoor door, CancellationToken cancel) =>
            door.OpenWithAllAsync(name, (piece, plan, fit) =>
            {
                if (plan.IsStopped) return Stopped("see the notes at Set out");
                SheetStage? stage = only is null ? null : SheetStages.Of(only);
                if (only is not null && stage is null) return Results.Text($"{SheetStages.Unknown(only)} There are {string.Join(", ", SheetStages.Words)}.\n", statusCode: StatusCodes.Status404NotFound);
                if (stage?.WhyNone(plan) is { } why) return Results.Text($"{why}\n", statusCode: StatusCodes.Status404NotFound);
                return File(plan, piece.File.Stand(), PaperOf(paper, piece.Set.Piece.Unit == LengthUnit.Inch ? Paper.Letter : Paper.A4), fit, piece.Name, stage, cancel);
            }, cancel));

    /// <summary>The paper that an address asks for.</summary>
    internal static Paper PaperOf(string? asked, Paper usual) => asked switch { "a4" => Paper.A4, "letter" => Paper.Letter, _ => usual };

    /// <summary>Where there can be none.</summary>
    /// <param name="where">Where it is told why.</param>
    internal static IResult Stopped(string where) => Results.Text($"The plan is stopped, so there are no bench sheets: {where}.\n", statusCode: StatusCodes.Status409Conflict);

    /// <summary>The sheets of a plan.</summary>
    /// <param name="plan">The plan; not stopped.</param>
    /// <param name="stand">What it was made from, in words.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="fit">What will fit, where it is known.</param>
    /// <param name="name">What the name of the file begins with.</param>
    /// <param name="only">The stage whose sheets are wanted; null for all.</param>
    /// <param name="cancel">Gives it up.</param>
    internal static IResult File(Plan plan, string stand, Paper paper, FitReport? fit, string name, SheetStage? only, CancellationToken cancel)
    {
        using var pdf = new MemoryStream();
        PdfWriter.Save(BenchSheetWriter.Compose(plan, stand, paper, fit, only, cancel), pdf);
        return Results.File(pdf.ToArray(), "application/pdf", $"{name}-{only?.FileName ?? "bench-sheets.pdf"}");
    }
}
