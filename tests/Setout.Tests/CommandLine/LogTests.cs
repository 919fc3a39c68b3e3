// Over 200 lines: each command that writes to a log, on the same bench.
using System.Text.RegularExpressions;
using Setout.Commands;
using Setout.Files;
using Setout.Shop.Texts;

namespace Setout.Tests.CommandLine;

public sealed class LogTests : IDisposable
{
    private readonly TestFolder _folder = new TestFolder().WithSamples();

    private string Bench => _folder.Of("luthiers-bench.yaml");

    private string LogPath => _folder.Of("luthiers-bench.log.yaml");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("19 15/32 in", "19", "15/32")]
    [InlineData("19 15/32 in", "19-15/32in")]
    [InlineData("19 15/32 in", "19.46875in")]
    public async Task Record_OfWords_JoinsThemAndEchoesTheReading(string echoed, params string[] words)
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync(["record", Bench, "L.width", .. words, "--with", "tape"]));
        Assert.Contains($": {echoed}", terminal.Out, StringComparison.Ordinal);
        Assert.Contains("under", terminal.Out, StringComparison.Ordinal);
        ReadingEntry reading = Assert.IsType<ReadingEntry>(Assert.Single(Read().Standing));
        Assert.Equal("tape", reading.With);
        Assert.Contains("figures to cut moved", terminal.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Opening_ReadAndCutBy_BeforeItIsMarked_IsToldAndTakenAllTheSame()
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("record", Bench, "L.width", "19 1/2"));
        Assert.Contains("warn reading.before-built: ", terminal.Out, StringComparison.Ordinal);
        Assert.Contains("Mark them if they are cut: setout mark FILE cut L.rail L.panel", terminal.Out, StringComparison.Ordinal);
        // Read once more it is no news, and is said all the same.
        var again = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await again.RunAsync("record", Bench, "L.width", "19 17/32"));
        Assert.Contains("not marked cut: bay L rail and bay L slide panel", again.Out, StringComparison.OrdinalIgnoreCase);
        var mark = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await mark.RunAsync("mark", Bench, "cut", "L1"));
        Assert.Contains("warn mark.before-built: ", mark.Error, StringComparison.Ordinal);
        var late = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await late.RunAsync("mark", Bench, "cut", "L.rail", "L.panel"));
        Assert.Contains("no longer: bay L, clear width between slide panels is read", late.Out, StringComparison.Ordinal);
        Assert.Equal("", late.Error);
        Assert.Equal(4, Read().Standing.Count());
    }

    [Fact]
    public async Task Record_OfSeveralSpots_TakesTheNarrowestOfAnOpening()
    {
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("record", Bench, "L.width", "19", "1/2,", "19", "15/32"));
        Assert.Contains(": 19 15/32 in (2 spots", terminal.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Record_AsADryRun_SaysWhatItWouldMoveAndWritesNothing()
    {
        string[] before = _folder.Files();
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("record", Bench, "L.width", "19", "15/32", "--dry-run"));
        Assert.Contains("nothing was written", terminal.Out, StringComparison.Ordinal);
        Assert.Equal(before, _folder.Files());
    }

    [Theory]
    [InlineData("L.width", "nineteen")]
    [InlineData("L.width", "0")]
    [InlineData("L.widht", "19")]
    public async Task Record_ThatCannotBe_AnswersTwoAndWritesNothing(string key, string value)
    {
        string[] before = _folder.Files();
        Assert.Equal(ExitCode.Usage, await new TestTerminal().RunAsync("record", Bench, key, value));
        Assert.Equal(before, _folder.Files());
    }

    [Fact]
    public async Task Check_WithALogThatAnotherWriterHasJustMade_TakesItForNone()
    {
        await File.WriteAllTextAsync(LogPath, "");
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("parts", Bench));
    }

    [Fact]
    public async Task Record_ByManyAtOnce_LosesNothingItAcknowledged()
    {
        const int writers = 8;
        // Each in a task of its own, all let go together.
        var start = new TaskCompletionSource();
        Task<(string Spot, int Code, string Error)>[] runs =
        [
            .. Enumerable.Range(1, writers).Select(i => Task.Run(async () =>
            {
                await start.Task;
                var terminal = new TestTerminal();
                return ($"s{i}", await terminal.RunAsync("record", Bench, "carcase.thickness", $"{84 + i}/128in", "--spot", $"s{i}"), terminal.Error);
            })),
        ];
        start.SetResult();
        var ended = await Task.WhenAll(runs);
        Assert.All(ended, e => Assert.True(e.Code == ExitCode.Fine, $"{e.Code}: {e.Error}"));
        Log log = Read();
        Assert.NotEmpty(log.Entries);
        Assert.Equal(log.Entries.Length, log.Entries.Select(e => e.Id).Distinct().Count());
        Assert.Equal(ended.Where(e => e.Code == ExitCode.Fine).Select(e => e.Spot).Order(StringComparer.Ordinal), log.Entries.Cast<ReadingEntry>().Select(e => e.Spot).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Mark_ThenVoid_TakesTheEntryBackByALaterOne()
    {
        var marked = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await marked.RunAsync("mark", Bench, "cut", "L1.side#1", "L1.end"));
        string id = Regex.Match(marked.Out, "entry (?<id>e[0-9a-f]{8})").Groups["id"].Value;
        Assert.Single(Read().Standing);
        string before = File.ReadAllText(LogPath);
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("void", Bench, id));
        Assert.Empty(Read().Standing.OfType<MarkEntry>());
        Assert.StartsWith(before, File.ReadAllText(LogPath), StringComparison.Ordinal);
        // By what it says, and by the id that a command needs.
        var again = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await again.RunAsync("void", Bench, id));
        Assert.Contains($"'cut: drawer L1 side #1, drawer L1 front and back of the box' ({id}) is void already.", again.Error, StringComparison.Ordinal);
        var near = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await near.RunAsync("void", Bench, id[..^1] + "x"));
        Assert.Contains($"Did you mean 'cut: drawer L1 side #1, drawer L1 front and back of the box' ({id})?", near.Error, StringComparison.Ordinal);
        var none = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await none.RunAsync("void", Bench, "the-last-one"));
        Assert.Contains($"The last that stand there: 'cut: drawer L1 side #1, drawer L1 front and back of the box' ({id}), 'taken back: cut: drawer L1 side #1, drawer L1 front and back of the box' (", none.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cut", "L1.side#3")]
    [InlineData("cut", "L1.sied")]
    [InlineData("painted", "L1.side")]
    public async Task Mark_ThatCannotBe_AnswersTwoAndWritesNothing(string what, string key)
    {
        Assert.Equal(ExitCode.Usage, await new TestTerminal().RunAsync("mark", Bench, what, key));
        Assert.False(File.Exists(LogPath));
    }

    [Fact]
    public async Task Record_OfWhatMovesACutPart_SaysSo()
    {
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("mark", Bench, "cut", "L1.end"));
        var terminal = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await terminal.RunAsync("record", Bench, "L.width", "19", "15/32"));
        Assert.Contains("part.cut-differs: drawer L1 front and back of the box is cut to a length of", terminal.Out, StringComparison.Ordinal);
        // What is cut does not move; the other drawers do.
        Assert.DoesNotMatch(@"L1e.*->", terminal.Out);
        Assert.Matches(@"L2e, L3e, L4e\s+ends of boxes.*->", terminal.Out);
        Assert.Contains("through L.width > L2.opening > L2.box.width > L2.end.length", terminal.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Mark_CutToAnotherFigure_KeepsThatFigure()
    {
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("mark", Bench, "cut", "L1.end", "--to", "L1.end.length=17 5/8"));
        MarkEntry mark = Assert.IsType<MarkEntry>(Assert.Single(Read().Standing));
        Assert.Equal(ExactLengthOf("17 5/8 in"), mark.Figures[new("L1.end.length")]);
        // Cut a second time it must be said so.
        var twice = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await twice.RunAsync("mark", Bench, "cut", "L1.end"));
        Assert.Contains("--again", twice.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Fine, await new TestTerminal().RunAsync("mark", Bench, "cut", "L1.end", "--again"));
        Assert.Equal(ExactLengthOf("17 19/32 in"), ((MarkEntry)Read().Entries[1]).Figures[new("L1.end.length")]);
    }

    [Theory]
    [InlineData("cut", "L1.end", "--to", "L1.end.length")]
    [InlineData("cut", "L1.end", "--to", "L2.end.length=17")]
    [InlineData("cut", "L1.end", "--to", "L1.end.length=0")]
    [InlineData("cut", "L1.end", "--to", "L1.end.length=wide")]
    [InlineData("assembled", "L1", "--to", "L1.end.length=17")]
    [InlineData("assembled", "L1", "--sheet", "1")]
    [InlineData("cut", "L1", "--sheet", "1")]
    [InlineData("cut", "F.post", "--sheet", "1")]
    [InlineData("cut", "L1.end", "--sheet", "a b")]
    [InlineData("cut", "L1.end", "--sheet", "A")]
    public async Task Mark_WithWhatCannotBe_AnswersTwoAndWritesNothing(string what, string key, string option, string value)
    {
        Assert.Equal(ExitCode.Usage, await new TestTerminal().RunAsync("mark", Bench, what, key, option, value));
        Assert.False(File.Exists(LogPath));
    }

    [Fact]
    public async Task RecordAndMark_OfASheet_GoByThatSheet()
    {
        var read = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await read.RunAsync("record", Bench, "boxes.thickness", "0.472,", "0.470", "--sheet", "1", "--with", "calliper"));
        Assert.Contains("read boxes, thickness of sheet 1:", read.Out, StringComparison.Ordinal);
        Assert.Contains("through boxes.sheet-1.thickness > boxes.thickness > L1.end.length", read.Out, StringComparison.Ordinal);
        Assert.Contains("right the first time, on the average:", read.Out, StringComparison.Ordinal);
        // The letter of a drawing is no sheet that was read.
        var letter = new TestTerminal();
        Assert.Equal(ExitCode.Usage, await letter.RunAsync("mark", Bench, "cut", "L1.end", "--sheet", "A"));
        Assert.Contains("No sheet 'A' of boxes has been read", letter.Error, StringComparison.Ordinal);
        Assert.Contains("Read are: 1.", letter.Error, StringComparison.Ordinal);
        var cut = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await cut.RunAsync("mark", Bench, "cut", "L1.side", "L1.end", "--sheet", "1"));
        Assert.Contains("from boxes.sheet-1", cut.Out, StringComparison.Ordinal);
        Assert.Contains("warn mark.waits: ", cut.Error, StringComparison.Ordinal);
        Assert.Contains("was waiting for a reading of L.width", cut.Error, StringComparison.Ordinal);
        var why = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await why.RunAsync("why", Bench, "L1.box.as-built"));
        Assert.Contains("[boxes.sheet-1.thickness]", why.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fit_OfASample_SaysTheSameTwiceAndInJson()
    {
        var first = new TestTerminal();
        var second = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await first.RunAsync("fit", Bench));
        Assert.Equal(ExitCode.Fine, await second.RunAsync("fit", Bench));
        Assert.Equal(first.Out, second.Out);
        Assert.Contains("Measure first", first.Out, StringComparison.Ordinal);
        var json = new TestTerminal();
        Assert.Equal(ExitCode.Fine, await json.RunAsync("fit", Bench, "--json"));
        using var parsed = System.Text.Json.JsonDocument.Parse(json.Out);
        Assert.Equal(37, parsed.RootElement.GetProperty("gaps").GetArrayLength());
    }

    private static Core.Measures.ExactLength ExactLengthOf(string text) => Core.Measures.Text.LengthText.Parse(text, Core.Measures.Text.LengthUnit.Inch).Value;

    private Log Read()
    {
        TextRead<Log> read = LogText.Read(File.ReadAllText(LogPath));
        Assert.True(read.IsSound, string.Join("; ", read.Findings.Select(f => f.Words)));
        Assert.NotNull(PieceFiles.Of(Bench, null).Read().Source);
        return read.Value!;
    }
}
