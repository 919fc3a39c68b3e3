using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.Fit.Mending;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Testing;

namespace Setout.Core.Tests.Fit.Mending;

/// <summary>What must hold for every remedy offered for any small piece upset at any stage. A seed that fails is a test case by itself.</summary>
public sealed class RemedyPropertyTests
{
    private const int Seeds = 150;

    private static readonly ImmutableArray<Shim> s_shims = [new("washer", Length.FromInches(1, 16)), new("veneer", Length.FromInches(1, 40)), new("card", Length.FromInches(1, 64))];
    private static readonly ImmutableArray<Blank> s_blanks = [new("offcut", "wood", Length.FromInches(30), Length.FromInches(10), null), new("sheet", "thin", Length.FromInches(96), Length.FromInches(48), new(58))];

    private static readonly Lazy<ImmutableArray<(int Seed, SetPiece Set, ImmutableArray<MendingAdvice> Advice)>> s_all = new(() =>
        [.. Enumerable.Range(0, Seeds).Select(seed => (seed, UpsetBench.Of(seed))).Select(s => (s.seed, s.Item2, Remedies.For(s.Item2, s_shims, s_blanks)))]);

    private static IEnumerable<(int Seed, SetPiece Set, Upset Upset, Remedy Remedy)> Offered() =>
        from one in s_all.Value from advice in one.Advice from remedy in advice.Remedies select (one.Seed, one.Set, advice.Upset, remedy);

    private static bool IsInside(SetPiece set, Gap gap) => set.Worked[gap.Key] >= gap.Least && set.Worked[gap.Key] <= gap.Most;

    private static HashSet<(string, string)> Stops(SetPiece set) => [.. set.Findings.Where(f => f.Severity == Severity.Stop).Select(f => (f.Code, f.Key))];

    private static SetPiece SetOut(SetPiece set, Dictionary<QuantityKey, Pin> pins) => PieceSetOut.Of(set.Piece, set.Grid, set.Facts with { Pins = pins });

    private static Pin PinOf(ExactLength value, bool isFact) => new([value], new(OriginKind.Reading, "read"), "after") { IsFact = isFact };

    // On its own, beside what the remedy was proven with.
    private static SetPiece Amended(SetPiece set, Remedy remedy)
    {
        var pins = set.Facts.Pins.ToDictionary();
        foreach (Amendment a in remedy.Amendments)
        {
            if (a.Kind == AmendmentKind.Forget) Assert.True(pins.Remove(a.Key), $"{a.Key} was never pinned");
            else pins[a.Key] = PinOf(a.Value, a.Kind != AmendmentKind.Reads);
        }
        return SetOut(set, pins);
    }

    private static bool IsTogether(SetPiece set, string part)
    {
        bool box = part.EndsWith(".side", StringComparison.Ordinal) || part.EndsWith(".end", StringComparison.Ordinal) || part.EndsWith(".bottom", StringComparison.Ordinal);
        return set.Facts.States.GetValueOrDefault(part) >= PartState.Assembled || (box && set.Facts.Pins.ContainsKey(new($"{new QuantityKey(part).Owner}.box.as-built")));
    }

    [Fact]
    public void Offered_OverAllSeeds_IsEveryKindThatABenchCanCallFor()
    {
        // Slides that are bought are not among the random facts; a sample shows them.
        RemedyKind[] seen = [.. Offered().Select(o => o.Remedy.Kind).Distinct().Order()];
        Assert.Equal(Enum.GetValues<RemedyKind>().Where(k => k != RemedyKind.Exchange), seen);
    }

    [Fact]
    public void Remedy_PutBackIntoTheSums_LandsItsGapAndPushesNoOtherOut() => Assert.All(Offered(), o =>
    {
        SetPiece after = Amended(o.Set, o.Remedy);
        if (o.Upset.Kind == UpsetKind.GapOut)
        {
            Assert.NotEqual(0, o.Upset.By.Sign);
            Assert.True(IsInside(after, after.Gaps.Single(g => g.Key == o.Upset.Key)), $"seed {o.Seed}: {o.Upset.Words} {o.Remedy.Words}");
        }
        foreach (Gap gap in o.Set.Gaps.Where(g => IsInside(o.Set, g)))
            Assert.True(IsInside(after, after.Gaps.Single(g => g.Key == gap.Key)), $"seed {o.Seed}: {gap.Name} falls out by: {o.Remedy.Words}");
        Assert.Subset(Stops(o.Set), Stops(after));
        Assert.All(o.Remedy.Moves, m => Assert.Equal((o.Set.Worked[m.Key], after.Worked[m.Key]), (m.Before, m.After)));
    });

    [Fact]
    public void Commands_OfARemedy_LeadToTheSameGap() => Assert.All(Offered().Where(o => o.Upset.Kind == UpsetKind.GapOut), o =>
    {
        var pins = o.Set.Facts.Pins.ToDictionary();
        foreach (string[] words in o.Remedy.Commands.Select(c => c.Split(' ', 5)))
        {
            if (words[1] == "void") Assert.True(pins.Remove(pins.Single(p => p.Value.EntryId == words[3]).Key));
            else if (words[1] == "record") pins[new(words[3])] = PinOf(LengthText.Parse(words[4], LengthUnit.Millimetre).Value, false);
            else if (words is [_, "mark", _, "cut", _])
            {
                // As the log takes it: the figure is a fact, and what was read of the part that was cut before is no more.
                foreach (System.Text.RegularExpressions.Match to in System.Text.RegularExpressions.Regex.Matches(words[4], "--to \"([^=]+)=([^\"]+)\""))
                {
                    var size = new QuantityKey(to.Groups[1].Value);
                    if (pins.TryGetValue(size.ToCut, out Pin? before) && before.IsFact) pins.Remove(size.AsCut);
                    pins[size.ToCut] = PinOf(LengthText.Parse(to.Groups[2].Value, LengthUnit.Millimetre).Value, true);
                }
            }
        }
        Assert.Equal(Amended(o.Set, o.Remedy).Worked[o.Upset.Key], SetOut(o.Set, pins).Worked[o.Upset.Key]);
    });

    [Fact]
    public void Remedy_OfAnyKind_AsksOnlyForWhatTheStateOfItsPartsAllows() => Assert.All(Offered(), o =>
    {
        bool IsMade(string part) => o.Set.Facts.States.ContainsKey(part) || IsTogether(o.Set, part) || o.Set.Facts.Pins.Keys.Any(k => k.Text.StartsWith(part + ".", StringComparison.Ordinal));
        switch (o.Remedy.Kind)
        {
            case RemedyKind.Trim:
                Assert.All(o.Remedy.Parts, p => Assert.True(IsMade(p) && !IsTogether(o.Set, p), $"seed {o.Seed}: {o.Remedy.Words}"));
                break;
            case RemedyKind.TakeApart:
                Assert.Contains(o.Remedy.Parts, p => IsTogether(o.Set, p) || p.EndsWith(".front", StringComparison.Ordinal));
                Assert.All(o.Remedy.Parts.Where(p => IsTogether(o.Set, p)), p => Assert.DoesNotContain(o.Set.Joints, j => (j.Part == p || j.Against == p) && j.Held.StartsWith("glue", StringComparison.Ordinal)));
                break;
            case RemedyKind.Plane:
                Assert.All(o.Remedy.Parts, p => Assert.True(IsTogether(o.Set, p)));
                Amendment planed = Assert.Single(o.Remedy.Amendments);
                // A box has so much taken off it; an edge comes to so much.
                ExactLength off = planed.Key.Text.EndsWith(".planed", StringComparison.Ordinal) ? planed.Value - o.Set.Worked[planed.Key] : o.Set.Worked[planed.Key] - planed.Value;
                Assert.True(off.Sign > 0 && off <= Described.Of("1/8"), $"seed {o.Seed}: {o.Remedy.Words}");
                break;
            case RemedyKind.ChangeUncut:
                Assert.All(o.Remedy.Amendments, a => Assert.False(o.Set.Facts.Pins.ContainsKey(a.Key)));
                break;
            case RemedyKind.Recut:
                string[] boxes = [.. o.Remedy.Parts.Where(p => IsTogether(o.Set, p) && p.Split('.') is [_, "side" or "end" or "bottom"] && o.Set.Parts.Any(x => x.Key == p && x.Role is PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom)).Select(p => new QuantityKey(p).Owner).Distinct()];
                Assert.All(boxes, b => Assert.Empty(new[] { $"{b}.side", $"{b}.end", $"{b}.bottom" }.Except(o.Remedy.Parts)));
                break;
        }
    });

    [Fact]
    public void Trim_OfAnyPart_OnlyTakesAway() => Assert.All(Offered().Where(o => o.Remedy.Kind == RemedyKind.Trim), o =>
        Assert.All(o.Remedy.Amendments.Where(a => a.Kind == AmendmentKind.CutTo), a =>
        {
            Assert.True(a.Value <= o.Set.Worked[new QuantityKey(a.Key.Text[..^QuantityKey.ToCutSuffix.Length]).AsCut], $"seed {o.Seed}: {o.Remedy.Words}");
            Assert.True(o.Set.Grid.Holds(a.Value));
        }));

    [Fact]
    public void Accept_OfAPart_IsOfferedOnlyWhereItsGapsAreInside() => Assert.All(Offered().Where(o => o.Remedy.Kind == RemedyKind.Accept), o =>
    {
        Assert.Equal(UpsetKind.PartDiffers, o.Upset.Kind);
        Assert.Empty(o.Remedy.Amendments);
        Assert.NotEqual(o.Set.Worked.Values[o.Upset.Key].Expected, o.Set.Worked[o.Upset.Key]);
    });

    [Fact]
    public void Remedies_OfAnUpset_ComeQuickestFirstThenWithLeastStock() => Assert.All(s_all.Value.SelectMany(a => a.Advice), a =>
    {
        var order = a.Remedies.Select(r => (r.Minutes, r.Stock.MustBuy, r.Stock.Cost.Amount, r.Stock.Area.SquareTicks)).ToList();
        Assert.Equal(order.Order(), order);
        Assert.Equal(a.Remedies.IsEmpty, a.Words.Length > 0);
    });

    [Fact]
    public void For_Twice_GivesTheSameWordsInTheSameOrder() => Assert.All(s_all.Value.Take(40), one =>
        Assert.Equal(one.Advice.SelectMany(a => a.Remedies.Select(r => r.Words).Prepend(a.Upset.Words)),
            Remedies.For(UpsetBench.Of(one.Seed), s_shims, s_blanks).SelectMany(a => a.Remedies.Select(r => r.Words).Prepend(a.Upset.Words))));

    [Fact]
    public void For_WildReadings_NeverFails() => Assert.All(Enumerable.Range(0, 40), seed =>
    {
        // A slip of the pen or of the unit, of anything at all: what comes of it may be nonsense, but it is said, and is never worse than before.
        SetPiece set = UpsetBench.Of(seed);
        var random = new Random(seed);
        var pins = set.Facts.Pins.ToDictionary();
        for (int i = 0; i < 4; i++)
        {
            QuantityKey key = set.Worked.Order[random.Next(set.Worked.Order.Length)];
            if (set.Worked.Values.TryGetValue(key, out Worked? worked)) pins[key] = PinOf(worked.Value * Rational.Of(random.Next(0, 30), random.Next(1, 8)), random.Next(2) == 0);
        }
        SetPiece wild = SetOut(set, pins);
        Assert.All(Remedies.For(wild, s_shims, s_blanks).SelectMany(a => a.Remedies), r => Assert.Subset(Stops(wild), Stops(Amended(wild, r))));
    });

    [Fact]
    public void For_APlanThatNobodyTouched_IsEmpty() => Assert.All(Enumerable.Range(0, 40), seed =>
    {
        (Core.Pieces.Piece piece, Grid grid) = RandomPieces.Of(seed);
        Assert.Empty(Remedies.For(PieceSetOut.Of(piece, grid, BenchFacts.Empty), s_shims, s_blanks));
    });
}
