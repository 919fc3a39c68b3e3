using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Noting;

/// <summary>What is made of the words of a reading.</summary>
public class NotedReadingTests
{
    private static readonly PieceSource s_bench = Sample.Source("luthiers-bench").For(Hand.Pages);
    private static readonly SetPiece s_set = s_bench.SetOut();

    private static Noted<ReadingEntry> Read(string key, string value, string? sheet = null, bool force = false, string with = "") =>
        NotedReading.Of(s_set, s_bench.Shop.Accuracy, new(key, value) { Sheet = sheet, IsForced = force, With = with }, "e1", "2026-05-04T09:40:00Z");

    [Theory]
    [InlineData(Hand.Commands, "add --force")]
    [InlineData(Hand.Pages, "tick “take it all the same”")]
    public void Refusal_SaysWhatToDo_ByTheHandOfThePiece(Hand hand, string words) => Assert.Contains(words,
        NotedReading.Of(s_bench.For(hand).SetOut(), s_bench.Shop.Accuracy, new("L.width", "12"), "e1", "2026-05-04T09:40:00Z").Fault!.Remedy, StringComparison.Ordinal);

    [Fact]
    public void Reading_WrongInSeveralFields_IsRefusedForEach() =>
        Assert.Equal(["sheet", "value", "with"], Read("boxes", "thick", sheet: "no. 1", with: "eye").Faults.Select(f => f.Field));

    // The keys by hand from docs/readings.md and docs/log.md; the lengths by hand.
    [Theory]
    [InlineData("L.width", "19 1/2", null, "L.width", "19 1/2")]
    [InlineData("L.width", "19-1/2\"", null, "L.width", "19 1/2")]
    [InlineData("L.width", "495.3mm", null, "L.width", "19 1/2")]
    [InlineData("boxes", "0.47", null, "boxes.thickness", "0.47")]
    [InlineData("boxes.thickness", "0.47", "1", "boxes.sheet-1.thickness", "0.47")]
    [InlineData("boxes", "0.47", "oak-2", "boxes.sheet-oak-2.thickness", "0.47")]
    [InlineData("boxes.sheet-3", "0.47", null, "boxes.sheet-3.thickness", "0.47")]
    [InlineData("L3.end.length", "17 19/32", null, "L3.end.length.as-cut", "17 19/32")]
    [InlineData("L3.box.width", "18 17/32", null, "L3.box.as-built", "18 17/32")]
    public void Words_ThatCanBeRead_AreTheEntry(string key, string value, string? sheet, string pinned, string length)
    {
        Noted<ReadingEntry> noted = Read(key, value, sheet);
        Assert.Null(noted.Fault);
        Assert.Equal(pinned, noted.Entry!.Key.Text);
        Assert.Equal([Described.Of(length)], noted.Entry.Values);
    }

    [Theory]
    [InlineData("L.width", "nineteen", null, "note.value", "'nineteen'")]
    [InlineData("L.width", "", null, "note.value", "no value")]
    [InlineData("L.width", "19 1/2, -1", null, "note.value", "-1")]
    [InlineData("L.widht", "19", null, "note.key", "L.widht")]
    [InlineData("studs", "1 1/2", "1", "note.sheet", "studs")]
    [InlineData("boxes", "0.47", "no. 1", "note.sheet", "no. 1")]
    // 35 is no 19 1/2, whatever was changed over: far off. 91 1/2 for 19 1/2 (digits) and 11.9 for 0.47 (millimetres): slips.
    [InlineData("L.width", "35", null, "note.far", "35 in")]
    [InlineData("L.width", "91 1/2", null, "note.slip", "19 1/2")]
    [InlineData("boxes", "11.9", null, "note.slip", "11.9 mm")]
    public void Words_ThatCannot_SayWhatWasUnderstood(string key, string value, string? sheet, string code, string said)
    {
        Noted<ReadingEntry> noted = Read(key, value, sheet);
        Assert.Null(noted.Entry);
        Assert.Equal(code, noted.Fault!.Code);
        Assert.Contains(said, noted.Fault.Words + noted.Fault.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain("--", noted.Fault.Words + noted.Fault.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("L.width", "91 1/2")]
    [InlineData("L.width", "35")]
    public void Doubt_Overruled_IsTaken(string key, string value) => Assert.NotNull(Read(key, value, force: true).Entry);

    [Fact]
    public void Instrument_ThatIsNotKnown_IsRefused() => Assert.Equal("note.instrument", Read("L.width", "19 1/2", with: "string").Fault!.Code);

    // No table has this sheet: what was read cannot be far off, and from then on the piece is set out by it.
    [Theory]
    [InlineData("boxes", null)]
    [InlineData("boxes", "1")]
    public void Thickness_ThatNobodyKnows_IsTakenAsItIsReadAndKnownFromThen(string key, string? sheet)
    {
        const string label = "boxes:   {panel: hardwood plywood, label: 1/2}";
        string text = Sample.Text("luthiers-bench");
        Assert.Contains(label, text, StringComparison.Ordinal);
        PieceSource unknown = Sample.Source(text.Replace(label, label.Replace("1/2", "7/16", StringComparison.Ordinal), StringComparison.Ordinal), null);
        Assert.Contains(unknown.SetOut().Findings, f => f.Code == "material.unknown");
        foreach (ReadingWords asked in new[] { new ReadingWords(key, "29/64") { Sheet = sheet, With = "rule" }, new ReadingWords("L3.box.width", "18 17/32") })
            Assert.NotNull(NotedReading.Of(unknown.SetOut(), unknown.Shop.Accuracy, asked, "e1", "2026-05-04T09:40:00Z").Entry);
        ReadingEntry read = NotedReading.Of(unknown.SetOut(), unknown.Shop.Accuracy, new(key, "29/64") { Sheet = sheet, With = "rule" }, "e1", "2026-05-04T09:40:00Z").Entry!;
        PieceSource known = unknown with { Log = new([read]) };
        SetPiece set = ReadingChecks.Into(known.SetOut(), known.Shop.Accuracy);
        Assert.DoesNotContain(set.Findings, f => f.Code == "material.unknown" || f.Code.StartsWith("reading.", StringComparison.Ordinal));
        // A slip of the next reading is asked about again.
        Assert.Equal(Noted<ReadingEntry>.Far, NotedReading.Of(set, known.Shop.Accuracy, new("L3.end.length", "12"), "e2", "2026-05-04T09:41:00Z").Fault?.Code);
    }

    [Fact]
    public void Spots_ApartByCommas_StandTogether_AndADecimalCommaIsNone()
    {
        Assert.Equal(2, Read("L.width", "19 1/2, 19 17/32").Entry!.Values.Length);
        PieceSource chest = Sample.Source("plan-chest");
        string metric = chest.Piece.Unit == Core.Measures.Text.LengthUnit.Millimetre ? chest.Piece.Materials.Values.OfType<Core.Pieces.Panel>().First().Name : "";
        if (metric.Length == 0) return;
        Noted<ReadingEntry> noted = NotedReading.Of(chest.SetOut(), chest.Shop.Accuracy, new(metric, "17,8, 17,9") { IsForced = true }, "e1", "2026-05-04T09:40:00Z");
        Assert.Equal([ExactLength.FromMillimetres(Rational.Of(178, 10)), ExactLength.FromMillimetres(Rational.Of(179, 10))], noted.Entry!.Values);
    }
}
