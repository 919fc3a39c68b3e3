// Over 200 lines: the table of mistakes and the property of what is written, which share their lines of a log.
using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Texts;

public class LogTextTests
{
    private const string At = "at: 2026-05-04T09:40:00Z";

    /// <summary>The code, and a text with the mark ¦ where the only finding stands.</summary>
    public static TheoryData<string, string> Mistakes => new()
    {
        { "text.other-kind", "¦setout: 1\nname: Box\n" },
        { "text.version", "setout-log: ¦2\n" },
        { "text.wanted-list", "setout-log: 1\nentries: ¦{a: b}\n" },
        { "text.missing", $"setout-log: 1\nentries:\n  - ¦{{id: a, {At}}}\n" },
        { "text.missing", $"setout-log: 1\nentries:\n  - ¦{{{At}, void: b}}\n".Replace("void: b", "cut: [C]", StringComparison.Ordinal) },
        { "text.missing", "setout-log: 1\nentries:\n  - ¦{id: a, cut: [C]}\n" },
        { "text.missing", $"setout-log: 1\nentries:\n  - {{id: a, {At}, ¦cut: []}}\n" },
        { "text.two-kinds", $"setout-log: 1\nentries:\n  - {{id: a, {At}, cut: [C], ¦fitted: [D]}}\n" },
        { "log.bad-time", "setout-log: 1\nentries:\n  - {id: a, at: ¦yesterday, cut: [C]}\n" },
        { "log.bad-time", "setout-log: 1\nentries:\n  - {id: a, at: ¦2026-05-04, cut: [C]}\n" },
        { "log.bad-time", "setout-log: 1\nentries:\n  - {id: a, at: \"2026-05-04T09:40:00\", cut: [C]}\n".Replace("at: \"", "at: ¦\"", StringComparison.Ordinal) },
        { "log.bad-time", "setout-log: 1\nentries:\n  - {id: a, at: ¦2026-13-04T09:40:00Z, cut: [C]}\n" },
        { "text.no-unit", Reading("[¦23 1/4]") },
        { "text.no-unit", Reading("[3 mm, ¦24]") },
        { "length.two-readings", Reading("[3 mm, 2¦x4]") },
        { "text.no-unit", Reading("[¦3 mm - 2]") },
        { "length.unknown-word", Reading("[23 ¦inn]") },
        { "text.absurd-size", Reading("[¦-3 mm]") },
        { "text.absurd-size", Reading("[¦40 m]") },
        { "text.wanted-length", Reading("[¦[3 mm]]") },
        { "text.missing", $"setout-log: 1\nentries:\n  - ¦{{id: a, {At}, read: L.width}}\n" },
        { "text.unknown-key", $"setout-log: 1\nentries:\n  - {{id: a, {At}, read: L.width, ¦vlaues: [3 mm]}}\n" },
        { "text.unknown-key", $"setout-log: 1\nentries:\n  - {{id: a, {At}, ¦raed: L.width, values: [3 mm]}}\n" },
        { "log.void-unknown", $"setout-log: 1\nentries:\n  - {{id: a, {At}, void: ¦b}}\n" },
        { "log.void-unknown", $"setout-log: 1\nentries:\n  - {{id: a, {At}, void: ¦a}}\n" },
        { "log.id-taken", $"setout-log: 1\nentries:\n  - {{id: a, {At}, cut: [C]}}\n  - {{id: ¦a, {At}, cut: [D]}}\n" },
        { "text.missing", $"setout-log: 1\nentries:\n  - ¦{{id: a, {At}, allow: x.y}}\n" },
        { "text.no-unit", $"setout-log: 1\nentries:\n  - {{id: a, {At}, cut: [C], figures: [{{of: C.length, is: ¦30}}]}}\n" },
        { "text.missing", $"setout-log: 1\nentries:\n  - {{id: a, {At}, cut: [C], figures: [¦{{of: C.length}}]}}\n" },
        { "text.twice", $"setout-log: 1\nentries:\n  - {{id: a, {At}, cut: [C], figures: [{{of: C.length, is: 3 mm}}, {{of: ¦C.length, is: 4 mm}}]}}\n" },
        { "text.no-unit", Marked("cut: [C], chosen: [{of: L3.slide.length, is: ¦18}]") },
        { "text.missing", Marked("fitted: [C], chosen: [¦{of: L3.slide.length}]") },
        { "text.missing", Marked("fitted: [C], chosen: [¦{is: 18 in}]") },
        { "text.absurd-size", Marked("bought: [C], chosen: [{of: L3.slide.length, is: ¦0 in}]") },
        { "text.twice", Marked("bought: [C], chosen: [{of: L3.slide.length, is: 18 in}, {of: ¦L3.slide.length, is: 20 in}]") },
        { "text.wanted-list", Marked("assembled: [C], chosen: ¦{L3.slide.length: 18 in}") },
        { "text.wanted-map", Marked("cut: [C], chosen: [¦L3.slide.length]") },
        { "text.unknown-key", Marked("cut: [C], chosen: [{of: L3.slide.length, is: 18 in, ¦because: long}]") },
        { "text.wanted-word", Marked("cut: [C], from: ¦[boxes.sheet-1]") },
        { "text.wanted-word", Marked("cut: [C], from: ¦\"\"") },
        { "text.too-long", Marked("cut: [C], from: ¦" + new string('a', 101)) },
        { "text.unknown-key", Marked("assembled: [C], ¦from: boxes.sheet-1") },
        { "text.unknown-key", Marked("fitted: [C], ¦from: boxes.sheet-1") },
        { "text.unknown-key", Marked("bought: [C], ¦from: boxes.sheet-1") },
        { "text.unknown-key", Marked("read: L.width, values: [3 mm], ¦from: boxes.sheet-1") },
        { "text.unknown-key", Marked("read: L.width, values: [3 mm], ¦chosen: []") },
        { "text.unknown-key", Marked("void: b, ¦chosen: []").Replace("entries:\n", $"entries:\n  - {{id: b, {At}, cut: [C]}}\n", StringComparison.Ordinal) },
        { "log.id-taken", $"setout-log: 1\nentries:\n  - {{id: a, {At}, cut: [C], from: boxes.sheet-1}}\n  - {{id: ¦a, {At}, cut: [C], from: boxes.sheet-2}}\n" },
        { "log.id-taken", $"setout-log: 1\nentries:\n  - {{id: a, {At}, cut: [C]}}\n  - {{id: ¦a, {At}, cut: [C], chosen: [{{of: L3.slide.length, is: 18 in}}]}}\n" },
    };

    private static string Marked(string what) => $"setout-log: 1\nentries:\n  - {{id: a, {At}, {what}}}\n";

    private static string Reading(string values) => $"setout-log: 1\nentries:\n  - {{id: a, {At}, read: L.width, values: {values}}}\n";

    [Theory, MemberData(nameof(Mistakes))]
    public void Read_OneMistake_OneFindingAtItsPlace(string code, string marked) => Repository.OnlyFinding(code, marked, t => LogText.Read(t));

    [Theory]
    [InlineData("23/32 in")]
    [InlineData("18.2 mm")]
    [InlineData("\"23 1/4\\\"\"")]
    [InlineData("1' 11 1/4\"")]
    [InlineData("23 1/4″")]
    [InlineData("0.4 m - 3 mm")]
    public void Read_EveryWayToNameAUnit_IsRead(string value)
    {
        TextRead<Log> read = LogText.Read($"setout-log: 1\nentries:\n  - id: a\n    {At}\n    read: L.width\n    values:\n      - {value}\n");
        Assert.Empty(read.Findings);
        Assert.Single(((ReadingEntry)Assert.Single(read.Value!.Entries)).Values);
    }

    private static readonly Gen<string> s_strange = Gen.OneOf(
        Gen.String[Gen.Char["abcXYZ019 .:-_#'\"\\[]{},&*!|>%@`~?\n\t"], 1, 30],
        Gen.OneOf("yes", "~", "null", "- a", "a: b", "a #b", "'", "\"", "\\", "\\n", "1e5", "0x1", "---", "...", "é ß 木 😀", "½ \u2028 \u00A0 \uFEFF \uFFFD \u202E", " lead", "trail ", "\nx\n", "<<", "=", "%YAML"));

    private static readonly Gen<string> s_oneLine = s_strange.Select(s => s.Replace('\n', ' ').Replace('\t', ' '));

    private static readonly Gen<ExactLength> s_length = Gen.Select(Gen.Int[1, 1100], Gen.OneOf(1, 2, 3, 7, 9, 11, 64, 256, 1000), Gen.Bool,
        (n, d, isInch) => isInch ? ExactLength.FromInches(Rational.Of(n, d)) : ExactLength.FromMillimetres(Rational.Of(n, d)));

    private static readonly Gen<QuantityKey> s_key = s_oneLine.Select(s => new QuantityKey(s));

    private static readonly Gen<LogEntry> s_entry = Gen.OneOf<LogEntry>(
        Gen.Select(s_oneLine, s_key, s_length.Array[1, 4], s_oneLine, s_oneLine, (id, key, values, with, spot) => (LogEntry)new ReadingEntry(id, "2026-05-04T09:40:00Z", key, [.. values], with, spot)),
        Gen.Select(s_oneLine, Gen.Enum<Progress>(), s_oneLine.Array[1, 4], Gen.Dictionary(s_key, s_length)[0, 3], Gen.Dictionary(s_key, s_length)[0, 3], Gen.OneOf(s_oneLine, Gen.Const("")),
            (id, progress, keys, figures, chosen, from) => (LogEntry)new MarkEntry(id, "2026-05-04T11:40:00.5+02:00", progress, [.. keys], figures.ToImmutableDictionary())
            {
                Chosen = chosen.ToImmutableDictionary(),
                From = progress == Progress.Cut ? from : "",
            }),
        Gen.Select(s_oneLine, s_oneLine, (id, voided) => (LogEntry)new VoidEntry(id, "2026-05-04T09:40:00Z", voided)),
        Gen.Select(s_oneLine, s_oneLine, Gen.OneOf(s_oneLine, Gen.Const("")), s_strange, (id, code, key, because) => (LogEntry)new AllowEntry(id, "2026-05-04T09:40:00Z", code, key, because)));

    [Fact]
    public void Write_AnyEntry_ReadsBackAsItself() => s_entry.Holds(entry =>
    {
        TextRead<Log> read = LogText.Read(LogText.Head + LogText.Write(entry));
        Same(entry, Assert.Single(read.Value!.Entries));
        return true;
    }, iter: 2000);

    private static void Same(LogEntry a, LogEntry b)
    {
        Assert.Equal((a.GetType(), a.Id, a.At), (b.GetType(), b.Id, b.At));
        switch (a, b)
        {
            case (ReadingEntry x, ReadingEntry y):
                Assert.Equal((x.Key, x.With, x.Spot), (y.Key, y.With, y.Spot));
                Assert.Equal(x.Values, y.Values);
                break;
            case (MarkEntry x, MarkEntry y):
                Assert.Equal(x.Progress, y.Progress);
                Assert.Equal(x.Keys, y.Keys);
                Assert.Equal(x.Figures.OrderBy(f => f.Key), y.Figures.OrderBy(f => f.Key));
                Assert.Equal(x.Chosen.OrderBy(f => f.Key), y.Chosen.OrderBy(f => f.Key));
                Assert.Equal(x.From, y.From);
                break;
            default:
                Assert.Equal(a, b);
                break;
        }
    }

    private static readonly MarkEntry s_cut = new("n1", "2026-05-04T09:40:00Z", Progress.Cut, ["L3.side", "L3.end"],
        ImmutableDictionary<QuantityKey, ExactLength>.Empty.Add(new("L3.side.length"), ExactLength.FromInches(18)));

    // The text as it stood before there were sheets and choices in it: a log that was written then is not written otherwise now.
    private const string Cut = "  - id: n1\n    at: \"2026-05-04T09:40:00Z\"\n    cut: [L3.side, L3.end]\n";
    private const string Figures = "    figures:\n      - {of: L3.side.length, is: 18 in}\n";

    [Fact]
    public void Write_NeitherSheetNorChoice_IsWrittenAsEver() => Assert.Equal(Cut + Figures, LogText.Write(s_cut));

    [Fact]
    public void Write_SheetAndChoices_StandInTheirPlaces()
    {
        MarkEntry entry = s_cut with { From = "boxes.sheet-1", Chosen = s_cut.Figures.Clear().Add(new("L3.slide.length"), ExactLength.FromInches(18)).Add(new("L3.pull"), ExactLength.FromMillimetres(96)) };
        Assert.Equal(Cut + "    from: boxes.sheet-1\n" + Figures + "    chosen:\n      - {of: L3.pull, is: 96 mm}\n      - {of: L3.slide.length, is: 18 in}\n", LogText.Write(entry));
    }

    [Fact]
    public void Read_NeitherSheetNorChoice_IsEmpty()
    {
        var mark = (MarkEntry)Assert.Single(LogText.Read(LogText.Head + Cut + Figures).Value!.Entries);
        Assert.Equal(("", 0), (mark.From, mark.Chosen.Count));
    }

    [Theory]
    [InlineData("cut", Progress.Cut)]
    [InlineData("assembled", Progress.Assembled)]
    [InlineData("fitted", Progress.Fitted)]
    [InlineData("finished", Progress.Finished)]
    [InlineData("bought", Progress.Bought)]
    public void Read_Choices_StandOnEveryKindOfMark(string word, Progress progress)
    {
        TextRead<Log> read = LogText.Read(Marked($"{word}: [L3], chosen: [{{of: L3.slide.length, is: 18 in}}]"));
        Assert.Empty(read.Findings);
        var mark = (MarkEntry)Assert.Single(read.Value!.Entries);
        Assert.Equal(progress, mark.Progress);
        Assert.Equal([KeyValuePair.Create(new QuantityKey("L3.slide.length"), ExactLength.FromInches(18))], mark.Chosen);
        Assert.Empty(mark.Figures);
    }

    [Fact]
    public void Read_SheetElsewhereThanOnACut_NamesWhatIsKnownThere()
    {
        Finding finding = Repository.OnlyFinding("text.unknown-key", Marked("fitted: [C], ¦from: boxes.sheet-1"), t => LogText.Read(t));
        Assert.Equal(("'from' is not known here.", "Known here: id, at, fitted, figures, chosen."), (finding.Words, finding.Remedy));
    }

    [Fact]
    public void Exactly_AnyLength_ReadsBackExactly() => s_length.Holds(length =>
        LengthText.Parse(NamedLength.Exactly(length), LengthUnit.Millimetre).Value == length && LengthText.Parse(NamedLength.Exactly(length), LengthUnit.Inch).Value == length);

    [Fact]
    public void Write_WhatWouldNotReadBack_IsRefusedWithTheReason()
    {
        LogEntry[] bad =
        [
            new VoidEntry("", "2026-05-04T09:40:00Z", "a"),
            new VoidEntry("b", "today", "a"),
            new VoidEntry("b\nc", "2026-05-04T09:40:00Z", "a"),
            new AllowEntry("b", "2026-05-04T09:40:00Z", "x", "y", "\u001b[31m"),
            new AllowEntry("b", "2026-05-04T09:40:00Z", "x", "y", new('a', 501)),
            new ReadingEntry("b", "2026-05-04T09:40:00Z", new("L.width"), [], "", ""),
            new ReadingEntry("b", "2026-05-04T09:40:00Z", new("L.width"), [ExactLength.FromMillimetres(-1)], "", ""),
            new ReadingEntry("b", "2026-05-04T09:40:00Z", new("L.width"), [ExactLength.FromMillimetres(Rational.Of(1_000_000_000_000_000_000, 999_999_999_999_999_999))], "", ""),
            s_cut with { Progress = Progress.Fitted, From = "boxes.sheet-1" },
            s_cut with { From = "boxes\nsheet-1" },
            s_cut with { From = new('a', 101) },
            s_cut with { Chosen = s_cut.Figures.SetItem(new("L3.slide.length"), ExactLength.Zero) },
            s_cut with { Chosen = s_cut.Figures.SetItem(new(""), ExactLength.FromInches(18)) },
        ];
        foreach (LogEntry entry in bad)
        {
            Assert.NotNull(LogText.Fault(entry));
            Assert.Throws<ArgumentException>(() => LogText.Write(entry));
        }
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("setout-log: 1\n")]
    [InlineData("setout-log: 1\nentries:\n")]
    [InlineData("setout-log: 1\nentries:\n  - id: x\n    at: 2026-05-04T09:00:00Z\n    cut: [C] # at last")]
    [InlineData("setout-log: 1\nentries:\n- id: x\n  at: 2026-05-04T09:00:00Z\n  cut: [C]\n")]
    [InlineData("setout-log: 1\r\nentries:\r\n      - {id: x, at: 2026-05-04T09:00:00Z, cut: [C]}\r\n")]
    public void Append_AnyLog_KeepsWhatStandsThere(string? log)
    {
        var entry = new ReadingEntry("n1", "2026-05-04T09:40:00Z", new("L.width"), [ExactLength.FromInches(Rational.Of(61, 3))], "tape", "top");
        string text = LogText.Append(LogText.Append(log, entry), new VoidEntry("n2", "2026-05-04T09:41:00Z", "n1"));
        Assert.StartsWith(log ?? "", text, StringComparison.Ordinal);
        TextRead<Log> read = LogText.Read(text);
        Assert.Empty(read.Findings);
        Same(entry, read.Value!.Entries[^2]);
        Assert.Equal("n2", read.Value.Entries[^1].Id);
    }

    [Theory]
    [InlineData("setout-log: 1\nentries: []\n")]
    [InlineData("setout-log: 1\nentries: [{id: x, at: 2026-05-04T09:00:00Z, cut: [C]}]\n")]
    [InlineData("entries: []\nsetout-log: 1\n")]
    [InlineData("setout: 1\n")]
    [InlineData("setout-log: 1\nentries: {\n")]
    public void Append_LogThatCannotGrow_IsRefused(string log) =>
        Assert.Throws<ArgumentException>(() => LogText.Append(log, new VoidEntry("n2", "2026-05-04T09:41:00Z", "n1")));
}
