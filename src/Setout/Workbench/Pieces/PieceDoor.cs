using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Shop.Plans;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Pieces;

/// <summary>Opens the piece that an address names and hands it to its page; a name that is not known and a file that cannot be read get pages of their own.</summary>
internal sealed class PieceDoor(KeptPieces folder, PlanDesk desk, BenchDesk bench)
{
    private const int Tries = 5;

    // A page that comes within this time is waited for, one that does not is better told of: common practice, no source.
    private static readonly TimeSpan s_moment = TimeSpan.FromSeconds(0.8);

    /// <summary>Opens a piece with its sizes; the layouts are begun and not waited for.</summary>
    public IResult Open(string name, Func<OpenPiece, IResult> show)
    {
        if (Read(name) is not { } file) return Unknown(name);
        if (file.Source is not { } source) return Unreadable(file);
        _ = desk.PlanAsync(name, source);
        return show(Opened(file, source, desk.PlanIfReady(name, source)));
    }

    /// <summary>Opens a piece and waits for its layouts.</summary>
    public Task<IResult> OpenWithPlanAsync(string name, Func<OpenPiece, Plan, IResult> show, CancellationToken cancel) => WaitAsync(name, async (file, source) =>
    {
        Plan plan = await desk.PlanAsync(name, source).WaitAsync(cancel);
        return show(Opened(file, source, plan), plan);
    }, cancel);

    /// <summary>Opens a piece and waits for what will fit; null for a piece that is stopped. The layouts are begun and not waited for.</summary>
    public Task<IResult> OpenWithFitAsync(string name, Func<OpenPiece, FitReport?, IResult> show, CancellationToken cancel) => WaitAsync(name, async (file, source) =>
    {
        _ = desk.PlanAsync(name, source);
        SetPiece set = desk.SetOut(name, source);
        FitReport? report = set.IsStopped ? null : await desk.FitAsync(name, source).WaitAsync(cancel);
        return show(Opened(file, source, desk.PlanIfReady(name, source)), report);
    }, cancel);

    /// <summary>Opens a piece and waits for both.</summary>
    public Task<IResult> OpenWithAllAsync(string name, Func<OpenPiece, Plan, FitReport?, IResult> show, CancellationToken cancel) => WaitAsync(name, async (file, source) =>
    {
        SetPiece set = desk.SetOut(name, source);
        Task<FitReport>? fit = set.IsStopped ? null : desk.FitAsync(name, source);
        Plan plan = await desk.PlanAsync(name, source).WaitAsync(cancel);
        return show(Opened(file, source, plan), plan, fit is null ? null : await fit.WaitAsync(cancel));
    }, cancel);

    /// <summary>Opens a piece and waits a moment for its layouts; null where they take longer, to be shown when they are ready.</summary>
    public Task<IResult> OpenSoonAsync(string name, HttpRequest request, Func<OpenPiece, Plan?, IResult> show, CancellationToken cancel) => WaitAsync(name, async (file, source) =>
    {
        Plan? plan = await SoonAsync(desk.PlanAsync(name, source), request, cancel);
        return show(Opened(file, source, plan), plan);
    }, cancel);

    /// <summary>Waits a moment; null where it takes longer. Only a browser is told to come again: whoever does not ask for a page by that name gets the whole.</summary>
    public static async Task<T?> SoonAsync<T>(Task<T> task, HttpRequest request, CancellationToken cancel) where T : class
    {
        if (!request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal)) return await task.WaitAsync(cancel);
        await Task.WhenAny(task, Task.Delay(s_moment, cancel));
        cancel.ThrowIfCancellationRequested();
        return task.IsCompleted ? await task : null;
    }

    /// <summary>Opens a piece for whoever waits by himself; texts that change meanwhile are read anew.</summary>
    public Task<IResult> OpenAsync(string name, Func<PieceFile, PieceSource, Task<IResult>> open, CancellationToken cancel) => WaitAsync(name, open, cancel);

    private Task<IResult> WaitAsync(string name, Func<PieceFile, PieceSource, Task<IResult>> open, CancellationToken cancel) => AnewAsync(async () =>
    {
        if (Read(name) is not { } file) return Unknown(name);
        return file.Source is { } source ? await open(file, source) : Unreadable(file);
    }, cancel);

    /// <summary>Answers what waits for something that is made of texts. Where they are changed meanwhile, what was made of them is given up, and it is asked anew.</summary>
    /// <param name="answer">Reads the texts, and answers.</param>
    /// <param name="cancel">Nobody waits any more.</param>
    public static async Task<IResult> AnewAsync(Func<Task<IResult>> answer, CancellationToken cancel)
    {
        for (int i = 1; ; i++)
        {
            try
            {
                return await answer();
            }
            catch (OperationCanceledException) when (!cancel.IsCancellationRequested && i < Tries)
            {
                // The next time it is of the new texts.
            }
        }
    }

    /// <summary>A piece for its page, with its layouts if they are ready.</summary>
    public OpenPiece Opened(PieceFile file, PieceSource source) => Opened(file, source, desk.PlanIfReady(file.Name, source));

    /// <summary>A piece for its page.</summary>
    public OpenPiece Opened(PieceFile file, PieceSource source, Plan? plan)
    {
        SetPiece set = desk.SetOut(file.Name, source);
        return new(file.Name, file, source, set, plan) { Bench = bench.Of(file, source, set) };
    }

    private PieceFile? Read(string name) => folder.Read(name);

    private IResult Unknown(string name) => Pages.Show<UnknownPage>(UnknownView.Piece(name, folder.Names()), StatusCodes.Status404NotFound);

    private static IResult Unreadable(PieceFile file) => Pages.Show<UnreadablePage>(UnreadableView.Of(file));
}
