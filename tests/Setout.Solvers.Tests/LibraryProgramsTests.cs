using Setout.Cutting.Programs;

namespace Setout.Solvers.Tests;

/// <summary>The library behind the port, on programs worked out by hand.</summary>
public sealed class LibraryProgramsTests
{
    // Cutting 5 pieces of 4 and 3 of 3 from lengths of 10: patterns (2,0), (1,2), (0,3). By hand: 2 y of (2,0) and so on;
    // the best shares are 1.75 of (2,0) and 1.5 of (1,2), 3.25 in all; prices 1/2 and 1/4.
    [Fact]
    public void Solve_ThreePatterns_GivesSharesAndPricesByHand()
    {
        using ILinearProgram program = LibraryPrograms.Instance.Linear();
        int fours = program.AddRow(5, double.PositiveInfinity), threes = program.AddRow(3, double.PositiveInfinity);
        program.AddColumn(1, double.PositiveInfinity, [(fours, 2)]);
        program.AddColumn(1, double.PositiveInfinity, [(threes, 3)]);
        Assert.True(program.Solve(CancellationToken.None));
        Assert.Equal(3.5, program.Cost, 9);
        int both = program.AddColumn(1, double.PositiveInfinity, [(fours, 1), (threes, 2)]);
        Assert.True(program.Solve(CancellationToken.None));
        Assert.Equal(3.25, program.Cost, 9);
        Assert.Equal(1.5, program.Share(both), 9);
        Assert.Equal(0.5, program.Price(fours), 9);
        Assert.Equal(0.25, program.Price(threes), 9);
    }

    [Fact]
    public void Choose_ThreePatterns_TakesFourBoards()
    {
        IntegerAnswer answer = LibraryPrograms.Instance.Choose(
            new([new(5, 100), new(3, 100)], [new(1, 9, [(0, 2)]), new(1, 9, [(1, 3)]), new(1, 9, [(0, 1), (1, 2)])]), new(1, 1), CancellationToken.None);
        Assert.True(answer.Finished);
        Assert.Equal(4, answer.Counts!.Sum());
    }

    [Fact]
    public void Choose_NothingBelow_IsFinishedWithoutCounts()
    {
        IntegerAnswer answer = LibraryPrograms.Instance.Choose(
            new([new(5, 100)], [new(1, 9, [(0, 2)])], Below: 3), new(1, 1), CancellationToken.None);
        Assert.True(answer.Finished);
        Assert.Null(answer.Counts);
    }

    [Fact]
    public void Choose_Stopped_GivesNothing()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        IntegerAnswer answer = LibraryPrograms.Instance.Choose(new([new(5, 100)], [new(1, 9, [(0, 2)])]), new(1, 1), stop.Token);
        Assert.False(answer.Finished);
        Assert.Null(answer.Counts);
    }

    // The library used to take Ctrl-C over while it solved, and to leave the signal unanswered afterwards.
    [Fact]
    public void Choose_WhileTheHostAnswersCtrlC_LeavesItToTheHost()
    {
        if (!OperatingSystem.IsLinux()) return;
        // A shell starts what runs in its background deaf to Ctrl-C, and the runtime leaves it so.
        if (HasInterrupt("SigIgn:")) Assert.Skip("Ctrl-C is not heard here.");
        using var answered = System.Runtime.InteropServices.PosixSignalRegistration.Create(System.Runtime.InteropServices.PosixSignal.SIGINT, _ => { });
        Assert.True(HasInterrupt("SigCgt:"));
        LibraryPrograms.Instance.Choose(new([new(5, 100)], [new(1, 9, [(0, 2)])]), new(1, 1), CancellationToken.None);
        Assert.True(HasInterrupt("SigCgt:"));
    }

    // A mask of signals: those that have a handler, or that are ignored. An interrupt is number 2, so the second bit.
    private static bool HasInterrupt(string mask) =>
        (Convert.ToUInt64(File.ReadLines("/proc/self/status").Single(l => l.StartsWith(mask, StringComparison.Ordinal))[mask.Length..].Trim(), 16) & 2) != 0;
}
