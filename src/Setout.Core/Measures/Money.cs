namespace Setout.Core.Measures;

/// <summary>An amount of money in the shop's one currency, exact as decimals are. The default value is nothing.</summary>
/// <param name="Amount">The amount; may be negative for a difference.</param>
public readonly record struct Money(decimal Amount) : IComparable<Money>
{
    /// <summary>Nothing.</summary>
    public static Money Zero => default;

    /// <summary>The sum.</summary>
    public static Money operator +(Money a, Money b) => new(a.Amount + b.Amount);

    /// <summary>The difference.</summary>
    public static Money operator -(Money a, Money b) => new(a.Amount - b.Amount);

    /// <summary>So many times the amount.</summary>
    public static Money operator *(Money a, long times) => new(a.Amount * times);

    /// <inheritdoc/>
    public int CompareTo(Money other) => Amount.CompareTo(other.Amount);

    /// <summary>Order.</summary>
    public static bool operator <(Money a, Money b) => a.Amount < b.Amount;

    /// <summary>Order.</summary>
    public static bool operator >(Money a, Money b) => a.Amount > b.Amount;

    /// <summary>Order.</summary>
    public static bool operator <=(Money a, Money b) => a.Amount <= b.Amount;

    /// <summary>Order.</summary>
    public static bool operator >=(Money a, Money b) => a.Amount >= b.Amount;

    /// <summary>The amount with two decimals.</summary>
    public override string ToString() => $"{Amount:0.00}";
}
