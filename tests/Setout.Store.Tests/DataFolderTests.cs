using System.Diagnostics;
using Setout.Shop.Facts;
using Setout.Store.Tests.Documents;

namespace Setout.Store.Tests;

/// <summary>The data folder: where it is, one program for it, disks that are full or cannot be written to.</summary>
public sealed class DataFolderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("setout-store-").FullName;

    private string Data => Path.Combine(_folder, "deep", "data");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("named", "told", "/xdg", DataSystem.Linux, "named")]
    [InlineData(null, "told", "/xdg", DataSystem.Linux, "told")]
    [InlineData("", "", "/xdg", DataSystem.Linux, "/xdg/setout")]
    [InlineData(null, null, "relative", DataSystem.Linux, "/users/ann/.local/share/setout")]
    [InlineData(null, null, "", DataSystem.Linux, "/users/ann/.local/share/setout")]
    [InlineData(null, null, null, DataSystem.Linux, "/users/ann/.local/share/setout")]
    [InlineData(null, null, "/xdg", DataSystem.MacOS, "/users/ann/Library/Application Support/setout")]
    [InlineData(null, null, "/xdg", DataSystem.Windows, "/local/setout")]
    [InlineData(null, "told", "/xdg", DataSystem.Windows, "told")]
    public void Find_NamedThenToldThenUsual_InThisOrder(string? named, string? told, string? xdg, DataSystem system, string expected) =>
        Assert.Equal(Path.GetFullPath(expected), DataPlace.Find(named, n => n == DataPlace.Variable ? told : n == "XDG_DATA_HOME" ? xdg : null, system, "/users/ann", "/local"));

    [Fact]
    public void Find_NoHome_SaysHowToNameAFolder()
    {
        FactStoreException refused = Assert.Throws<FactStoreException>(() => DataPlace.Find(null, _ => null, DataSystem.Linux, "", ""));
        Assert.Contains("--data", refused.Fault.Remedy, StringComparison.Ordinal);
        Assert.Throws<FactStoreException>(() => DataPlace.Find(null, _ => null, DataSystem.Windows, "/users/ann", ""));
    }

    [Fact]
    public void Open_NewFolder_IsForThisUserOnlyAndHoldsTheDatabase()
    {
        using (DataFolder folder = DataFolder.Open(Data, TimeProvider.System).Folder!)
        {
            folder.Database.New("chest");
            Assert.True(File.Exists(Path.Combine(Data, "setout.db")));
            Assert.Empty(folder.Backups.All());
            if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(Data));
        }
        using DataFolder again = DataFolder.Open(Data, TimeProvider.System).Folder!;
        Assert.Equal("chest", Assert.Single(again.Database.Documents()).Name);
        Assert.Equal(BackupReason.Daily, Assert.Single(again.Backups.All()).Reason);
    }

    [Fact]
    public void Open_WhereTheDailyBackupFails_OpensAndSaysSo()
    {
        DataFolder.Open(Data, TimeProvider.System).Folder!.Dispose();
        File.WriteAllText(Path.Combine(Data, "backups"), "in the way");
        using DataFolder folder = DataFolder.Open(Data, TimeProvider.System).Folder!;
        Assert.Equal("store.no-backup", Assert.Single(folder.Warnings).Code);
        folder.Database.New("chest");
    }

    [Fact]
    public async Task Open_BySecondProgram_IsToldWhereTheFirstOneIsAndTheLockDiesWithIt()
    {
        using Process first = OtherProgram.Start("hold", Data, "", 0);
        Assert.Equal("holds", await first.StandardOutput.ReadLineAsync());
        (DataFolder? folder, FolderUser? user) = DataFolder.Open(Data, TimeProvider.System);
        Assert.Null(folder);
        Assert.Equal(new FolderUser("http://localhost:5280", first.Id), user);
        using (Process second = OtherProgram.Start("hold", Data, "", 0)) Assert.Equal("Open it there: http://localhost:5280", await second.StandardOutput.ReadLineAsync());
        Assert.Equal("store.in-use", Assert.Throws<FactStoreException>(() => DataFolder.Restore(Data, Path.Combine(_folder, "x.db"), TimeProvider.System)).Fault.Code);
        first.Kill();
        await first.WaitForExitAsync();
        using DataFolder after = DataFolder.Open(Data, TimeProvider.System).Folder!;
        // What the dead one left to be read is not taken for ours.
        Assert.Equal(new FolderUser(null, null), DataFolder.Open(Data, TimeProvider.System).User);
        after.Announce("http://localhost:1");
        Assert.Equal(new FolderUser("http://localhost:1", Environment.ProcessId), DataFolder.Open(Data, TimeProvider.System).User);
    }

    [Fact]
    public async Task Open_AfterTheFirstLetGo_IsFree()
    {
        using Process first = OtherProgram.Start("hold", Data, "", 0);
        Assert.Equal("holds", await first.StandardOutput.ReadLineAsync());
        await first.StandardInput.WriteLineAsync();
        await first.StandardInput.FlushAsync();
        Assert.Equal("let go", await first.StandardOutput.ReadLineAsync());
        using (DataFolder folder = DataFolder.Open(Data, TimeProvider.System).Folder!) Assert.NotNull(folder);
        first.Kill();
        await first.WaitForExitAsync();
    }

    [Fact]
    public async Task Change_OnAFullDisk_LosesNothingAndGoesOnWhenThereIsRoom()
    {
        string[] said = await OnASmallDisk("fill");
        Assert.StartsWith("store.full | ", said[0], StringComparison.Ordinal);
        Assert.Contains("Make room", said[0], StringComparison.Ordinal);
        Assert.StartsWith("store.full | ", said[1], StringComparison.Ordinal);
        // No half backup is left.
        Assert.Equal(["", "as acknowledged", "as acknowledged", "whole"], said[2..]);
    }

    [Fact]
    public async Task Open_OnADiskThatCannotBeWritten_SaysSoAndReads()
    {
        string[] said = await OnASmallDisk("read-only");
        Assert.StartsWith("store.not-reached | ", said[0], StringComparison.Ordinal);
        Assert.Contains("--data", said[0], StringComparison.Ordinal);
        Assert.StartsWith("store.not-reached | ", said[1], StringComparison.Ordinal);
        Assert.Equal("read", said[2]);
        Assert.StartsWith("store.read-only | ", said[3], StringComparison.Ordinal);
    }

    // A disk of 1 MB in memory, which only that program sees and which goes with it.
    private async Task<string[]> OnASmallDisk(string task)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Small disks are made with Linux's own means.");
        string disk = Path.Combine(_folder, "disk");
        Directory.CreateDirectory(disk);
        string[] by = Environment.IsPrivilegedProcess ? ["unshare", "--mount"] : ["unshare", "--mount", "--map-root-user"];
        using Process program = OtherProgram.Start(task, disk, "", 0, [.. by, "sh", "-c", "mount -t tmpfs -o size=1m setout-test \"$0\" || exit 77; exec \"$1\"", disk]);
        string said = await program.StandardOutput.ReadToEndAsync(), wrong = await program.StandardError.ReadToEndAsync();
        await program.WaitForExitAsync();
        Assert.SkipWhen(program.ExitCode == 77 || wrong.StartsWith("unshare:", StringComparison.Ordinal), $"No small disk can be made here: {wrong}");
        Assert.True(program.ExitCode == 0, said + wrong);
        return said.TrimEnd('\n').Split('\n');
    }
}
