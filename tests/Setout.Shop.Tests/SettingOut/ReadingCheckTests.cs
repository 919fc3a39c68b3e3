using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using static Setout.Shop.Tests.SettingOut.BenchLog;
using static Setout.Shop.Tests.SettingOut.Sample;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>What one reading tells by itself. The shop of the samples: tape 1/32, rule 1/64, calliper 0.001, spots 1/256, placing 1/64 either way.</summary>
public sealed class ReadingCheckTests
{
    // Nothing of these pieces is marked cut, which is told of each opening besides, and tested where that is.
    private static Finding[] Told(SetPiece set) => [.. set.Findings.Where(f => (f.Code.StartsWith("reading.", StringComparison.Ordinal) && f.Code != BeforeBuilt.Code) || f.Code is "opening.tapers")];

    private static Finding Only(string code, Severity severity, SetPiece set)
    {
        Finding finding = Assert.Single(Told(set));
        Assert.Equal((code, severity), (finding.Code, finding.Severity));
        Assert.True(finding.Place.IsKnown);
        Assert.EndsWith(".", finding.Words, StringComparison.Ordinal);
        Assert.EndsWith(".", finding.Remedy, StringComparison.Ordinal);
        return finding;
    }

    private static void Says(Finding finding, string words, string remedy)
    {
        Assert.Contains(words, finding.Words, StringComparison.Ordinal);
        Assert.Contains(remedy, finding.Remedy, StringComparison.Ordinal);
    }

    private static SetPiece Spots(string key, params (string Spot, string Value)[] spots) => After(Bench, spots.Select(s => Read(key, s.Value, spot: s.Spot)));

    [Fact]
    public void FourSpots_OneOffTheOthers_IsNamedWithItsSpot()
    {
        // The others 0.702, 0.703, 0.704 have the median 0.703: 0.032 off, where calliper 0.001 and two spots 2/256 explain 0.0088, said 0.009.
        // All four have the median 0.7035 and the deviations 0.0005, 0.0005, 0.0015, 0.0315 with the median 0.001: 0.6745 x 31.5 = 21, over 3.5.
        Finding finding = Only("reading.outlier", Severity.Warn, Spots("carcase.thickness", ("corner", "0.735"), ("edge", "0.703"), ("end", "0.704"), ("middle", "0.702")));
        Says(finding, "reads 0.735 in at the spot 'corner', where the others lie about 0.703 in; 0.009 in could be explained", "carcase.thickness READING --spot corner");
        Assert.Equal("carcase", finding.Key);
    }

    [Theory]
    // 0.008 off the median 0.703 of the others, less than the 0.0088 explained.
    [InlineData("0.703, 0.703, 0.703, 0.711")]
    // 0.010 off the median 0.705 of the others, but they differ as much among themselves: deviations 0.0075, 0.0025, 0.0025, 0.0075 with the median 0.005, and 0.6745 x 1.5 = 1.
    [InlineData("0.700, 0.705, 0.710, 0.715")]
    // Two and three: 0.008 apart.
    [InlineData("0.703, 0.711")]
    [InlineData("0.703, 0.705, 0.711")]
    public void Spots_ThatInstrumentAndSheetExplain_FindNothing(string values) => Assert.Empty(Told(After(Bench, Read("carcase.thickness", values))));

    [Fact]
    public void TwoSpots_FurtherApartThanExplained_AskForOneMore()
    {
        // 0.010 apart, over 0.0088.
        Finding finding = Only("reading.outlier", Severity.Warn, Spots("carcase.thickness", ("edge", "0.703"), ("end", "0.713")));
        Says(finding, "0.703 in at the spot 'edge' and 0.713 in at the spot 'end', 0.01 in apart", "Read one more spot");
    }

    [Fact]
    public void Opening_TapersMoreThanItsSlidesTake_SaysToPackTheWideEnd()
    {
        // The slides take 0 to 1/16 in. 19 21/32 less 19 9/16 is 3/32.
        Finding finding = Only("opening.tapers", Severity.Warn, Spots("L.width", ("front", "19 9/16"), ("back", "19 21/32")));
        Says(finding, "19 9/16 in at the spot 'front' and 19 21/32 in at the spot 'back': it tapers by 3/32 in; its slides take 1/16 in", "pack the slides by 3/32 in at the spot 'back'");
        Assert.Empty(Told(Spots("L.width", ("front", "19 9/16"), ("back", "19 5/8"))));
        Assert.Equal("L3", Only("opening.tapers", Severity.Warn, Spots("L3.opening", ("front", "19 9/16"), ("back", "19 21/32"))).Key);
    }

    [Fact]
    public void OpeningWithoutDrawers_Tapers_BeyondTwiceTheTape()
    {
        // The knee space is 78 - 4 x 3 1/2 - 2 x 21 = 22; twice the tape is 1/16.
        Assert.Empty(Told(Spots("K.width", ("front", "22"), ("back", "22 1/16"))));
        Says(Only("opening.tapers", Severity.Warn, Spots("K.width", ("front", "22"), ("back", "22 5/64"))), "tapers by 5/64 in; 1/16 in could be explained", "narrow end");
    }

    [Fact]
    public void Slip_MillimetresForInches_IsSaidInsteadOfFarOff()
    {
        // 18 mm is 0.709 in; the sheet may be 45/64 (0.703) to 3/4.
        Finding finding = Only("reading.slip", Severity.Warn, After(Bench, Read("carcase.thickness", "18")));
        Says(finding, "18 mm? 18 in was read where 23/32 in was expected", "void entry e0 and record 18 mm");
        // A lost decimal point: 15 27/32 expected, 15.8 within what tape and placing explain.
        Says(Only("reading.slip", Severity.Warn, After(Cabinet, Read("B.width", "158"))), "158 in was read", "void entry e0");
    }

    [Theory]
    [InlineData(Bench, "carcase.thickness", "18", "reading.slip")]
    [InlineData(Cabinet, "B.width", "11", "reading.far-off")]
    public void Reading_ThatMayBeASlip_ToldForPages_SaysWhereItIsVoidedAndNoId(string sample, string key, string value, string code)
    {
        Finding finding = Source(Text(sample)).For(Hand.Pages).SetOut(Read(key, value)).Findings.First(f => f.Code == code);
        Assert.Contains("void that reading under “What was read and marked”", finding.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain("e0", finding.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void FarOff_IsSaidInsteadOfUnexplained()
    {
        SetPiece set = After(Cabinet, Read("B.width", "11"));
        Assert.Equal("B", Assert.Single(Told(set), f => f.Code == "reading.far-off").Key);
        Assert.Single(Told(set));
    }

    [Fact]
    public void Slip_OfWhatIsPickedOrDecided_IsNotSuspected()
    {
        // A slide 4 in shorter and packing of any thickness are decisions.
        Assert.Empty(Told(After(Bench, Read("L2.slide.length", "18"))));
        Assert.Empty(Told(After(Bench, Read("L2.packing", "1/8"))));
    }

    [Fact]
    public void Coarser_ThanWhatWasKnown_IsAcceptedWithThatRemark()
    {
        // A partition is placed to 1/64 in; a tape reads to 1/32, a rule to 1/64.
        SetPiece set = After(Cabinet, Read("A.width", "20", "tape"));
        Says(Only("reading.coarser", Severity.Note, set), "was known to 1/64 in either way before it was read; the tape may be off by 1/32 in", "Read it with the rule");
        Assert.Empty(Told(After(Cabinet, Read("A.width", "20", "rule"))));
    }

    [Theory]
    // Placing 1/64 and tape 1/32 are 3/64.
    [InlineData("20 3/64", null)]
    [InlineData("19 61/64", null)]
    [InlineData("20 13/256", "over")]
    [InlineData("19 243/256", "under")]
    public void Unexplained_JustOverPlacingAndTape_IsAFinding(string reading, string? way)
    {
        Finding[] told = [.. Told(After(Cabinet, Read("A.width", reading, "tape"))).Where(f => f.Severity == Severity.Warn)];
        if (way is null) Assert.Empty(told);
        else Says(Assert.Single(told, f => f.Code == "reading.unexplained"), $"0.051 in {way} the 20 in expected; 3/64 in could be explained", "Measure it once more");
    }

    [Theory]
    // In 64ths. Over: setting 2, repeat 1, two sheets down to their least 2 x 1, sheets that differ 2 x 1/2, two spots 2 x 1/4, placing 1, tape 2 = 9 1/2.
    // Under: the same with two sheets up to their label, 2 x 2: 11 1/2.
    [InlineData("19 45/64", null)]
    [InlineData("19 46/64", "over")]
    [InlineData("19 25/64", null)]
    [InlineData("19 24/64", "under")]
    public void Unexplained_NamesCausesInOrderOfSizeAndWhatToMeasureNext(string reading, string? way)
    {
        Finding[] told = [.. Told(After(Bench, Read("L.width", reading, "tape")))];
        if (way is null)
        {
            Assert.Empty(told);
            return;
        }
        // The lot may move it by 2 x 3/64, the setting by 4/64; so the thickness, with 2 x (3 + 1)/64, comes before the rail with 6/64.
        Finding finding = Assert.Single(told);
        Assert.Equal("reading.unexplained", finding.Code);
        Says(finding, $"{way} the 19 9/16 in expected", "setout record FILE carcase.thickness READING");
        Assert.Contains("the most first: carcase: thickness not read; setting 21 in for studs", finding.Words, StringComparison.Ordinal);
        // Once the thickness is read the rail is next: nothing else is left.
        Finding next = Assert.Single(Told(After(Bench, Read("carcase.thickness", "23/32", "calliper"), Read("L.width", reading, "tape"))));
        Assert.Contains("setout record FILE L.rail.length READING", next.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Facts_AreNoReadings()
    {
        // Cut 1/8 short of 19 9/16 - 1 - 1/32 - 15/16: a finding of the plan, not of readings; and no sum is open for it.
        SetPiece set = After(Bench, Cut("L3.end", ("L3.end.length", "17 15/32")), Cut("L1.front", ("L1.front.height", "4 1/8")), Cut("L4.front", ("L4.front.height", "6")));
        Assert.Contains(set.Findings, f => f.Code == "part.cut-differs");
        Assert.Contains(set.Chains, c => c.Misfit(set.Worked) is not { Sign: 0 });
        Assert.Empty(ReadingChecks.Of(set, Accuracy.Usual));
        Assert.Same(set, ReadingChecks.Into(set, Accuracy.Usual));
    }
}
