using Setout.Core.Measures;

namespace Setout.Cutting.Bounds;

/// <summary>What a layout costs is a sum of prices, so a multiple of their greatest common divisor: a bound may be rounded up to one.</summary>
internal static class MoneyStep
{
    /// <summary>The largest sum of money that divides every price; zero when all are zero.</summary>
    public static decimal Of(IEnumerable<Money> prices) => prices.Aggregate(0m, (step, price) => Gcd(step, price.Amount));

    /// <summary>The least multiple of the step that is not below.</summary>
    public static Money RoundUp(Money least, IEnumerable<Money> prices)
    {
        decimal step = Of(prices), over = step == 0 ? 0 : least.Amount % step;
        return over == 0 ? least : new(least.Amount - over + step);
    }

    private static decimal Gcd(decimal a, decimal b)
    {
        while (b != 0) (a, b) = (b, a % b);
        return a;
    }
}
