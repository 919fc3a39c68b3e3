using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Cutting.Runs;

namespace Setout.Shop.Plans;

/// <summary>Adds up what the layouts and the hardware ask for, as a supplier sells it.</summary>
internal static class BuyingList
{
    public static ImmutableArray<BuyingLine> Of(SetPiece set, Texts.Shop shop, ImmutableArray<SheetPlan> sheets, ImmutableArray<BoardPlan> boards, RunPlan runs)
    {
        var bought = ImmutableArray.CreateBuilder<BuyingLine>();
        var taken = new List<BuyingLine>();
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        foreach ((int i, SheetPlan plan) in sheets.Index())
            Stock(plan.Stock, plan.Outcome.Layout.Sheets.Select(s => s.StockId), BuyingKind.Sheet, plan.Material, "sheet", SpareWood.Of(plan, runs, i, format), set, bought, taken);
        foreach ((int i, BoardPlan plan) in boards.Index())
            Stock(plan.Stock, plan.Outcome.Layout.Boards.Select(b => b.StockId), BuyingKind.Board, plan.Material, "board", SpareWood.Of(plan, runs, sheets.Length + i, format), set, bought, taken, Capital(plan.Material.Kind));
        foreach (var group in ThingsToBuy.Of(set).GroupBy(h => (h.Name, h.Unit, h.MarkedBy)).OrderBy(g => g.Key.Unit == "pair" ? 0 : g.Key.Name == ThingsToBuy.Glue ? 2 : 1).ThenBy(g => g.Key.Name, StringComparer.Ordinal))
        {
            Money? price = shop.Prices.TryGetValue(group.Key.Name, out Money known) ? known : null;
            bought.Add(Packed(shop, new(BuyingKind.Hardware, group.Key.Name, group.Sum(h => h.Count), group.Key.Unit, price, group.Key.Name == ThingsToBuy.Glue ? group.First().Source : "") { Thing = group.Key.MarkedBy }));
        }
        return [.. bought, .. taken];
    }

    // What comes in packs is counted in whole ones, and what is over is told.
    private static BuyingLine Packed(Texts.Shop shop, BuyingLine line)
    {
        if (!shop.Packs.TryGetValue(line.Item, out int pack)) return line;
        int packs = ((line.Count - 1) / pack) + 1, over = (packs * pack) - line.Count;
        string each = line.Unit == "piece" ? $"{pack}" : $"{pack} {(line with { Count = pack }).Units}";
        return line with { Item = $"{line.Item}, {each} in a pack", Count = packs, Unit = "pack", Spare = over > 0 ? $"{line.Count} needed, {over} spare" : "" };
    }

    /// <summary>What to ask a supplier for.</summary>
    internal static string Words(Material material) => material switch
    {
        Panel { Label.Length: > 0 } panel => $"{Capital(panel.Kind)} {panel.Label}{(panel.Label.Contains("mm", StringComparison.Ordinal) ? "" : " in")}",
        Panel panel => Capital(panel.Kind),
        Stick { Nominal.Length: > 0 } stick => $"{Capital(stick.Kind)} {stick.Nominal}",
        Stick stick => $"{Capital(stick.Kind)}, {stick.Name}",
        _ => material.Name,
    };

    private static string Capital(string text) => text == "mdf" ? "MDF" : Edits.Fillings.Capital(text);

    private static void Stock(
        ImmutableArray<StockLine> lines, IEnumerable<string> used, BuyingKind kind, Material material, string unit, ILookup<string, string> kept, SetPiece set,
        ImmutableArray<BuyingLine>.Builder bought, List<BuyingLine> taken, string wood = "")
    {
        ILookup<string, string> counts = used.ToLookup(id => id);
        foreach (StockLine line in lines)
        {
            int count = counts[line.Id].Count();
            if (count == 0) continue;
            // A board to rip has another section than the material: its own words tell it.
            string item = $"{(line.Rip is null ? Words(material) : wood)}, {line.Task}";
            string spare = SpareWood.Words(kept[line.Id]);
            // Marked bought, and more is asked for: an edit came after it, or what was bought was never counted in.
            string more = line.Size.InHand is null && set.Facts.Bought.Contains(material.Name)
                ? $"{count} {(count == 1 ? unit : unit + "s")} more: {material.Name} is marked bought, and {(lines.Any(l => l.Size.InHand > 0) ? "the rack does not hold enough of it" : "the rack holds none of it; count in what is there")}" : "";
            if (line.Size.InHand is null) Add(bought, new(kind, item, count, unit, line.Size.Price, "") { Spare = spare, More = more, Wood = line.Rip is null ? new(Texts.MaterialIdentity.Of(material), line.Size) : null, Of = [material.Name] });
            else Add(taken, new(BuyingKind.FromTheRack, item, count, unit, Money.Zero, line.IsBlank ? "left by an earlier run" : "from the rack") { Spare = spare });
        }
    }

    private static string Both(string one, string other) => string.Join("; ", new[] { one, other }.Where(s => s.Length > 0));

    // What two materials take of one thing is one line.
    private static void Add(IList<BuyingLine> lines, BuyingLine line)
    {
        for (int i = 0; i < lines.Count; i++)
        {
            if (lines[i] with { Count = line.Count, Spare = line.Spare, More = line.More, Of = line.Of } != line) continue;
            lines[i] = line with { Count = lines[i].Count + line.Count, Of = lines[i].Of.AddRange(line.Of), Spare = Both(lines[i].Spare, line.Spare), More = Both(lines[i].More, line.More) };
            return;
        }
        lines.Add(line);
    }
}
