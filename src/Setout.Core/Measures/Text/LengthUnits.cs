namespace Setout.Core.Measures.Text;

/// <summary>What a unit of length is called.</summary>
public static class LengthUnits
{
    extension(LengthUnit unit)
    {
        /// <summary>What is written after a figure: <c>in</c> or <c>mm</c>.</summary>
        public string Mark => unit == LengthUnit.Inch ? "in" : "mm";

        /// <summary>What it is called in a sentence: <c>inches</c> or <c>millimetres</c>.</summary>
        public string Words => unit == LengthUnit.Inch ? "inches" : "millimetres";

        /// <summary>The other of the two.</summary>
        public LengthUnit Other => unit == LengthUnit.Inch ? LengthUnit.Millimetre : LengthUnit.Inch;
    }
}
