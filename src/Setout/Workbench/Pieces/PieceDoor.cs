using Setout.Shop.Plans;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Pieces;

/// <summary>Opens the piece that an address names and hands it to its page; a name that is not known and a file that cannot be read get pages of their own.</summary>
internal sealed class PieceDoor(PieceFolder folder, PlanDesk desk)
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
    public async Task<IResult> OpenWithPlanAsync(string name, Func<OpenPiece, Plan, IResult> show, CancellationToken cancel)
    {
        for (int i = 1; ; i++)
        {
            if (Read(name) is not { } file) return Unknown(name);
            if (file.Source is not { } source) return Unreadable(file);
            try
            {
                Plan plan = await desk.PlanAsync(name, source).WaitAsync(cancel);
                return show(new(name, file, source, desk.SetOut(name, source), plan), plan);
            }
            catch (OperationCanceledException) when (!cancel.IsCancellationRequested && i < Tries)
            {
                // The texts were changed while the page waited, and their layouts given up: wait for those of the new ones.
            }
        }
    }

    private PieceFile? Read(string name) => folder.Read(name);

    private IResult Unknown(string name) => Pages.Show<UnknownPage>(UnknownView.Piece(name, folder.Names()), StatusCodes.Status404NotFound);

    private static IResult Unreadable(PieceFile file) => Pages.Show<UnreadablePage>(UnreadableView.Of(file));
}
