using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Sheets;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>What there is to say about the rack beside the layouts: wood kept for another piece, a sheet that reads otherwise, a log that does not add up.</summary>
internal static class RackFindings
{
    public static IEnumerable<Finding> Of(PieceSource source, SetPiece set, ImmutableArray<SheetPlan> sheets, ImmutableArray<BoardPlan> boards) =>
        [.. Kept(source, set, sheets, boards), .. Readings(source, set, sheets), .. Ledger(source)];

    private static IEnumerable<Finding> Kept(PieceSource source, SetPiece set, ImmutableArray<SheetPlan> sheets, ImmutableArray<BoardPlan> boards)
    {
        Texts.Shop shop = source.Shop;
        if (shop.Stock.All(s => StockInHand.IsFor(s, source.Piece))) yield break;
        // The rack as it would be if nothing were kept for anybody.
        Texts.Shop open = StockInHand.Of(source.Piece, source.Log, shop with { Stock = [.. shop.Stock.Select(s => s with { For = "" })] });
        foreach (Material material in set.Parts.Where(p => set.Facts.CutOf(p) < p.Count).Select(p => p.Material).Distinct().Select(m => set.Piece.Materials[m]))
        {
            SheetPlan? sheet = sheets.FirstOrDefault(p => p.Material.Name == material.Name);
            BoardPlan? board = boards.FirstOrDefault(p => p.Material.Name == material.Name);
            foreach (StockLine line in StockOffers.For(material, open, set).Where(l => l is { RackPlace: { } place, Size.InHand: > 0 } && place < shop.Stock.Length && !StockInHand.IsFor(shop.Stock[place], source.Piece)))
            {
                if (sheet is not null ? !Helps(line, sheet, shop) : board is not null && !Helps(line, board, shop)) continue;
                string kept = shop.Stock[line.RackPlace!.Value].For;
                yield return new("rack.kept", Severity.Note, material.Name, $"{line.Words} of {material.Name} is kept for {kept}: it is left out here, where wood has to be bought that it could have saved.",
                    "Take 'for' off its line in the shop file if it may be used here.", material.Place);
            }
        }
    }

    private static bool Helps(StockLine line, SheetPlan plan, Texts.Shop shop)
    {
        SheetStock there = StockOffers.Sheets([line], false, shop.SheetTrim)[0];
        HashSet<string> open = [.. plan.Outcome.Layout.LeftOut.Select(l => l.PartId), .. plan.Outcome.Layout.Sheets.Where(s => IsBought(plan.Stock, s.StockId)).SelectMany(s => SheetFace.Flatten(plan.Instance, s)).Where(p => p.Kind == FaceKind.Part).Select(p => p.PartId)];
        return StockOffers.Survives(line, shop.SheetTrim, shop.SheetSlack) && plan.Instance.Parts.Any(p => open.Contains(p.Id) && Enum.GetValues<Turn>().Any(t => plan.Instance.Fits(p, t, there)));
    }

    private static bool Helps(StockLine line, BoardPlan plan, Texts.Shop shop)
    {
        if (!StockOffers.Survives(line, shop.BoardTrim, Length.Zero)) return false;
        Length longest = StockOffers.Clear(line, shop.BoardTrim).DefaultIfEmpty(Length.Zero).Max();
        HashSet<string> open = [.. plan.Outcome.Layout.LeftOut.Select(l => l.PartId), .. plan.Outcome.Layout.Boards.Where(b => IsBought(plan.Stock, b.StockId)).SelectMany(b => b.PartIds)];
        return plan.Instance.Parts.Any(p => open.Contains(p.Id) && p.Length <= longest);
    }

    private static bool IsBought(ImmutableArray<StockLine> lines, string id) => lines.First(l => l.Id == id).Size.InHand is null;

    // Sizes go by the thickness of the material: a sheet that reads otherwise is told, not followed.
    private static IEnumerable<Finding> Readings(PieceSource source, SetPiece set, ImmutableArray<SheetPlan> sheets)
    {
        foreach (SheetPlan plan in sheets)
        {
            QuantityKey key = QuantityKey.Of(plan.Material.Name, "thickness");
            Worked thickness = set.Worked.Values[key];
            HashSet<string> used = [.. plan.Outcome.Layout.Sheets.Select(s => s.StockId)];
            foreach (StockLine line in plan.Stock.Where(l => l.Reads is not null && used.Contains(l.Id)))
            {
                ExactLength off = line.Reads!.Value - thickness.Value;
                ExactLength far = off.Sign < 0 ? -off : off;
                if (far <= source.Shop.Accuracy.Sheet.ToExact()) continue;
                string Say(ExactLength length) => $"{WorkingLines.Figure(length, set.Piece.Unit)} {(set.Piece.Unit == LengthUnit.Inch ? "in" : "mm")}";
                yield return new("rack.reads-otherwise", Severity.Note, plan.Material.Name,
                    $"{line.Words} of {plan.Material.Name}: that is {Say(far)} {(off.Sign < 0 ? "thinner" : "thicker")} than the {Say(thickness.Value)} that the sizes go by, more than sheets of one lot differ.",
                    thickness.Pin is null ? $"Record it if all parts of {plan.Material.Name} come from such sheets: setout record FILE {key} {Say(line.Reads.Value)} --with calliper." : "Use another sheet, or read the lot again.", plan.Material.Place);
            }
        }
    }

    private static IEnumerable<Finding> Ledger(PieceSource source)
    {
        WoodLedger ledger = WoodLedger.Of(source.Log);
        foreach (MarkEntry entry in ledger.Twice)
            yield return new("log.run-twice", Severity.Warn, "", $"Run {entry.Run} of plan {entry.Plan} is marked once more by entry {entry.Id}; its wood counts once.", $"Void one of the two entries: setout void FILE {entry.Id}.");
        foreach ((TakenWood wood, MarkEntry entry) in ledger.Unknown)
            yield return new("log.blank-unknown", Severity.Warn, wood.Of, $"Entry {entry.Id} took the blank {wood.Name}, which no entry left that stands.", "Void it too if it was not cut, or void the voiding of the entry that left it.");
        foreach (LeftWood left in ledger.Blanks.Where(b => source.Piece.Materials.GetValueOrDefault(b.Of) is not { } material || (material is Panel) == (b.Size.Across is null)))
            yield return new("log.wood-unknown", Severity.Note, left.Of, $"The log left the blank {left.Name} of {left.Of}, which is no such wood of the piece file: it is not used.", "Call the wood what the log calls it.");
    }
}
