namespace Setout.Core.Measures.Text;

/// <summary>The unit that a bare number stands for and that figures are shown in.</summary>
public enum LengthUnit
{
    /// <summary>Inches and fractions of the inch.</summary>
    Inch,

    /// <summary>Millimetres.</summary>
    Millimetre,
}
