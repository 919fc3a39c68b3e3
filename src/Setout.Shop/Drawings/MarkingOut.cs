using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Sheets;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Shop.Plans;
using Setout.Shop.Runs;

namespace Setout.Shop.Drawings;

/// <summary>One sheet's marking-out drawing.</summary>
/// <param name="Name">Such as <c>carcase, sheet A</c>.</param>
/// <param name="FileName">A name for its file, without ending.</param>
/// <param name="Scene">The drawing.</param>
public sealed record MarkedSheet(string Name, string FileName, Scene Scene);

/// <summary>Turns layouts of sheets into marking-out drawings: running dimensions from the reference edge, marks, cuts lettered in order.</summary>
public static class MarkingOut
{
    /// <summary>Paper millimetres by which a drawing grows at a time until its figures find room.</summary>
    private const double Growth = 16;

    /// <summary>A sheet of more parts than this is drawn as large as its papers allow at once: it takes long, and every size leaves something out.</summary>
    private const int ManyParts = 300;

    /// <summary>All sheets of a material.</summary>
    public static ImmutableArray<MarkedSheet> Of(Plan whole, SheetPlan plan, BreakdownPaper paper) => Of(whole, plan, _ => [paper]);

    /// <summary>All sheets of a material, each on the first of its papers that has room for all its figures.</summary>
    /// <param name="whole">The plan.</param>
    /// <param name="plan">The layout.</param>
    /// <param name="papers">Papers for a sheet by its number from 0, in the order in which they are liked. Each is used as high as it is, then up to its most height.</param>
    /// <param name="caution">What is cautioned against in the heading of each drawing, where it stands nowhere else; empty for nothing.</param>
    public static ImmutableArray<MarkedSheet> Of(Plan whole, SheetPlan plan, Func<int, ImmutableArray<BreakdownPaper>> papers, string caution = "")
    {
        var saws = SawnSheets.Of(whole);
        return [.. plan.Outcome.Layout.Sheets.Select((sheet, i) => Draw(whole, saws, plan, sheet, i, papers(i), caution))];
    }

    private static MarkedSheet Draw(Plan whole, SawnSheets saws, SheetPlan plan, LaidSheet sheet, int index, ImmutableArray<BreakdownPaper> papers, string caution)
    {
        SetPiece set = whole.Set;
        int material = whole.Sheets.IndexOf(plan);
        LengthFormat bare = LengthFormat.For(set.Piece.Shown).Bare, format = LengthFormat.For(set.Piece.Shown);
        StockLine stock = plan.Stock.First(s => s.Id == sheet.StockId);
        SheetStock trued = plan.Instance.Stock.First(s => s.Id == sheet.StockId);
        string letter = saws.Names.OfStock(material, index), name = $"{plan.Material.Name}, {saws.Names.SpokenStock(material, index)}";
        ImmutableArray<PlacedRectangle> placed = SheetFace.Flatten(plan.Instance, sheet);
        ImmutableArray<CutStep> steps = SheetCuts.InOrder(plan.Instance, sheet);

        var parts = ImmutableArray.CreateBuilder<Drawing.Breakdowns.SheetPart>();
        foreach (PlacedRectangle place in placed.Where(p => p.Kind == FaceKind.Part))
        {
            Part part = set.Parts.First(p => p.Key == place.PartId);
            string turned = place.Turn == Turn.Quarter ? ", turned" : "";
            parts.Add(new(part.Key, $"{part.Name}, {bare.Text(set.ToCut(part.Length))} x {format.Text(set.ToCut(part.Width))}{turned}{(set.IsHeld(part) ? $", waits for a reading of {part.HeldUntil[^1]}" : "")}", part.Mark, Rect(place.Place)) { IsHeld = set.IsHeld(part) });
        }
        (ImmutableArray<PrimaryCut> primary, ImmutableArray<InnerCut> inner) = Cuts(steps, bare);
        FirstCuts first = FirstCuts.Of(whole, saws, material, index, primary);
        primary = first.Lettered;
        inner = [.. inner.Select(c => c with { IsWaiting = first.IsWaiting(c) })];
        var saw = new SheetAtTheSaw(whole, saws, material, index, trued);
        var kept = placed.Where(p => p.Kind == FaceKind.Keep)
            .Select((p, i) => saw.Kept(p.Place) is var (words, brief) ? new KeptPiece($"{plan.Material.Name}-{letter}-keep-{i + 1}", Rect(p.Place), words) { Brief = brief } : null!).ToImmutableArray();

        var input = new SheetInput(name, Describe(plan, stock, primary, parts.Count), trued.TruedAlong, trued.TruedAcross)
        {
            Parts = parts.ToImmutable(),
            PrimaryCuts = primary,
            InnerCuts = inner,
            Waste = [.. placed.Where(p => p.Kind == FaceKind.Waste).Select(p => Rect(p.Place))],
            Kept = kept,
            Grain = plan.Material.Grain == Core.Pieces.Grain.Keep ? SheetAxis.Along : null,
            HeaderLeft = Phrase.Of(name),
            HeaderNote = Thickness(set, plan, stock, format).Add($"; seen on the good face{(caution.Length > 0 ? $". Caution: {caution}" : "")}"),
            Strips = first.Strips,
            HeaderRight = Phrase.Of(Verdicts.Of(plan)),
            ReferenceNote = saw.Reference(),
            Footer = first.Words(bare) is { } runs ? Footer(runs, first, saw, steps, index == 0) : Footer(plan, primary, steps, parts.Any(p => p.IsHeld), bare),
        };
        // Narrow strips want a taller drawing, or their figures run into each other: about 7 mm of paper for the narrowest.
        double narrowest = Strips(plan, primary).Select(w => w.ApproximateMillimetres).DefaultIfEmpty(double.MaxValue).Min();
        double height = trued.TruedAcross.ApproximateMillimetres / narrowest * 7;
        return new(name, $"{plan.Material.Name}-{letter}", SheetDrawing.DrawOnBest(input, [.. papers.SelectMany(p => Grown(p, parts.Count > ManyParts ? p.MostHeight : height))]));
    }

    // Higher and higher; a sheet that fills the width already is drawn no larger by it.
    private static IEnumerable<BreakdownPaper> Grown(BreakdownPaper paper, double wanted)
    {
        for (double height = Math.Min(Math.Max(paper.Height, wanted), paper.MostHeight); ; height = Math.Min(height + Growth, paper.MostHeight))
        {
            yield return paper with { Height = height };
            if (height >= paper.MostHeight) yield break;
        }
    }

    private static Phrase Thickness(SetPiece set, SheetPlan plan, StockLine stock, LengthFormat format)
    {
        Worked worked = set.Worked.Values[new($"{plan.Material.Name}.thickness")];
        string how = worked.Pin is not null ? "reads" : worked.Quantity.Working is Stated { Origin.Kind: OriginKind.Given } ? "given as" : "not read yet; stands in at";
        return Phrase.Of($"{BuyingList.Words(plan.Material)}, {stock.Words}; {how} ").Add(format.Format(worked.Value));
    }

    /// <summary>Which run makes which of the first cuts, and what then becomes of the strips.</summary>
    private static Phrase Footer(Phrase runs, FirstCuts first, SheetAtTheSaw saw, ImmutableArray<CutStep> steps, bool isFirst)
    {
        if (saw.Inside(first) is { Length: > 0 } inside) runs = runs.Add($"; {inside}");
        if (saw.FaceDown.Length > 0) runs = runs.Add($"; {saw.FaceDown}");
        // Said once for all sheets of a material.
        Phrase footer = runs.Add($"; then as the runs say{(isFirst ? ": at the fence only with an edge longer than the distance to the blade" : "")}");
        if (steps.Any(s => s.Stage > 2)) footer = footer.Add("; where a length is divided once more, its small figures run from its own edge");
        return first.Waiting.Length > 0 ? footer.Add($"; {first.Waiting}") : footer;
    }

    /// <summary>What to do where no run cuts this sheet yet, with the width of each strip for the fence.</summary>
    private static Phrase Footer(SheetPlan plan, ImmutableArray<PrimaryCut> primary, ImmutableArray<CutStep> steps, bool hasHeld, LengthFormat bare)
    {
        if (primary.Length == 0) return Phrase.Of("one piece: true the edges only");
        if (primary.All(c => c.IsWaiting)) return Phrase.Of("nothing is cut from it yet: marks that slant wait for a reading, and it stays whole until that is taken");
        bool rips = primary[0].Axis == SheetAxis.Along;
        Phrase footer = Phrase.Of(rips ? "rip " : "cut across with a guided saw ");
        ImmutableArray<Length> widths = Strips(plan, primary);
        for (int first = 0, next; first < primary.Length; first = next)
        {
            // Neighbours of one width share a setting, and a place in the sentence.
            next = first + 1;
            while (next < primary.Length && widths[next] == widths[first]) next++;
            string letters = (next - first) switch
            {
                1 => primary[first].Letter,
                2 => $"{primary[first].Letter} and {primary[first + 1].Letter}",
                _ => $"{primary[first].Letter} to {primary[next - 1].Letter}",
            };
            footer = footer.Add($"{(first > 0 ? ", " : "")}{letters} ").Add(bare.Format(widths[first])).Add(" wide");
        }
        footer = footer.Add(rips ? " from the reference edge; then cut each strip to length on a sled or guide against a stop, never against the fence" : "; then rip what comes off from its trued edge");
        if (steps.Any(s => s.Stage > 2)) footer = footer.Add("; where a length is divided once more, its small figures run from its own edge");
        return hasHeld ? footer.Add("; marks that slant wait for a reading: leave their wood whole until it is taken") : footer;
    }

    /// <summary>What comes off before each of the first cuts.</summary>
    private static ImmutableArray<Length> Strips(SheetPlan plan, ImmutableArray<PrimaryCut> primary) =>
        [.. primary.Select((cut, i) => cut.At - (i == 0 ? Length.Zero : primary[i - 1].At + plan.Instance.Kerf))];

    private static string Describe(SheetPlan plan, StockLine stock, ImmutableArray<PrimaryCut> primary, int parts)
    {
        string cuts = string.Join(", ", primary.Select(c => $"{(c.IsWaiting ? "later" : c.Letter)} at {c.Figure.PlainText}"));
        return $"Marking-out drawing of one sheet of {plan.Material.Name}, {stock.Words}: {parts} parts. First cuts from the reference edge: {(cuts.Length > 0 ? cuts : "none")}.";
    }

    /// <summary>The first cuts are lettered; those inside strips get small running figures from the strip's own edge.</summary>
    private static (ImmutableArray<PrimaryCut>, ImmutableArray<InnerCut>) Cuts(ImmutableArray<CutStep> steps, LengthFormat bare)
    {
        var primary = ImmutableArray.CreateBuilder<PrimaryCut>();
        var inner = ImmutableArray.CreateBuilder<InnerCut>();
        foreach (CutStep step in steps.Where(s => s.Kind == CutStepKind.Divide))
        {
            foreach (Length position in step.Positions)
            {
                // A position across the grain is a line that runs along it.
                SheetAxis axis = step.Axis == GrainAxis.Across ? SheetAxis.Along : SheetAxis.Across;
                Length at = position + (step.Axis == GrainAxis.Across ? step.Blank.FromAcross : step.Blank.FromAlong);
                if (step.Stage == 1)
                {
                    primary.Add(new(Letters.Lower(primary.Count), at, axis, Phrase.Of(bare.Format(at))));
                    continue;
                }
                (Length from, Length to) = step.Axis == GrainAxis.Across
                    ? (step.Blank.FromAlong, step.Blank.FromAlong + step.Blank.Along)
                    : (step.Blank.FromAcross, step.Blank.FromAcross + step.Blank.Across);
                inner.Add(new(at, axis, from, to, Phrase.Of(bare.Format(position))) { Origin = at - position });
            }
        }
        return (primary.ToImmutable(), inner.ToImmutable());
    }

    private static SheetRect Rect(SheetRectangle place) => new(place.FromAlong, place.FromAcross, place.Along, place.Across);
}
