using Setout.Core.Measures;
using Setout.Core.Measures.Text;

namespace Setout.Core.Tests.Measures.Text;

/// <summary>A value, its text, the unit of bare numbers and the format that writes it.</summary>
public sealed record LengthRow(ExactLength Value, string Text, LengthUnit Bare, LengthFormat Format)
{
    public override string ToString() => $"{Text} | bare {Bare} | {Value}";

    /// <summary>Inches, bare inches, written to 1/64 with the unit unless another format is named.</summary>
    public static LengthRow Inch(Rational inches, string text, LengthFormat? format = null) =>
        new(ExactLength.FromInches(inches), text, LengthUnit.Inch, format ?? LengthFormat.Inch);

    /// <summary>Millimetres, bare millimetres, written to a tenth with the unit unless another format is named.</summary>
    public static LengthRow Metric(Rational millimetres, string text, LengthFormat? format = null) =>
        new(ExactLength.FromMillimetres(millimetres), text, LengthUnit.Millimetre, format ?? LengthFormat.Millimetre);

    public static Rational Part(long above, long below) => Rational.Of(above, below);
}
