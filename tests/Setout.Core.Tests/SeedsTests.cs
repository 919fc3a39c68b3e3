using System.Collections.Concurrent;
using CsCheck;
using Setout.Testing;

namespace Setout.Core.Tests;

/// <summary>What random tests run on: as many as asked, the same each time, and what fails is told.</summary>
public class SeedsTests
{
    private static List<int> Tried(int iter)
    {
        var tried = new ConcurrentBag<int>();
        Gen.Int[0, int.MaxValue].Holds(tried.Add, iter);
        return [.. tried.Order()];
    }

    [Fact]
    public void Holds_Twice_TriesTheSame()
    {
        // Other seeds are asked for only by hand, and then they are other ones.
        if (Environment.GetEnvironmentVariable("SETOUT_SEEDS") == "new") return;
        List<int> tried = Tried(200);
        Assert.Equal(200, tried.Count);
        Assert.True(tried.Distinct().Count() > 190);
        Assert.Equal(tried, Tried(200));
    }

    [Fact]
    public void Holds_OfWhatFails_MakesItSmallerAndTellsItsSeed()
    {
        CsCheckException told = Assert.Throws<CsCheckException>(() => Gen.Int[0, 1000].Holds(n => n < 500, iter: 200));
        Assert.Contains("Set seed", told.Message, StringComparison.Ordinal);
        Assert.Contains("It does not hold", told.ToString(), StringComparison.Ordinal);
    }
}
