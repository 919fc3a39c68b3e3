using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Shop.Plans;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Pieces;

/// <summary>Opens the piece that an address names and hands it to its page; a name that is not known and a file that cannot be read get pages of their own.</summary>
internal sealed class PieceDoor(KeptPieces folder, PlanDesk desk)
{
    private const int Tries = 5;

    /// <summary>Opens a piece with its sizes; the layouts are begun and not waited for.</summary>
    public IResult Open(string name, Func<OpenPiece, IResult> show)
    {
        if (Read(name) is not { } file) return Unknown(name);
        if (file.Source is not { } source) return Unreadable(file);
        _ = desk.PlanAsync(name, source);
        return show(new(name, file, source, desk.SetOut(name, source), desk.PlanIfReady(name, source)));
    }

    /// <summary>Opens a piece and waits for its layouts.</summary>
    public Task<IResult> OpenWithPlanAsync(string name, Func<OpenPiece, Plan, IResult> show, CancellationToken cancel) => WaitAsync(name, async (file, source) =>
    {
        Plan plan = await desk.PlanAsync(name, source).WaitAsync(cancel);
        return show(new(name, file, source, desk.SetOut(name, source), plan), plan);
    }, cancel);

    /// <summary>Opens a piece and waits for what will fit; null for a piece that is stopped. The layouts are begun and not waited for.</summary>
    public Task<IResult> OpenWithFitAsync(string name, Func<OpenPiece, FitReport?, IResult> show, CancellationToken cancel) => WaitAsync(name, async (file, source) =>
    {
        _ = desk.PlanAsync(name, source);
        SetPiece set = desk.SetOut(name, source);
        FitReport? report = set.IsStopped ? null : await desk.FitAsync(name, source).WaitAsync(cancel);
        return show(new(name, file, source, set, desk.PlanIfReady(name, source)), report);
    }, cancel);

    /// <summary>Opens a piece and waits for both.</summary>
    public Task<IResult> OpenWithAllAsync(string name, Func<OpenPiece, Plan, FitReport?, IResult> show, CancellationToken cancel) => WaitAsync(name, async (file, source) =>
    {
        SetPiece set = desk.SetOut(name, source);
        Task<FitReport>? fit = set.IsStopped ? null : desk.FitAsync(name, source);
        Plan plan = await desk.PlanAsync(name, source).WaitAsync(cancel);
        return show(new(name, file, source, set, plan), plan, fit is null ? null : await fit.WaitAsync(cancel));
    }, cancel);

    private async Task<IResult> WaitAsync(string name, Func<PieceFile, PieceSource, Task<IResult>> open, CancellationToken cancel)
    {
        for (int i = 1; ; i++)
        {
            if (Read(name) is not { } file) return Unknown(name);
            if (file.Source is not { } source) return Unreadable(file);
            try
            {
                return await open(file, source);
            }
            catch (OperationCanceledException) when (!cancel.IsCancellationRequested && i < Tries)
            {
                // The texts were changed while the page waited, and what was made of them given up: wait for that of the new ones.
            }
        }
    }

    private PieceFile? Read(string name) => folder.Read(name);

    private IResult Unknown(string name) => Pages.Show<UnknownPage>(UnknownView.Piece(name, folder.Names()), StatusCodes.Status404NotFound);

    private static IResult Unreadable(PieceFile file) => Pages.Show<UnreadablePage>(UnreadableView.Of(file));
}
