using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Runs;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Rack;

/// <summary>Runs marked, readings taken, entries voided, plans made again, in any order: no plan asks for wood that is gone or lays a part that is cut, and all wood is accounted for.</summary>
public sealed class RunSequenceTests
{
    private sealed record Tally(int Marked, int Voided, int Read, int Plans, int Refused, int FromBlanks);

    private static Tally Follow(PieceSource source, int seed, int steps)
    {
        var random = new Random(seed);
        var shop = new SawnShop(source);
        Plan plan = shop.Plan();
        shop.Check(plan);
        var sawn = SawnPlan.Of(plan);
        int marked = 0, voided = 0, read = 0, plans = 1, refused = 0, fromBlanks = 0;
        for (int i = 0; i < steps; i++)
        {
            int pick = random.Next(10);
            if (pick < 6 && !sawn.Runs.Runs.IsEmpty)
            {
                // Most often the next one, as a person does.
                int number = random.Next(4) > 0 ? RunMarking.Next(shop.Source.Log, sawn)?.Number ?? 1 : random.Next(1, sawn.Runs.Runs.Length + 1);
                string? code = shop.Mark(plan, sawn, number);
                if (code is null) marked++;
                else
                {
                    Assert.Contains(code, (string[])["run.marked", "run.earlier", "run.wood-gone", "run.moved", "run.part-cut"]);
                    refused++;
                    // A run whose figures moved, or whose wood is gone, needs a plan anew.
                    if (code is not ("run.marked" or "run.earlier")) pick = 9;
                }
            }
            else if (pick == 6)
            {
                string[] there = [.. shop.Entries];
                if (there.Length > 0 && shop.Void(there[random.Next(there.Length)])) voided++;
            }
            else if (pick == 7)
            {
                SetPiece set = shop.Source.SetOut();
                QuantityKey[] open = [.. set.Worked.Order.Where(k => set.Worked.Values[k].Quantity.Scatter == Scatter.Sheet || (k.Text.EndsWith(".width", StringComparison.Ordinal) && set.Worked.Values[k].Quantity.Combining == Combining.Narrowest))];
                if (open.Length == 0) continue;
                QuantityKey key = open[random.Next(open.Length)];
                shop.Read(key, set.Worked[key] + ExactLength.FromInches(Rational.Of(random.Next(-2, 3), 128)));
                read++;
            }
            if (pick < 8) continue;
            plan = shop.Plan();
            if (plan.IsStopped && plan.Sheets.IsEmpty && plan.Boards.IsEmpty && plan.Set.IsStopped) return new(marked, voided, read, plans, refused, fromBlanks);
            shop.Check(plan);
            sawn = SawnPlan.Of(plan);
            plans++;
            fromBlanks += sawn.Materials.Sum(m => m.Stock.Count(s => s.Source == WoodSource.Blank));
        }
        // All that is left is cut to the end.
        shop.Check(shop.Plan());
        return new(marked, voided, read, plans, refused, fromBlanks);
    }

    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void Samples_AnySequence_WoodAndPartsAddUp(string name)
    {
        Tally sum = Follow(Sample.Source(name), name.Length, 24);
        Assert.True(sum.Marked > 3, $"{sum}");
    }

    [Fact]
    public void RandomPieces_AnySequence_WoodAndPartsAddUp()
    {
        Tally sum = Followed(Enumerable.Range(1, 40).Select(seed => (Source(seed), seed)));
        Assert.True(sum is { Marked: > 100, Voided: > 20, Read: > 10, Plans: > 60, Refused: > 10, FromBlanks: > 20 }, $"{sum}");
    }

    /// <summary>Several pieces broken down together: each entry goes into the log of each piece that has a part in it, and read together they are one again.</summary>
    [Fact]
    public void PiecesTogether_AnySequence_WoodAndPartsAddUp()
    {
        Tally sum = Followed(Enumerable.Range(1, 20).Select(seed => (Together(seed), seed)));
        Assert.True(sum is { Marked: > 60, Voided: > 5, Read: > 5, Plans: > 30, FromBlanks: > 10 }, $"{sum}");
    }

    private static PieceSource Together(int seed)
    {
        PieceSource one = Source(seed);
        // Another piece in the same unit, with the shop of the first: some woods of both are alike.
        PieceSource other = Enumerable.Range(seed + 100, 50).Select(Source).First(s => s.Piece.Unit == one.Piece.Unit && s.Piece.Members.Length > 0);
        Setout.Shop.Texts.Shop shop = one.Shop with { Stock = [.. one.Shop.Stock, .. other.Shop.Stock.Where(s => one.Shop.Stock.All(o => o.Identity != s.Identity))] };
        return PiecesTogether.Of([("one.yaml", Named(one, "One piece", shop)), ("other.yaml", Named(other, "Other piece", shop))]).Source!;
    }

    private static PieceSource Named(PieceSource source, string name, Setout.Shop.Texts.Shop shop) => new(source.Piece with { Name = name }, Log.Empty, shop, source.Hash);

    private static Tally Followed(IEnumerable<(PieceSource Source, int Seed)> each)
    {
        Tally sum = new(0, 0, 0, 0, 0, 0);
        foreach ((PieceSource source, int seed) in each)
        {
            Tally one = Follow(source, seed, 16);
            sum = new(sum.Marked + one.Marked, sum.Voided + one.Voided, sum.Read + one.Read, sum.Plans + one.Plans, sum.Refused + one.Refused, sum.FromBlanks + one.FromBlanks);
        }
        return sum;
    }

    /// <summary>A random piece with a rack and a yard for its woods.</summary>
    internal static PieceSource Source(int seed)
    {
        (Piece piece, Grid grid) = RandomPieces.Of(seed);
        var random = new Random(seed);
        var stock = ImmutableArray.CreateBuilder<ShopStock>();
        static Length In(int inches) => Length.FromInches(inches);
        foreach (Material material in piece.Materials.Values.OrderBy(m => m.Name, StringComparer.Ordinal))
        {
            string identity = MaterialIdentity.Of(material);
            if (material is Panel)
            {
                stock.Add(new(identity, new(In(96), In(48), new(60), null, "", null)));
                stock.Add(new(identity, new(In(96), In(48), null, random.Next(1, 3), "", null)));
                stock.Add(new(identity, new(In(random.Next(20, 50)), In(random.Next(12, 40)), null, random.Next(1, 3), $"offcut {seed}", Length.Zero) { Sides = random.Next(2) == 0 ? new(Length.Zero, In(1), Length.Zero, null) : null }));
            }
            else if (material is Stick stick)
            {
                stock.Add(new(identity, new(In(96), null, new(7), null, "", null)));
                stock.Add(new(identity, new(In(random.Next(40, 96)), null, null, random.Next(1, 4), "", null) { Flaws = random.Next(2) == 0 ? [new(In(10), In(12))] : [] }));
                var wide = new Stick("", "", stick.Thickness, new Given(ExactLength.FromInches(Rational.Of(random.Next(8, 12), 1)), Place.None), stick.Kind, [], Place.None);
                stock.Add(new(MaterialIdentity.Of(wide), new(In(random.Next(40, 96)), null, null, 1, "wide", null)) { Board = wide });
            }
        }
        return new(piece with { Grid = grid }, Log.Empty, Setout.Shop.Texts.Shop.Usual with { Stock = stock.ToImmutable() }, "00000000");
    }
}
