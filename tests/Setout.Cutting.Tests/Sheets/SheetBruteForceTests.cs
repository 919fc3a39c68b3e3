using Setout.Core.Measures;
using Setout.Cutting.Sheets;
using static Setout.Cutting.Tests.Sheets.SheetBuild;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>Tiny instances against a search of every edge-to-edge layout, written without any of the solver's code.</summary>
public class SheetBruteForceTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Solve_TinyInstances_EqualsEveryLayoutTried(int kerf)
    {
        var random = new Random(100 + kerf);
        for (int round = 0; round < 60; round++)
        {
            SheetStock[] stock = [Stock("large", random.Next(8, 13), random.Next(7, 11), random.Next(5, 9)), Stock("small", random.Next(5, 9), random.Next(5, 8), random.Next(2, 6))];
            SheetPart[] parts = [.. Enumerable.Range(0, random.Next(2, 6)).Select(i => Part($"p{i}", random.Next(1, 8), random.Next(1, 7), 1, random.Next(2) == 0 ? GrainRule.Free : GrainRule.Keep))];
            SheetInstance instance = Instance(parts, stock, kerf);
            (int cost, int sheets) = new Brute(parts, stock, kerf).Least();
            SheetOutcome outcome = Solve(instance, 100_000);
            Assert.Equal((new Money(cost), sheets), (outcome.Score.Cost, outcome.Score.Sheets));
            Assert.True(outcome.Bound.Cost <= new Money(cost) && outcome.Bound.Count <= sheets, $"bound {outcome.Bound} above {cost} on {sheets}");
        }
    }

    private sealed class Brute(SheetPart[] parts, SheetStock[] stock, int kerf)
    {
        private readonly Dictionary<(int Set, int Along, int Across), bool> _known = [];

        public (int Cost, int Sheets) Least()
        {
            int all = (1 << parts.Length) - 1;
            var least = new (int Cost, int Sheets)[all + 1];
            for (int set = 1; set <= all; set++)
            {
                least[set] = (int.MaxValue, 0);
                for (int one = set; one > 0; one = (one - 1) & set)
                    foreach (SheetStock sheet in stock)
                    {
                        (int cost, int sheets) = least[set ^ one];
                        if (cost == int.MaxValue || !Holds(one, (int)sheet.Along.ToMillimetres(), (int)sheet.Across.ToMillimetres())) continue;
                        (int, int) way = (cost + (int)sheet.Cost.Amount, sheets + 1);
                        if (way.CompareTo(least[set]) < 0) least[set] = way;
                    }
            }
            return least[all];
        }

        private bool Holds(int set, int along, int across)
        {
            if (along <= 0 || across <= 0) return false;
            if (_known.TryGetValue((set, along, across), out bool known)) return known;
            bool holds = int.IsPow2(set) ? Fits(parts[int.TrailingZeroCount(set)], along, across) : Divides(set, along, across);
            _known[(set, along, across)] = holds;
            return holds;
        }

        private bool Divides(int set, int along, int across)
        {
            for (int one = (set - 1) & set; one > 0; one = (one - 1) & set)
            {
                for (int at = 1; at < along; at++)
                    if (Holds(one, at, across) && Holds(set ^ one, along - at - kerf, across)) return true;
                for (int at = 1; at < across; at++)
                    if (Holds(one, along, at) && Holds(set ^ one, along, across - at - kerf)) return true;
            }
            return false;
        }

        private static bool Fits(SheetPart part, int along, int across) =>
            (part.Along <= Mm(along) && part.Across <= Mm(across))
            || (part.Grain == GrainRule.Free && part.Across <= Mm(along) && part.Along <= Mm(across));
    }
}
