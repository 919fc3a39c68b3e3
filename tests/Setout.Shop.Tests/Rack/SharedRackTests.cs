using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Runs;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Rack;

/// <summary>
/// Two or three pieces of one shop, planned, cut, read, voided in any order across them: no plan and no run uses a blank or a sheet that is gone or another's, wood is accounted for to the tick by
/// books that know nothing of logs, and the ledger is the same whichever piece is looked at first.
/// </summary>
public sealed class SharedRackTests
{
    private sealed class Tally
    {
        public int Marked, Voided, Held, Read, Plans, WoodGone, FromOthers, Gone;

        public override string ToString() => $"marked {Marked}, voided {Voided}, held by another {Held}, read {Read}, plans {Plans}, wood gone {WoodGone}, blanks of others {FromOthers}, told to be gone {Gone}";
    }

    private sealed class Bench(SawnShop shop)
    {
        public SawnShop Shop { get; } = shop;

        public Plan? Plan { get; set; }

        public SawnPlan? Sawn { get; set; }
    }

    [Fact]
    public void RandomPiecesOfOneShop_AnySequence_WoodAddsUpForAllOfThem()
    {
        var sum = new Tally();
        for (int seed = 1; seed <= 16; seed++) Follow(seed, 26, sum);
        Assert.True(sum is { Marked: > 250, Voided: > 20, Held: > 5, Read: > 20, Plans: > 80, WoodGone: > 5, FromOthers: > 20, Gone: > 10 }, $"{sum}");
    }

    private static void Follow(int seed, int steps, Tally sum)
    {
        var random = new Random(seed);
        Bench[] benches = Shops(seed);
        // All plan by the whole rack, and find it emptied by each other.
        See(benches, random);
        foreach (Bench bench in benches) Plan(bench, sum);
        foreach (Bench bench in benches)
        {
            if (!bench.Sawn!.Runs.Runs.IsEmpty && MustPlanAnew(bench, random, 6, sum)) Plan(bench, sum);
            See(benches, random);
        }
        for (int i = 0; i < steps; i++)
        {
            Bench bench = benches[random.Next(benches.Length)];
            SawnShop shop = bench.Shop;
            See(benches, random);
            int pick = random.Next(12);
            if (pick < 6 && !bench.Sawn!.Runs.Runs.IsEmpty)
            {
                if (MustPlanAnew(bench, random, random.Next(1, 5), sum)) pick = 11;
            }
            else if (pick is 6 or 7)
            {
                string[] there = [.. shop.Entries];
                if (there.Length > 0)
                {
                    // Now and then one that another piece went on with, if there is one.
                    string[] held = [.. shop.Source.Ledger.Gone.Where(g => g.Blank.By.Name == shop.Source.FileName && g.By.Any(t => t.By.Name != g.Blank.By.Name)).Select(g => g.Blank.Entry.Id)];
                    string id = pick == 6 && held.Length > 0 ? held[0] : there[random.Next(there.Length)];
                    bool isHeld = shop.Source.Ledger.Built(shop.Source.InShop, (MarkEntry)shop.Source.Log.Entries.Last(e => e.Id == id)).Any(b => b.By.Name != shop.Source.FileName);
                    if (shop.Void(id)) sum.Voided++;
                    else if (isHeld) sum.Held++;
                }
            }
            else if (pick == 8) Read(shop, random, sum);
            else if (pick == 9 && shop.Kept.Order(StringComparer.Ordinal).ToArray() is { Length: > 0 } kept)
            {
                shop.MarkGone(kept[random.Next(kept.Length)]);
                sum.Gone++;
            }
            See(benches, random);
            AssertOneLedger(benches);
            if (pick < 10) continue;
            Plan(bench, sum);
        }
        foreach (Bench bench in benches)
            if (bench.Shop.Plan() is { Set.IsStopped: false } last) bench.Shop.Check(last);
    }

    // Cuts some runs, most often the next ones, as a person does; true where the plan is of no more use.
    private static bool MustPlanAnew(Bench bench, Random random, int runs, Tally sum)
    {
        for (; runs > 0; runs--)
        {
            int number = random.Next(6) > 0 ? RunMarking.Next(bench.Shop.Source.Log, bench.Sawn!)?.Number ?? 1 : random.Next(1, bench.Sawn!.Runs.Runs.Length + 1);
            string? code = bench.Shop.Mark(bench.Plan!, bench.Sawn!, number);
            if (code is null) sum.Marked++;
            else Assert.Contains(code, (string[])["run.marked", "run.earlier", "run.wood-gone", "run.moved", "run.part-cut"]);
            if (code == "run.wood-gone") sum.WoodGone++;
            if (code is not null) return code is not ("run.marked" or "run.earlier");
        }
        return false;
    }

    private static void Plan(Bench bench, Tally sum)
    {
        bench.Plan = bench.Shop.Plan();
        bench.Sawn = SawnPlan.Of(bench.Plan);
        if (bench.Plan.Set.IsStopped) return;
        bench.Shop.Check(bench.Plan);
        sum.Plans++;
        sum.FromOthers += bench.Plan.Buying.Count(l => l.Item.Contains(", kept from ", StringComparison.Ordinal));
    }

    private static void See(Bench[] benches, Random random)
    {
        foreach (Bench bench in benches)
        {
            SawnShop[] others = [.. benches.Where(b => b != bench).Select(b => b.Shop)];
            random.Shuffle(others);
            bench.Shop.See(others);
        }
    }

    // Whose eyes it is seen with, and in which order, changes nothing.
    private static void AssertOneLedger(Bench[] benches)
    {
        ShopPiece[] pieces = [.. benches.Select(b => b.Shop.Source.InShop)];
        string first = Words(WoodLedger.Of(pieces));
        Assert.Equal(first, Words(WoodLedger.Of(pieces.Reverse())));
        string[] counts = [.. benches.Select(b => string.Join(' ', StockInHand.Lines(b.Shop.Source.Ledger, b.Shop.Source.Shop).Select(l => l.Stock.Size.InHand)))];
        Assert.All(benches, b => Assert.Equal(first, Words(b.Shop.Source.Ledger)));
        Assert.All(counts, c => Assert.Equal(counts[0], c));
        Assert.All(StockInHand.Lines(benches[0].Shop.Source.Ledger, benches[0].Shop.Source.Shop), l => Assert.Empty(l.TooMany));
        Assert.Empty(benches[0].Shop.Source.Ledger.TakenTwice);
        Assert.Empty(benches[0].Shop.Source.Ledger.NamedTwice);
        Assert.Empty(benches[0].Shop.Source.Ledger.Unknown);
    }

    private static string Words(WoodLedger ledger) => string.Join('\n',
    [
        .. ledger.Blanks.Select(b => $"{b.By.Name} {b.Entry.Id} has {b.Name}"), .. ledger.Gone.Select(g => $"{g.Blank.Name} of {g.Blank.By.Name} to {string.Join(' ', g.By.Select(t => $"{t.By.Name} {t.Entry.Id}"))}"),
        .. ledger.Taken.Select(t => $"{t.By.Name} {t.Entry.Id} took {t.Wood.Of} {t.Wood.Name} {t.Wood.Size!.Along}"), .. ledger.Twice.Select(t => $"{t.By.Name} {t.Entry.Id} twice"), .. ledger.Unknown.Select(t => $"{t.By.Name} {t.Entry.Id} unknown"),
    ]);

    private static void Read(SawnShop shop, Random random, Tally sum)
    {
        SetPiece set = shop.Source.SetOut();
        QuantityKey[] open = [.. set.Worked.Order.Where(k => set.Worked.Values[k].Quantity.Scatter == Scatter.Sheet || (k.Text.EndsWith(".width", StringComparison.Ordinal) && set.Worked.Values[k].Quantity.Combining == Combining.Narrowest))];
        if (open.Length == 0) return;
        QuantityKey key = open[random.Next(open.Length)];
        string hash = shop.Source.Hash, texts = shop.Source.TextHash;
        shop.Read(key, set.Worked[key] + ExactLength.FromInches(Rational.Of(random.Next(-2, 3), 128)));
        Assert.Equal((hash, texts), (shop.Source.Hash, shop.Source.TextHash));
        sum.Read++;
    }

    // The second calls one wood as the first calls another, and its entries may have the ids of the first; the third is the first once more, to the last letter.
    private static Bench[] Shops(int seed)
    {
        PieceSource one = RunSequenceTests.Source(seed);
        ImmutableDictionary<string, Material> woods = one.Piece.Materials;
        ImmutableDictionary<string, Material> turned = woods.SetItem("wood", woods["thin"] with { Name = "wood" }).SetItem("thin", woods["wood"] with { Name = "thin" });
        (Piece other, Grid grid) = RandomPieces.Of(seed + 1000);
        // One of each, so that they are in each other's way; or some, so that each finds part of what it counted on.
        int have = seed % 4 == 0 ? 3 : 1;
        ShopStock[] stock = [.. one.Shop.Stock.Select(s => s.Size.InHand is null ? s : s with { Size = s.Size with { InHand = have } }).Select((s, i) => i % 9 == 2 ? s with { For = "second" } : s)];
        PieceSource first = one with { Piece = one.Piece with { Name = "first" }, Shop = one.Shop with { Stock = [.. stock] } };
        PieceSource[] sources =
        [
            first.Beside("first.yaml", []),
            (first with { Piece = other with { Name = "second", Grid = grid, Materials = turned } }).Beside("front.yaml", []),
            .. seed % 2 == 0 ? [first.Beside("copy.yaml", [])] : Array.Empty<PieceSource>(),
        ];
        var books = new ShopBooks();
        return [.. sources.Select(s => new Bench(new(s, books, s.FileName[..1])))];
    }
}
