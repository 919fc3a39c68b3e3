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
        routes.MapGet("/piece/{name}/bench-sheets.pdf", (string name, string? paper, PieceDoor door, CancellationToken cancel) =>
            door.OpenWithAllAsync(name, (piece, plan, fit) => File(piece, plan, fit, paper, cancel), cancel));

    private static IResult File(OpenPiece piece, Plan plan, FitReport? fit, string? paper, CancellationToken cancel)
    {
        if (plan.IsStopped) return Results.Text("The plan is stopped, so there are no bench sheets: see the notes at Set out.\n", statusCode: StatusCodes.Status409Conflict);
        Paper sheet = paper switch { "a4" => Paper.A4, "letter" => Paper.Letter, _ => piece.Set.Piece.Unit == LengthUnit.Inch ? Paper.Letter : Paper.A4 };
        using var pdf = new MemoryStream();
        PdfWriter.Save(BenchSheetWriter.Compose(plan, piece.File.Stand(), sheet, fit, cancel), pdf);
        return Results.File(pdf.ToArray(), "application/pdf", $"{piece.Name}-bench-sheets.pdf");
    }
}
