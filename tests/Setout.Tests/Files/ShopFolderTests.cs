using System.Diagnostics;
using Setout.Files;
using Setout.Shop.Plans;

namespace Setout.Tests.Files;

/// <summary>Whatever lies beside a piece, it is read or told, and the piece goes on.</summary>
public sealed class ShopFolderTests : IDisposable
{
    private const string Wood = "setout-log: 1\nentries:\n  - {id: a, at: 2026-11-26T10:00:00Z, cut: [], took: [{of: one, stock: rack, size: 400 mm x 300 mm}], left: [{of: one, name: x, size: 100 mm x 90 mm}]}\n";
    private const string Piece = "setout: 1\nname: Chest\nunit: mm\nmaterials:\n  one: {panel: mdf, label: 3/4}\nparts:\n  - {part: p, of: one, length: 390, width: 290}\n";

    private readonly TestFolder _folder = new();

    public ShopFolderTests()
    {
        _folder.Write("chest.yaml", Piece);
        _folder.Write("shop.yaml", "setout-shop: 1\nunit: mm\nstock:\n  - {panel: mdf, label: 3/4, size: 400 x 300, have: 2}\n");
    }

    public void Dispose() => _folder.Dispose();

    private PieceSource Read() => PieceFiles.Of(_folder.Of("chest.yaml"), null).Read().Source!;

    private static string Seen(PieceSource source) => $"{string.Join(' ', source.Others.Select(o => o.Name))}; {source.ShopInHand.Stock[0].Size.InHand}; {string.Join(' ', source.Unread.Select(f => f.Words.Split('\'')[1]))}";

    [Fact]
    public void Read_NeighboursWhoseLogsTellOfWood_StandBesideThePiece()
    {
        Assert.Equal("; 2; ", Seen(Read()));
        _folder.Write("tray.yaml", Piece.Replace("Chest", "Tray", StringComparison.Ordinal));
        _folder.Write("tray.log.yaml", Wood);
        // Its own log is no other's; nor is one without wood, and what that piece file holds does not matter.
        _folder.Write("chest.log.yaml", Wood.Replace("id: a", "id: b", StringComparison.Ordinal).Replace("name: x", "name: y", StringComparison.Ordinal));
        _folder.Write("box.log.yaml", "setout-log: 1\nentries:\n  - {id: a, at: 2026-11-26T10:00:00Z, read: one.thickness, values: [18 mm]}\n");
        _folder.Write("box.yaml", "not a piece");
        _folder.Write("bench.log.yaml", "");
        PieceSource source = Read();
        Assert.Equal("tray.yaml; 0; ", Seen(source));
        Assert.Equal(["y", "x"], source.ShopInHand.Stock.Where(s => s.IsBlank).Select(s => s.Size.Name));
        Assert.Equal("chest.yaml", source.FileName);
        // The same from a path that is written otherwise.
        Assert.Equal(Seen(source), Seen(PieceFiles.Of(Path.Combine(_folder.Path, ".", "chest.yaml"), null).Read().Source!));
        Assert.Equal(source.Hash, Read().Hash);
    }

    [Theory]
    // What is wrong with a log: nothing of it is known.
    [InlineData("log", "setout-log: 1\nentries:\n  - {id: a, took: [{of: one, stock: rack, size: 400 mm x 300 mm}]}\n", "; 2; tray.log.yaml")]
    [InlineData("log", "took: [", "; 2; tray.log.yaml")]
    [InlineData("log", "bytes", "; 2; tray.log.yaml")]
    [InlineData("log", "huge", "; 2; tray.log.yaml")]
    [InlineData("log", "pipe", "; 2; ")]
    [InlineData("log", "folder", "; 2; ")]
    [InlineData("log", "link to nothing", "; 2; tray.log.yaml")]
    [InlineData("log", "link to itself", "; 2; tray.log.yaml")]
    [InlineData("log", "link to a pipe", "; 2; ")]
    // With a piece file: names of blanks are known, the wood is not.
    [InlineData("piece", "setout: 1\nname: Tray\n", "tray.yaml; 2; tray.yaml")]
    [InlineData("piece", "bytes", "tray.yaml; 2; tray.yaml")]
    [InlineData("piece", "huge", "tray.yaml; 2; tray.yaml")]
    [InlineData("piece", "pipe", "tray.yaml; 2; tray.yaml")]
    [InlineData("piece", "folder", "tray.yaml; 2; tray.yaml")]
    [InlineData("piece", "link to a pipe", "tray.yaml; 2; tray.yaml")]
    [InlineData("piece", "nothing", "tray.yaml; 2; tray.yaml")]
    [InlineData("piece", "", "tray.yaml; 2; tray.yaml")]
    public void Read_NeighbourThatCannotBeUsed_IsToldAndThePieceGoesOn(string which, string how, string seen)
    {
        _folder.Write("tray.yaml", Piece);
        _folder.Write("tray.log.yaml", Wood);
        string path = _folder.Of(which == "log" ? "tray.log.yaml" : "tray.yaml");
        File.Delete(path);
        Assert.SkipWhen(OperatingSystem.IsWindows() && (how.Contains("pipe", StringComparison.Ordinal) || how.Contains("link", StringComparison.Ordinal)), "No pipes and links in folders there.");
        Put(path, how);
        PieceSource source = Read();
        Assert.Equal(seen, Seen(source));
        Assert.All(source.Unread, f => Assert.Equal("rack.piece-unread", f.Code));
        Assert.False(source.SetOut().IsStopped);
    }

    private void Put(string path, string how)
    {
        switch (how)
        {
            case "nothing": break;
            case "folder": Directory.CreateDirectory(path); break;
            case "bytes": File.WriteAllBytes(path, [0x74, 0xC0, 0xFF]); break;
            case "huge": using (var file = new FileStream(path, FileMode.CreateNew)) file.SetLength(20L * 1024 * 1024 * 1024); break;
            case "link to nothing": File.CreateSymbolicLink(path, _folder.Of("nothing")); break;
            case "link to itself": File.CreateSymbolicLink(path, path); break;
            case "pipe": Pipe(path); break;
            case "link to a pipe":
                Pipe(_folder.Of("pipe"));
                File.CreateSymbolicLink(path, _folder.Of("pipe"));
                break;
            default: File.WriteAllText(path, how); break;
        }
    }

    private static void Pipe(string path)
    {
        using var made = Process.Start("mkfifo", [path]);
        made.WaitForExit();
        Assert.Equal(0, made.ExitCode);
    }

    [Fact]
    public void Read_OnePieceWithAnotherEnding_IsNoNeighbourOfItself()
    {
        File.Move(_folder.Of("chest.yaml"), _folder.Of("chest.txt"));
        _folder.Write("chest.log.yaml", Wood);
        Assert.Equal("; 1; ", Seen(PieceFiles.Of(_folder.Of("chest.txt"), null).Read().Source!));
    }

    [Fact]
    public void Without_OneOfAFolderReadWhole_IsAsTheFolderReadForIt()
    {
        _folder.Write("tray.yaml", Piece);
        _folder.Write("tray.log.yaml", Wood);
        _folder.Write("chest.log.yaml", Wood);
        _folder.Write("box.log.yaml", "took: [");
        ShopFolder all = ShopFolder.Read(_folder.Path).Without("chest.yaml"), one = ShopFolder.Read(_folder.Path, "chest.yaml");
        Assert.Equal(one.Pieces.Select(p => p.Name), all.Pieces.Select(p => p.Name));
        Assert.Equal(one.Unread, all.Unread);
        Assert.Equal(["tray.yaml"], one.Pieces.Select(p => p.Name));
    }
}
