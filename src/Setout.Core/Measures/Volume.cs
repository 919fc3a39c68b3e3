namespace Setout.Core.Measures;

/// <summary>A unit that finishes are sold in. Quarts, pints, gallons and fluid ounces are those of the United States.</summary>
public enum VolumeUnit
{
    /// <summary>Litre.</summary>
    Litre,

    /// <summary>Millilitre.</summary>
    Millilitre,

    /// <summary>Liquid quart, a quarter of a gallon.</summary>
    Quart,

    /// <summary>Liquid pint, an eighth of a gallon.</summary>
    Pint,

    /// <summary>Gallon of 231 cubic inches.</summary>
    Gallon,

    /// <summary>Fluid ounce, 1/128 of a gallon.</summary>
    FluidOunce,
}

/// <summary>How much of a liquid there is, as it was written.</summary>
/// <param name="Amount">Above zero.</param>
/// <param name="Unit">Of what.</param>
public readonly record struct Volume(Rational Amount, VolumeUnit Unit)
{
    // 231 cubic inches of 16.387064 ml. Source: 15 USC 205 and NIST Handbook 44, appendix C, from memory; the product is arithmetic.
    private static readonly Rational s_gallon = Rational.Of(3_785_411_784, 1_000_000);

    /// <summary>The exact count of millilitres.</summary>
    public Rational Millilitres => Amount * Unit switch
    {
        VolumeUnit.Litre => 1000,
        VolumeUnit.Millilitre => 1,
        VolumeUnit.Quart => s_gallon / 4,
        VolumeUnit.Pint => s_gallon / 8,
        VolumeUnit.Gallon => s_gallon,
        VolumeUnit.FluidOunce => s_gallon / 128,
        _ => throw new InvalidOperationException($"{Unit} is no unit of volume."),
    };
}

/// <summary>How far a finish goes, as its can says for one coat.</summary>
/// <param name="Area">What is covered; above zero.</param>
/// <param name="By">By how much of it.</param>
public readonly record struct Coverage(ExactArea Area, Volume By)
{
    /// <summary>Whether the area was said in square metres.</summary>
    public bool IsMetric { get; init; }

    /// <summary>How much it takes for an area, exact, in the unit of the can.</summary>
    public Volume For(ExactArea area) => By with { Amount = By.Amount * (area / Area) };
}
