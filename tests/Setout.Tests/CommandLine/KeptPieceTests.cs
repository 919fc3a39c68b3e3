using Setout.Files;
using Setout.Shop.Documents;
using Setout.Store;

namespace Setout.Tests.CommandLine;

/// <summary>Commands on pieces that the workbench keeps: <c>@NAME</c> in the place of a file.</summary>
public sealed class KeptPieceTests : IDisposable
{
    private readonly TestFolder _folder = new();

    private string Data => _folder.Of("data");

    public void Dispose() => _folder.Dispose();

    private async Task<(int Code, string Out, string Error)> Run(params string[] words)
    {
        var terminal = new TestTerminal();
        int code = await terminal.RunAsync(words);
        return (code, terminal.Out, terminal.Error);
    }

    private async Task<(int Code, string Out, string Error)> Kept(params string[] words) => await Run([.. words, "--data", Data]);

    private Task Import() => Kept("import", Samples.Folder);

    [Fact]
    public async Task Commands_OnAFileAndOnAKeptPiece_SayTheSame()
    {
        await Import();
        string file = Samples.File("luthiers-bench");
        foreach (string[] words in (string[][])[["parts"], ["check"], ["why", "L3.side"], ["fit"], ["parts", "--json"], ["check", "--json"]])
        {
            (int code, string said, string wrong) = await Run([words[0], file, .. words[1..]]);
            (int keptCode, string keptSaid, string keptWrong) = await Kept([words[0], "@luthiers-bench", .. words[1..]]);
            Assert.Equal(code, keptCode);
            Assert.Equal(said.Replace(file, "@luthiers-bench", StringComparison.Ordinal), keptSaid);
            Assert.Equal(wrong.Replace(file, "@luthiers-bench", StringComparison.Ordinal), keptWrong);
        }
    }

    [Fact]
    public async Task Facts_RecordedMarkedAndVoided_StandInTheStoreAlsoWhileAWorkbenchHasItOpen()
    {
        await Import();
        using DataFolder open = DataFolder.Open(Data, TimeProvider.System).Folder!;
        (int code, string said, _) = await Kept("record", "@luthiers-bench", "carcase.thickness", "45/64in", "--with", "calliper");
        Assert.Equal(0, code);
        string id = System.Text.RegularExpressions.Regex.Match(said, "entry (e[0-9a-f]+)").Groups[1].Value;
        Assert.Equal(id, Assert.Single(open.Database.FactsOf("luthiers-bench").Read().Entries).Id);
        Assert.Equal(0, (await Kept("void", "@luthiers-bench", id)).Code);
        Assert.Equal(0, (await Kept("mark", "@jar-cabinet", "cut", "C.side", "--dry-run")).Code);
        Assert.Equal(0, (await Kept("mark", "@jar-cabinet", "cut", "C.side")).Code);
        Assert.Empty(open.Database.FactsOf("luthiers-bench").Read().Standing);
        Assert.Single(open.Database.FactsOf("jar-cabinet").Read().Entries);
    }

    [Fact]
    public async Task Stand_OfSeveralKeptPieces_IsThatOfTheOneChangedLast_HoweverManyRevisionsItHas()
    {
        await Import();
        using (DataFolder open = DataFolder.Open(Data, TimeProvider.System).Folder!)
        {
            void Edit(string piece, int times, string day)
            {
                for (int i = 0; i < times; i++)
                {
                    Document now = open.Database.Find(piece)!;
                    Assert.IsType<ChangeTaken>(open.Database.Make(Change.Of($"{piece}{i}", $"{day}T10:00:{i:00}Z", new EditText(now.Id, now.Revision, "edited", now.Text + "# more\n"))));
                }
            }
            Edit("jar-cabinet", 8, "2031-03-01");
            Edit("luthiers-bench", 9, "2031-03-02");
        }
        var several = SeveralPieces.Of(["@jar-cabinet", "@luthiers-bench"], null, Data);
        Assert.StartsWith("from revision 10 of 2 March 2031, ", several.Stand(), StringComparison.Ordinal);
        // What is read later than any text was changed counts as well.
        using (DataFolder open = DataFolder.Open(Data, TimeProvider.System).Folder!)
            open.Database.FactsOf(open.Database.Find("jar-cabinet")!.Id).Append(new Setout.Shop.Texts.ReadingEntry("r1", "2031-03-03T10:00:00Z", new("birch.thickness"), [Setout.Core.Measures.ExactLength.FromInches(Setout.Core.Measures.Rational.Of(45, 64))], "calliper", ""));
        Assert.StartsWith("from revision 9, read and marked until 3 March 2031, ", SeveralPieces.Of(["@jar-cabinet", "@luthiers-bench"], null, Data).Stand(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_OfKeptPieces_IsWrittenAndARunOfItMarkedInBothLogs()
    {
        await Import();
        string plan = _folder.Of("plan");
        (int code, _, string wrong) = await Kept("plan", "@jar-cabinet", "@luthiers-bench", "--out", plan);
        Assert.True(code == 0, wrong);
        (code, _, wrong) = await Kept("mark", "@jar-cabinet", "cut", "--run", "1", "--plan", plan);
        Assert.True(code == 0, wrong);
        using DataFolder open = DataFolder.Open(Data, TimeProvider.System).Folder!;
        Assert.NotEmpty(open.Database.FactsOf("jar-cabinet").Read().Entries.Concat(open.Database.FactsOf("luthiers-bench").Read().Entries));
    }

    [Theory]
    [InlineData("@jar-cabnet", "Did you mean '@jar-cabinet'?")]
    [InlineData("@", "keeps no piece")]
    [InlineData("@shop", "keeps no piece")]
    [InlineData("@../x", "keeps no piece")]
    public async Task Piece_ThatIsNotKept_IsToldWithANearName(string piece, string wanted)
    {
        await Import();
        (int code, string said, string wrong) = await Kept("check", piece);
        Assert.Equal(2, code);
        Assert.Empty(said);
        Assert.Contains(wanted, wrong, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Options_ThatDoNotGoTogether_AreTold()
    {
        (int nothing, _, string wrong) = await Kept("check", "@jar-cabinet");
        Assert.Equal(2, nothing);
        Assert.Contains("Nothing is kept", wrong, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Data));
        await Import();
        Assert.Equal(2, (await Kept("check", "@jar-cabinet", "--shop", Path.Combine(Samples.Folder, "shop.yaml"))).Code);
        Assert.Equal(2, (await Kept("check", Samples.File("jar-cabinet"))).Code);
        Assert.Equal(2, (await Kept("plan", "@jar-cabinet", Samples.File("luthiers-bench"), "--out", _folder.Of("plan"))).Code);
    }
}
