using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;

namespace Setout.Shop.Tests.Plans;

/// <summary>Every sample is built whole: set out, laid out, checked, added up.</summary>
public sealed class SamplePlanTests
{
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Make_Sample_NothingStopsOrWarns(string name) =>
        Assert.Empty(Sample.Plan(name).Findings.Where(f => f.Severity != Severity.Note));

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Make_Sample_EveryPartIsLaidAndTheCheckersAgree(string name)
    {
        Plan plan = Sample.Plan(name);
        var laid = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (SheetPlan sheets in plan.Sheets)
        {
            Assert.Empty(SheetChecker.Check(sheets.Instance, sheets.Outcome.Layout));
            foreach (LaidSheet sheet in sheets.Outcome.Layout.Sheets)
                foreach (PlacedRectangle place in SheetFace.Flatten(sheets.Instance, sheet).Where(p => p.Kind == FaceKind.Part))
                    laid[place.PartId] = laid.GetValueOrDefault(place.PartId) + 1;
        }
        foreach (BoardPlan boards in plan.Boards)
        {
            Assert.Empty(BoardChecker.Check(boards.Instance, boards.Outcome.Layout));
            foreach (string part in boards.Outcome.Layout.Boards.SelectMany(b => b.PartIds)) laid[part] = laid.GetValueOrDefault(part) + 1;
        }
        Assert.Equal(plan.Set.Parts.ToDictionary(p => p.Key, p => p.Count), laid);
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Make_Sample_CostsWhatItsLinesAddUpTo(string name)
    {
        Plan plan = Sample.Plan(name);
        decimal stock = plan.Sheets.Sum(s => s.Outcome.Layout.Sheets.Sum(l => s.Instance.Stock.Single(k => k.Id == l.StockId).Cost.Amount))
            + plan.Boards.Sum(b => b.Outcome.Layout.Boards.Sum(l => b.Instance.Stock.Single(k => k.Id == l.StockId).Cost.Amount));
        decimal hardware = plan.Buying.Where(l => l.Kind == BuyingKind.Hardware && l.Price is not null).Sum(l => l.Count * l.Price!.Value.Amount);
        Assert.Equal(stock + hardware, plan.Cost.Amount);
    }

    /// <summary>Adds each working up again from what is shown of it, term by term, in exact fractions.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Workings_AddedUpAgain_AreRightToTheTick(string name)
    {
        WorkedPiece worked = Sample.Plan(name).Set.Worked;
        Assert.NotEmpty(worked.Order);
        foreach (QuantityKey key in worked.Order)
        {
            WrittenWorking working = WrittenWorking.Of(worked, key)!;
            IEnumerable<ExactLength> products = working.Terms.Select(t => t.Value * t.Times);
            ExactLength again = working.How switch
            {
                WrittenHow.Least => products.Min(),
                WrittenHow.Greatest => products.Max(),
                WrittenHow.Rounded => Rounded((ToCut)worked.Values[key].Quantity.Working, products.Single()),
                _ => products.Aggregate(ExactLength.Zero, (sum, p) => sum + p) * working.Share,
            };
            Assert.True(again == working.Expected, $"{key}: the terms give {again}, the sum says {working.Expected}.");
            foreach (WrittenTerm term in working.Terms.Where(t => t.Key is not null)) Assert.Equal(worked[term.Key!.Value], term.Value);
        }
    }

    // By counting steps, not by the code's own rounding.
    private static ExactLength Rounded(ToCut cut, ExactLength exact)
    {
        Rational steps = exact / cut.Grid.Step;
        Rational whole = Rational.Of(steps.Floor(), 1), rest = steps - whole;
        bool up = rest.Sign > 0 && cut.Rounding switch
        {
            Rounding.Down => false,
            Rounding.Up => true,
            _ => rest >= Rational.Of(1, 2),
        };
        return cut.Grid.Step.ToExact() * (up ? whole + 1 : whole);
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Chains_OfSample_Close(string name)
    {
        SetPiece set = Sample.Plan(name).Set;
        foreach (ClosedChain chain in set.Chains) Assert.Equal(ExactLength.Zero, chain.Misfit(set.Worked));
    }

    [Fact]
    public void Names_OfSamples_AreAtLeastThreePiecesAndTwoPrintedBills() => Assert.True(Sample.Names.Count >= 5, string.Join(", ", Sample.Names));

    /// <summary>Source of the sizes: The Boy Mechanic, Volume 1 (1913; Project Gutenberg 12655), p. 226: 21 pieces, 49.69 board feet of true volume.</summary>
    [Fact]
    public void AmateurWorkbench_PrintedBill_HasItsPiecesAndVolume()
    {
        SetPiece set = Sample.Plan("amateur-workbench").Set;
        Assert.Equal(21, set.Parts.Sum(p => p.Count));
        Rational cubicInches = set.Parts.Aggregate(Rational.Zero, (sum, p) =>
            sum + (set.Worked[p.Length.ToCut].Inches * set.Worked[p.Width.ToCut].Inches * set.Worked[p.Thickness].Inches * p.Count));
        Assert.Equal(49.6901, (cubicInches / 144).ToDouble(), 4);
    }

    /// <summary>Source of the sizes: Mission Furniture, Part Two (1910; Project Gutenberg 23991): 18 pieces, 23.37 board feet of true volume.</summary>
    [Fact]
    public void CedarChest_PrintedBill_HasItsPiecesAndVolume()
    {
        SetPiece set = Sample.Plan("cedar-chest").Set;
        Assert.Equal(18, set.Parts.Sum(p => p.Count));
        Rational cubicInches = set.Parts.Aggregate(Rational.Zero, (sum, p) =>
            sum + (set.Worked[p.Length.ToCut].Inches * set.Worked[p.Width.ToCut].Inches * set.Worked[p.Thickness].Inches * p.Count));
        Assert.Equal(23.3714, (cubicInches / 144).ToDouble(), 4);
    }
}
