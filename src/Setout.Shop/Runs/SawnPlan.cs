using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Setout.Core.Measures;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Runs;

/// <summary>Which stock a laid sheet or board is.</summary>
/// <param name="Id">As layouts know it.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Name">Of the blank, or the shop's own; may be empty.</param>
public sealed record SawnStock(string Id, WoodSource Source, string Name)
{
    /// <summary>Of a board that is ripped: its section; null, the default, for all else.</summary>
    public StickSection? Section { get; init; }

    /// <summary>Of a board that is ripped: how wide its lanes are.</summary>
    public Length? Lane { get; init; }

    /// <summary>Of a line of stock.</summary>
    public static SawnStock Of(StockLine line) => new(line.Id,
        line.IsBlank ? WoodSource.Blank : line.Size.InHand is null ? WoodSource.Bought : line.RackPlace is null ? WoodSource.Piece : WoodSource.Rack, line.Size.Name)
    {
        Section = line.Rip is null ? null : line.Section,
        Lane = line.Rip?.LaneWidth,
    };
}

/// <summary>One material of a plan at the saw.</summary>
/// <param name="Name">The piece's own name for it.</param>
/// <param name="IsSheet">True for sheets, false for boards.</param>
/// <param name="Stock">In the order of the layout.</param>
public sealed record SawnMaterial(string Name, bool IsSheet, ImmutableArray<SawnStock> Stock);

/// <summary>What a printed plan says of the work at the saw: enough to tell what a run of it took, made and left.</summary>
/// <param name="Id">
/// Eight hexadecimal digits that tell this plan at the saw from any other: they change with its inputs, with its cuts, and with the wood they are made in. Plans that were searched for
/// a time may have the same inputs and other cuts.
/// </param>
/// <param name="Texts">The figure of its piece file and shop file alone.</param>
/// <param name="Runs">The runs.</param>
/// <param name="Materials">By their index in the runs.</param>
/// <param name="Names">What the pages call each blank, by its id; an empty text where they call it nothing.</param>
public sealed record SawnPlan(string Id, string Texts, RunPlan Runs, ImmutableArray<SawnMaterial> Materials, ImmutableArray<string> Names)
{
    /// <summary>The names of the piece files that are broken down together, in order; empty for one piece.</summary>
    public ImmutableArray<string> Pieces { get; init; } = [];

    /// <summary>Wood that has come into the rack since the plan was made; empty where that is not known.</summary>
    public ImmutableArray<WoodCome> Come { get; init; } = [];

    /// <summary>Of a plan.</summary>
    public static SawnPlan Of(Plan plan)
    {
        ImmutableArray<SawnMaterial> materials =
        [
            .. plan.Sheets.Select(s => new SawnMaterial(s.Material.Name, true, [.. s.Outcome.Layout.Sheets.Select(l => SawnStock.Of(s.Stock.First(k => k.Id == l.StockId)))])),
            .. plan.Boards.Select(b => new SawnMaterial(b.Material.Name, false, [.. b.Outcome.Layout.Boards.Select(l => SawnStock.Of(b.Stock.First(k => k.Id == l.StockId)))])),
        ];
        var names = BlankNames.Of(plan);
        return new(IdOf(plan.Source.Hash, plan.Runs, materials), plan.Source.TextHash, plan.Runs, materials, [.. plan.Runs.Blanks.Select(b => names[b.Id])]) { Pieces = [.. plan.Source.Together?.Members.Select(m => m.File) ?? []] };
    }

    private static string IdOf(string inputs, RunPlan runs, ImmutableArray<SawnMaterial> materials)
    {
        var text = new StringBuilder(inputs);
        foreach (SawnMaterial material in materials) text.Append(CultureInfo.InvariantCulture, $"\n{material.Name}: {string.Join("; ", material.Stock.Select(s => s.Id))}");
        foreach (RunBlank b in runs.Blanks) text.Append(CultureInfo.InvariantCulture, $"\n{b.Material} {b.Stock} {b.Along.Ticks} {b.Across.Ticks} {b.Use} {b.PartId}");
        foreach (Run run in runs.Runs)
            foreach (RunCut c in run.Cuts) text.Append(CultureInfo.InvariantCulture, $"\n{run.Number} {c.Blank} {c.Axis} {c.From} {c.Figure.Ticks} {c.Kerf.Ticks} {c.Off} {c.Rest}");
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..8];
    }

    /// <summary>The run that makes a blank; null for stock.</summary>
    public Run? MadeBy(int blank) => Runs.Runs.FirstOrDefault(r => r.Cuts.Any(c => c.Off == blank || c.Rest == blank));

    /// <summary>Blanks that a run begins to cut, which are there before it. Blanks in hand that need no cut, because they are parts as they are, go with the first run.</summary>
    public ImmutableArray<RunBlank> TakenBy(Run run)
    {
        HashSet<int> made = [.. Made(run)];
        IEnumerable<int> cut = run.Cuts.Select(c => c.Blank).Where(b => !made.Contains(b));
        HashSet<int> later = [.. Runs.Runs.SelectMany(Made)];
        IEnumerable<int> whole = run.Number == Runs.Runs[0].Number ? Runs.Blanks.Where(b => b.Use == BlankUse.Part && !later.Contains(b.Id)).Select(b => b.Id) : [];
        return [.. cut.Concat(whole).Distinct().Order().Select(b => Runs.Blanks[b])];
    }

    /// <summary>What is there after a run that was not there before it, waste included.</summary>
    public ImmutableArray<RunBlank> LeftBy(Run run)
    {
        HashSet<int> cut = [.. run.Cuts.Select(c => c.Blank)];
        return [.. Made(run).Where(b => !cut.Contains(b)).Order().Select(b => Runs.Blanks[b]), .. TakenBy(run).Where(b => b.Use == BlankUse.Part)];
    }

    /// <summary>Sheets and boards of the layouts that the log says are parted: the material and which of its layout, from 0. One that was only trued is still what the layout lies on.</summary>
    public ImmutableHashSet<(string Material, int Stock)> Parted(Log log)
    {
        HashSet<int> marked = [.. log.Standing.OfType<MarkEntry>().Where(e => e.Plan == Id).Select(e => e.Run).OfType<int>()];
        return [.. Runs.Runs.Where(r => marked.Contains(r.Number) && r.Kind != RunKind.True).SelectMany(r => TakenBy(r)).Select(b => (Materials[b.Material].Name, b.Stock))];
    }

    private static IEnumerable<int> Made(Run run) => run.Cuts.SelectMany(c => new[] { c.Off, c.Rest }).OfType<int>();
}
