using System.Collections.Immutable;
using Setout.Files;
using Setout.Shop.Outputs;

namespace Setout.Tests.Files;

/// <summary>What stands beside a plan while it is written, and what becomes of it when the writer is killed.</summary>
public sealed class OutputFolderTests : IDisposable
{
    private const string Id = "0123456789abcdef0123456789abcdef";

    private readonly TestFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private ImmutableArray<string> Write() => OutputFolder.Write(_folder.Of("plan"), [new("a/b.txt", [1, 2])]);

    private string[] Beside() => [.. Directory.EnumerateFileSystemEntries(_folder.Path).Select(p => Path.GetFileName(p)).Where(n => n != "plan").Order(StringComparer.Ordinal)];

    private void Killed(string stem, string[] endings, bool isLocked = true)
    {
        foreach (string ending in endings)
        {
            Directory.CreateDirectory(_folder.Of($"{stem}.{ending}", "deep"));
            File.WriteAllText(_folder.Of($"{stem}.{ending}", "deep", "half.txt"), "half");
        }
        if (isLocked) File.WriteAllText(_folder.Of(stem + ".lock"), "");
    }

    [Theory]
    [InlineData("new")]
    [InlineData("old")]
    [InlineData("new old")]
    [InlineData("")]
    public void Write_AfterAWriterWasKilled_RemovesWhatItLeft(string left)
    {
        Killed($".plan.{Id}", left.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        Assert.Empty(Write());
        Assert.Empty(Beside());
        Assert.Equal(["plan/a/b.txt", "plan/" + OutputFolder.Manifest], _folder.Files());
    }

    [Fact]
    public void Write_WhileAnotherWrites_LeavesItsFoldersAlone()
    {
        Killed($".plan.{Id}", ["new", "old"]);
        string[] there = Beside();
        using (new FileStream(_folder.Of($".plan.{Id}.lock"), FileMode.Open, FileAccess.ReadWrite, FileShare.None))
        {
            Assert.Empty(Write());
            Assert.Equal(there, Beside());
        }
        Assert.Empty(Write());
        Assert.Empty(Beside());
    }

    [Fact]
    public void Write_BesideAWriterOfOurOwn_NeitherTouchesTheOther()
    {
        using (var other = PassingFolders.Take(_folder.Path, "plan"))
        {
            Directory.CreateDirectory(other.New);
            Assert.Empty(Write());
            Assert.True(Directory.Exists(other.New));
        }
        Assert.Empty(Beside());
    }

    [Fact]
    public void Write_FoldersThatNobodyCanAnswerFor_StayAndAreTold()
    {
        Killed($".plan.{Id}", ["new"], isLocked: false);
        Assert.Equal([$".plan.{Id}.new"], Write());
        Assert.Equal([$".plan.{Id}.new"], Beside());
    }

    [Fact]
    public void Write_NamesThatAreNotOurs_StayAndAreNotTold()
    {
        foreach (string stem in (string[])[$".planner.{Id}", $".plan.b.{Id}", $"plan.{Id}", ".plan.0123", $".plan.{Id}0", $".plan.{Id.ToUpperInvariant()}"]) Killed(stem, ["new", "old"]);
        Killed($".plan.{Id}", ["newer"], isLocked: false);
        string[] there = Beside();
        Assert.Empty(Write());
        Assert.Equal(there, Beside());
    }

    [Fact]
    public void Write_AgainAndAgain_LeavesNothingBeside()
    {
        for (int i = 0; i < 3; i++) Assert.Empty(Write());
        Assert.Empty(Beside());
    }
}
