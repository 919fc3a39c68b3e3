using System.Collections.Immutable;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Shop.Runs;

/// <summary>Whether the wood that a run begins to cut is still there: another plan, another piece of the shop, or a hand that wrote a log may have taken it since the plan was made.</summary>
internal static class WoodInHand
{
    /// <summary>The first wood that is not there, as the end of a sentence, and what to do; null when all is.</summary>
    /// <param name="source">The texts as they are now.</param>
    /// <param name="set">The piece set out from them.</param>
    /// <param name="took">What the run begins to cut.</param>
    public static (string Words, string Remedy)? Missing(PieceSource source, SetPiece set, ImmutableArray<TakenWood> took)
    {
        WoodLedger ledger = source.Ledger;
        HashSet<string> blanks = [.. ledger.For(source.FileName).Select(b => b.Name)];
        foreach (TakenWood wood in took.Where(w => w.Source == WoodSource.Blank))
            if (!blanks.Contains(wood.Name)) return Gone(source, wood, [.. ledger.TakersOf(wood.Name)]);
        Texts.Shop shop = source.ShopInHand;
        // Several of one line may go with one run.
        foreach (var alike in took.Where(w => w.Source is WoodSource.Rack or WoodSource.Piece).GroupBy(w => (w.Of, w.Source, w.Name, w.Size!.Along, w.Size.Across, w.Size.Section)))
        {
            StockLine[] lines = Lines(shop, set, alike.First());
            if (lines.Sum(l => l.Size.InHand!.Value) < alike.Count()) return Gone(source, alike.First(), Takers(source, ledger, alike.First()));
            // Lines that differ by their flaws alone are other boards, where the shop file still tells the flaws that the plan knew.
            foreach (var flawed in alike.GroupBy(w => Flaws(w.Size!.Flaws)))
            {
                bool HasThem(StockLine line) => Flaws(line.Size.Flaws) == flawed.Key;
                if (lines.Where(HasThem).Sum(l => l.Size.InHand!.Value) < flawed.Count() && Lines(source.Shop, set, flawed.First()).Any(HasThem)) return Gone(source, flawed.First(), Takers(source, ledger, flawed.First()));
            }
        }
        return null;
    }

    /// <summary>How many there are of some wood of the rack, flaws and all.</summary>
    /// <param name="shop">The rack as it stands for the piece.</param>
    /// <param name="set">The piece.</param>
    /// <param name="wood">What is wanted.</param>
    public static int CountOf(Texts.Shop shop, SetPiece set, TakenWood wood) => Lines(shop, set, wood).Where(l => Flaws(l.Size.Flaws) == Flaws(wood.Size!.Flaws)).Sum(l => l.Size.InHand!.Value);

    private static StockLine[] Lines(Texts.Shop of, SetPiece set, TakenWood wood) => [.. StockOffers.For(set.Piece.Materials[wood.Of], of, set).Where(l => !l.IsBlank && Is(l, wood))];

    private static string Flaws(ImmutableArray<Flaw> flaws) => string.Join(", ", flaws.Select(f => (f.From.Ticks, f.To.Ticks)).Order());

    private static bool Is(StockLine line, TakenWood wood) => line.Size.InHand is not null && (line.RackPlace is null ? WoodSource.Piece : WoodSource.Rack) == wood.Source
        && (line.Size.Along, line.Size.Across, line.Size.Name) == (wood.Size!.Along, wood.Size.Across, wood.Name) && (line.Rip is null ? null : line.Section) == wood.Size.Section;

    private static TakenByPiece[] Takers(PieceSource source, WoodLedger ledger, TakenWood wood)
    {
        string? Identity(Piece piece, TakenWood of) => StockInHand.IdentityOf(piece, of.Of, of.Size!.Section);
        string? identity = Identity(source.Piece, wood);
        return
        [
            .. ledger.Taken.Where(t => t.Wood.Source == WoodSource.Rack && t.Wood.Name == wood.Name && (t.Wood.Size!.Along, t.Wood.Size.Across) == (wood.Size!.Along, wood.Size.Across) && Identity(t.By.Piece, t.Wood) == identity),
            .. ledger.TakersOf(wood.Name).Where(t => t.Wood.Source == WoodSource.Blank),
        ];
    }

    private static (string, string) Gone(PieceSource source, TakenWood wood, TakenByPiece[] takers)
    {
        string words = $"{(wood.Name.Length > 0 ? wood.Name : "stock")} of {wood.Of}, which is gone by the log";
        TakenByPiece[] others = [.. takers.Where(t => t.By.Name != source.FileName).DistinctBy(t => (t.By.Name, t.Entry.Id))];
        if (others.Length == 0) return (words + ".", $"{RunMarking.Anew(source.Piece)}; or void the entry that took it.");
        string by = CutLines.List(others.Select(t => $"the mark of {EntryTime.Say(t.Entry.At)} for {t.By.Spoken(source.Piece)}"));
        return ($"{words}: {by} took {(takers.Length == others.Length ? "it" : "of it")}.", $"{RunMarking.Anew(source.Piece)}; or void that mark if it was not cut{source.Piece.Hand.Say($": setout void {others[^1].By.Name} {others[^1].Entry.Id}", $", among what was read and marked for {others[^1].By.Spoken(source.Piece)}")}.");
    }
}
