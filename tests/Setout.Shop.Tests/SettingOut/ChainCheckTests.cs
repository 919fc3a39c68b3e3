using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Texts;
using Setout.Testing;
using static Setout.Shop.Tests.SettingOut.BenchLog;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>When sizes that must add up no longer do, and what to measure next. Tape 1/32, rule 1/64, calliper 0.001; steps of 1/32.</summary>
public sealed class ChainCheckTests
{
    private static Finding? Open(string sample, params LogEntry[] entries) => After(sample, entries).Findings.SingleOrDefault(f => f.Code == "chain.open");

    private static void AssertOpen(Finding? finding, string words, string next)
    {
        Assert.NotNull(finding);
        Assert.Contains(words, finding.Words, StringComparison.Ordinal);
        Assert.Contains(next, finding.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("19 19/32", "tape", false)] // 1/32 over: what the tape explains
    [InlineData("19 153/256", "tape", true)] // 9/256 over
    [InlineData("19 17/32", "tape", false)]
    [InlineData("19 135/256", "tape", true)] // 9/256 under
    [InlineData("19 37/64", "rule", false)] // 1/64 over: what the rule explains, and half a step
    [InlineData("19 149/256", "rule", true)] // 5/256 over
    [InlineData("19 37/64", "calliper", false)] // more than a calliper explains, but half a step can neither be set nor seen
    [InlineData("19 149/256", "calliper", true)]
    public void Bay_ReadOffItsSetOut_OpensTheFrameBeyondItsInstrument(string reading, string with, bool isOpen)
    {
        Finding? finding = Open(Bench, Read("L.width", reading, with));
        Assert.Equal(isOpen, finding is not null);
        if (isOpen) AssertOpen(finding, "bays and posts in the width: the parts are", "setout record FILE K.width READING");
    }

    [Fact]
    public void Chain_OfTwoReadings_OpensBeyondBothInstruments()
    {
        // Cabinet inside: 38 - 2 x 23/32 = 36 9/16; less 20 and a partition of 23/32: B is 15 27/32. Two tapes explain 1/16.
        Assert.Null(Open(Cabinet, Read("A.width", "20 1/32", "tape"), Read("B.width", "15 7/8", "tape")));
        // 1/32 + 9/256 = 17/256. Both openings are read: of the width over all and the thickness of the partition the width is known less closely.
        AssertOpen(Open(Cabinet, Read("A.width", "20 1/32", "tape"), Read("B.width", "15 225/256", "tape")), "0.066 in longer than the whole", "setout record FILE C.opening.width READING");
        // One over and one under close it again.
        Assert.Null(Open(Cabinet, Read("A.width", "20 1/16", "tape"), Read("B.width", "15 25/32", "tape")));
    }

    [Fact]
    public void Chain_AllRead_NamesTheOldestOfTheCoarsest()
    {
        // 20 + 23/32 + 16 = 36 23/32 in 36 9/16: 5/32 over; three tapes and a calliper explain 3/32 and 0.001.
        LogEntry[] all = [Read("birch.thickness", "23/32", "calliper"), Read("B.width", "16", "tape"), Read("A.width", "20", "tape"), Read("C.opening.width", "36 9/16", "tape")];
        AssertOpen(Open(Cabinet, all), "5/32 in longer", "setout record FILE B.width READING");
        AssertOpen(Open(Cabinet, [all[2], all[0], all[1], all[3]]), "5/32 in longer", "setout record FILE A.width READING");
        // A rule is finer, so the tape of the other opening comes first, though it is younger.
        AssertOpen(Open(Cabinet, [Read("A.width", "20", "rule"), all[0], all[1], all[3]]), "5/32 in longer", "setout record FILE B.width READING");
    }

    [Fact]
    public void LastFront_Read_TakesUpNoMore()
    {
        // The lowest front takes the rest; read 1/16 over its figure, the fronts are that much too tall; 1/32 is what the tape explains.
        Finding? finding = Open(Bench, Read("L4.front.height.as-cut", Fraction(After(Bench).Value("L4.front.height.to-cut") + Described.Of("1/16")), "tape"));
        AssertOpen(finding, "fronts and gaps in the height: the parts are 1/16 in longer than the whole", "setout record FILE");
        Assert.Null(Open(Bench, Read("L4.front.height.as-cut", Fraction(After(Bench).Value("L4.front.height.to-cut") + Described.Of("1/32")), "tape")));
    }

    private static string Fraction(ExactLength length) => LengthFormat.Inches(256).Text(length);

    [Fact]
    public void Thickness_ReadAlone_OpensNothing()
    {
        // It enters the whole and the parts alike.
        Assert.Null(Open(Bench, Read("carcase.thickness", "45/64")));
        Assert.Null(Open(Cabinet, Read("birch.thickness", "45/64")));
    }
}
