using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Shop.Plans;
using Setout.Shop.Runs;

namespace Setout.Shop.Drawings;

/// <summary>The first cuts of one sheet as the runs make them: lettered in their order, with the strips that come off and the wood that waits.</summary>
/// <param name="Lettered">The cuts, in the order of the runs; those that wait stand last and have no letters.</param>
/// <param name="Strips">Names of what comes off.</param>
/// <param name="Waiting">What is put aside; empty where nothing is.</param>
internal sealed record FirstCuts(ImmutableArray<PrimaryCut> Lettered, ImmutableArray<StripName> Strips, string Waiting)
{
    private ImmutableArray<SawnLine> Made { get; init; } = [];

    private BlankNames? Names { get; init; }

    private ImmutableArray<RunBlank> Blanks { get; init; } = [];

    private ImmutableArray<SheetRectangle> Whole { get; init; } = [];

    private Length Near { get; init; }

    public static FirstCuts Of(Plan plan, SawnSheets saws, int material, int sheet, ImmutableArray<PrimaryCut> primary)
    {
        LengthFormat bare = LengthFormat.For(plan.Set.Piece.Shown).Bare;
        var made = new List<SawnLine>();
        var matched = new List<(PrimaryCut Cut, SawnLine? Line)>();
        foreach (PrimaryCut cut in primary)
        {
            SawnLine? line = saws.Making(material, sheet, cut.Axis == SheetAxis.Along ? GrainAxis.Across : GrainAxis.Along, cut.At, made);
            if (line is not null) made.Add(line);
            // A rough cut runs beyond the line of the layout, and both are measured from the same edge: the tick stands where the run sets it.
            matched.Add((line is { Run.Kind: RunKind.Rough } ? cut with { At = line.At, Figure = Phrase.Of(bare.Format(line.At)) } : cut, line));
        }
        matched = [.. matched.OrderBy(m => m.Line?.Turn ?? int.MaxValue)];
        SawnLine[] inTurn = [.. matched.Select(m => m.Line).OfType<SawnLine>()];
        ImmutableArray<RunBlank> blanks = plan.Runs.Blanks;
        RunBlank[] own = [.. blanks.Where(b => b.Material == material && b.Stock == sheet)];
        RunBlank[] waiting = [.. own.Where(b => b.Use == BlankUse.Waiting || (b.Use == BlankUse.Stock && !b.Waiting.IsEmpty))];
        string words = waiting.Length == 0 ? "" : $"marks that slant wait for a reading: their wood stays whole ({string.Join(", ", waiting.Select(b => saws.Names.Spoken(b.Id)).Distinct())})";
        var first = new FirstCuts([], Strip(saws, blanks, inTurn), words)
        {
            Made = [.. inTurn],
            Names = saws.Names,
            Blanks = blanks,
            Whole = [.. waiting.Select(b => saws.PlaceOf(b.Id)).OfType<SheetRectangle>()],
            Near = plan.Sheets[material].Instance.Kerf * 2,
        };
        ImmutableArray<PrimaryCut> later = [.. matched.Where(m => m.Line is null && first.IsInWaiting(m.Cut.Axis, m.Cut.At, null)).Select(m => m.Cut with { Letter = "", IsWaiting = true })];
        return first with { Lettered = [.. matched.Where(m => m.Line is not null || !first.IsInWaiting(m.Cut.Axis, m.Cut.At, null)).Select((m, i) => m.Cut with { Letter = Plans.Letters.Lower(i) }), .. later] };
    }

    /// <summary>Whether a cut inside a strip lies in wood that waits.</summary>
    public bool IsWaiting(InnerCut cut) => IsInWaiting(cut.Axis, cut.At, cut.From + cut.To);

    // Saws with thinner blades than the layout has room for leave wood a little aside of its place there.
    private bool IsInWaiting(SheetAxis axis, Length at, Length? twiceMiddle) => Whole.Any(w => axis == SheetAxis.Across
        ? at > w.FromAlong + Near && at < w.FromAlong + w.Along && (twiceMiddle is not { } y || (y > w.FromAcross * 2 && y < (w.FromAcross + w.Across) * 2))
        : at > w.FromAcross + Near && at < w.FromAcross + w.Across && (twiceMiddle is not { } x || (x > w.FromAlong * 2 && x < (w.FromAlong + w.Along) * 2)));

    /// <summary>Such as <c>run 2: a 23 1/4 wide (A.1); run 4: b and c 11 3/4 wide (A.2, A.3)</c>; null where no run makes a first cut.</summary>
    public Phrase? Words(LengthFormat bare)
    {
        if (Made.IsEmpty || Names is not { } names) return null;
        Phrase words = Phrase.Empty;
        int at = 0;
        foreach (IGrouping<int, SawnLine> run in Made.GroupBy(m => m.Run.Number))
        {
            SawnLine first = run.First();
            int count = run.Count();
            string letters = count switch { 1 => Lettered[at].Letter, 2 => $"{Lettered[at].Letter} and {Lettered[at + 1].Letter}", _ => $"{Lettered[at].Letter} to {Lettered[at + count - 1].Letter}" };
            string[] off = [.. run.Where(l => l.Cut.Off is { } id && Blanks[id].Use is BlankUse.Work or BlankUse.Keep or BlankUse.Waiting).Select(l => names[l.Cut.Off!.Value])];
            words = words.Add($"{(at > 0 ? "; " : "")}run {run.Key}: {letters} ").Add(bare.Format(first.Cut.Figure)).Add(first.Cut.Axis == GrainAxis.Across ? " wide" : " long");
            if (off.Length > 0) words = words.Add($" ({string.Join(", ", off)})");
            at += count;
        }
        return words;
    }

    // What the first cuts leave that none of them cuts again.
    private static ImmutableArray<StripName> Strip(SawnSheets saws, ImmutableArray<RunBlank> blanks, SawnLine[] made)
    {
        HashSet<int> cut = [.. made.Select(m => m.Cut.Blank)];
        var strips = ImmutableArray.CreateBuilder<StripName>();
        foreach (SawnLine line in made)
        {
            foreach (int id in new[] { line.Cut.Off, line.Cut.Rest }.OfType<int>().Where(id => !cut.Contains(id) && blanks[id].Use is BlankUse.Work or BlankUse.Keep or BlankUse.Waiting))
            {
                if (saws.PlaceOf(id) is not { } place || saws.Names[id].Length == 0) continue;
                strips.Add(line.Cut.Axis == GrainAxis.Across
                    ? new(saws.Names[id], SheetAxis.Along, place.FromAcross, place.FromAcross + place.Across)
                    : new(saws.Names[id], SheetAxis.Across, place.FromAlong, place.FromAlong + place.Along));
            }
        }
        return strips.ToImmutable();
    }
}
