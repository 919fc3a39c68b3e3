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
        [.. Kept(source, set, sheets, boards), .. Taken(source, set, sheets, boards), .. Readings(source, set, sheets), .. Ledger(source), .. source.Unread];

    private static IEnumerable<Finding> Kept(PieceSource source, SetPiece set, ImmutableArray<SheetPlan> sheets, ImmutableArray<BoardPlan> boards)
    {
        Texts.Shop shop = source.Shop;
        if (shop.Stock.All(s => StockInHand.IsFor(s, source.Piece))) yield break;
        // The rack as it would be if nothing were kept for anybody.
        Texts.Shop open = shop with { Stock = [.. StockInHand.Lines(source.Ledger, shop).Select(l => l.Stock)] };
        foreach (Material material in Uncut(set))
        {
            foreach (StockLine line in Helping(material, open, set, shop, sheets, boards).Where(l => !StockInHand.IsFor(shop.Stock[l.RackPlace!.Value], source.Piece)))
            {
                string kept = shop.Stock[line.RackPlace!.Value].For;
                yield return new("rack.kept", Severity.Note, material.Name, $"{line.Words} of {material.Name} is kept for {kept}: it is left out here, where wood has to be bought that it could have saved.",
                    $"Take 'for' off its line in {source.Piece.Hand.Shop} if it may be used here.", material.Place);
            }
        }
    }

    // One note for each wood, however many lines of it are short.
    private static IEnumerable<Finding> Taken(PieceSource source, SetPiece set, ImmutableArray<SheetPlan> sheets, ImmutableArray<BoardPlan> boards)
    {
        Texts.Shop shop = source.Shop;
        if (source.Others.IsEmpty) yield break;
        ImmutableArray<RackLine> lines = StockInHand.Lines(source.Ledger, shop);
        ShopPiece[] TakersOf(int place) => StockInHand.IsFor(shop.Stock[place], source.Piece) ? [.. lines[place].TakenBy.Select(t => t.By).Where(b => b.Name != source.FileName)] : [];
        // The rack as if it held what the others took, and nothing else.
        Texts.Shop taken = shop with { Stock = [.. lines.Select((l, i) => l.Stock.Size.InHand is null ? l.Stock : l.Stock with { Size = l.Stock.Size with { InHand = TakersOf(i).Length } })] };
        foreach (Material material in Uncut(set))
        {
            string[] said =
            [
                .. Helping(material, taken, set, shop, sheets, boards).Select(l =>
                {
                    ShopPiece[] by = TakersOf(l.RackPlace!.Value);
                    int had = shop.Stock[l.RackPlace.Value].Size.InHand!.Value;
                    return $"{l.Words}: {(had > 1 ? $"{by.Length} of {had} " : "")}taken for {Runs.CutLines.List(by.Select(b => b.Spoken(source.Piece)).Distinct())}";
                }),
            ];
            if (said.Length == 0) continue;
            bool isShort = sheets.Any(p => p.Material.Name == material.Name && !p.Outcome.Layout.LeftOut.IsEmpty) || boards.Any(p => p.Material.Name == material.Name && !p.Outcome.Layout.LeftOut.IsEmpty);
            yield return new("rack.taken", Severity.Note, material.Name, $"{material.Name} of the rack: {string.Join("; ", said)}. {(isShort ? "Wood is short here that this could have been" : "Wood has to be bought here that this could have saved")}.",
                "If it still stands there, void the entry that took it, or count again and write the day ('counted').", material.Place);
        }
    }

    private static IEnumerable<Material> Uncut(SetPiece set) => set.Parts.Where(p => set.Facts.CutOf(p) < p.Count).Select(p => p.Material).Distinct().Select(m => set.Piece.Materials[m]);

    // Lines of a rack other than the plan's that a part could have come from which has to be bought, or is left out.
    private static IEnumerable<StockLine> Helping(Material material, Texts.Shop rack, SetPiece set, Texts.Shop shop, ImmutableArray<SheetPlan> sheets, ImmutableArray<BoardPlan> boards)
    {
        SheetPlan? sheet = sheets.FirstOrDefault(p => p.Material.Name == material.Name);
        BoardPlan? board = boards.FirstOrDefault(p => p.Material.Name == material.Name);
        return StockOffers.For(material, rack, set).Where(l => l is { RackPlace: not null, Size.InHand: > 0 } && (sheet is not null ? Helps(l, sheet, shop) : board is null || Helps(l, board, shop)));
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
                string Say(ExactLength length) => $"{SumFigure.Of(length, set.Piece.Shown)} {set.Piece.Shown.Mark}";
                // What is typed is the value itself.
                string Typed(ExactLength length) => SumFigure.Of(length, set.Piece.Shown).IsNear ? NamedLength.Exactly(length) : Say(length);
                yield return new("rack.reads-otherwise", Severity.Note, plan.Material.Name,
                    $"{line.Words} of {plan.Material.Name}: that is {Say(far)} {(off.Sign < 0 ? "thinner" : "thicker")} than the {Say(thickness.Value)} that the sizes go by, more than sheets of one lot differ.",
                    thickness.Pin is null ? source.Piece.Hand.Say($"Record it if all parts of {plan.Material.Name} come from such sheets: setout record FILE {key} {Typed(line.Reads.Value)} --with calliper.", $"If all parts of {plan.Material.Name} come from such sheets, enter {Typed(line.Reads.Value)} at {Hands.Place(thickness.Quantity.Name)}.") : "Use another sheet, or read the lot again.", plan.Material.Place);
            }
        }
    }

    private static IEnumerable<Finding> Ledger(PieceSource source)
    {
        WoodLedger ledger = source.Ledger;
        string own = source.FileName;
        foreach (LoggedMark mark in ledger.Twice.Where(t => t.By.Name == own))
            yield return new("log.run-twice", Severity.Warn, "", $"Run {mark.Entry.Run} of plan {mark.Entry.Plan} is marked once more, {Say(mark.Entry)}; its wood counts once.", $"Void one of the two entries{source.Piece.Hand.Void(mark.Entry.Id)}.");
        foreach (TakenByPiece taken in ledger.Unknown.Where(t => t.By.Name == own))
            yield return new("log.blank-unknown", Severity.Warn, taken.Wood.Of, $"The mark of {Say(taken.Entry)} took the blank {taken.Wood.Name}, which no mark left that stands.", $"Void it too if it was not cut{source.Piece.Hand.Void(taken.Entry.Id)}; or void the voiding of the mark that left it.");
        // By its time, as what was read and marked lists it; whoever types a command needs the id.
        string Say(LogEntry entry) => EntryTime.Say(entry.At);
        string Ids(IEnumerable<TakenByPiece> of) => source.Piece.Hand.Say($": {Runs.CutLines.List(of.Select(t => t.Entry.Id).Distinct())}", "");
        string By(ShopPiece piece) => piece.Name == own ? "" : $" of {piece.Spoken(source.Piece)}";
        foreach ((LeftBlank blank, var by) in ledger.TakenTwice.Where(t => t.Blank.By.Name == own || t.By.Any(b => b.By.Name == own)))
            yield return new("log.blank-taken-twice", Severity.Warn, blank.By.Name == own ? blank.Wood.Of : "", $"The blank {blank.Name} was taken by {Runs.CutLines.List(by.Select(t => $"the mark of {Say(t.Entry)}{By(t.By)}"))}: one of them at most is so.", $"Void those that are not so{Ids(by)}.");
        LengthFormat format = LengthFormat.For(source.Piece.Shown);
        foreach (RackLine line in StockInHand.Lines(ledger, source.Shop).Where(l => l.TooMany.Concat(l.TakenBy).Any(t => t.By.Name == own) && !l.TooMany.IsEmpty))
        {
            StockSize size = line.Stock.Size;
            string what = size.Name.Length > 0 ? size.Name : size.Across is { } across ? $"{format.Bare.Text(size.Along)} x {format.Text(across)}" : format.Text(size.Along);
            TakenByPiece[] all = [.. line.TakenBy, .. line.TooMany];
            yield return new("log.rack-overdrawn", Severity.Warn, "", $"{what} of the rack: {line.TakenBy.Length} had been counted, and {all.Length} were taken, by {Runs.CutLines.List(all.Select(t => $"the mark of {Say(t.Entry)}{By(t.By)}").Distinct())}. The line counts as empty.",
                $"Void what was not cut{Ids(all)}, or count the rack again and write the day ('counted').");
        }
        foreach (ImmutableArray<LeftBlank> named in ledger.NamedTwice.Where(n => n.Any(b => b.By.Name == own)))
            yield return new("log.blank-named-twice", Severity.Warn, named.First(b => b.By.Name == own).Wood.Of, $"{Edits.Fillings.Capital(Runs.CutLines.List(named.Select(b => $"the mark of {Say(b.Entry)}{By(b.By)}")))} left a blank called {named[0].Name}: two pieces of wood with one name.",
                "Chalk the name of its piece on each; what others keep under that name is not offered here.");
        foreach (LeftWood left in ledger.Blanks.Where(b => b.By.Name == own).Select(b => b.Wood).Where(b => source.Piece.Materials.GetValueOrDefault(b.Of) is not { } material || (material is Panel) == (b.Size.Across is null)))
            yield return new("log.wood-unknown", Severity.Note, left.Of, $"The log left the blank {left.Name} of {left.Of}, which is no such wood of the piece file: it is not used.", "Call the wood what the log calls it.");
    }
}
