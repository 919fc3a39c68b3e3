using System.Text;

namespace Setout.Core.Measures.Text;

/// <summary>
/// A length made ready to be shown: whole number, fraction and unit apart, so that a drawing can stack the fraction while the
/// text stays <c>23 1/4</c>. A denominator of 0 means that there is no fraction.
/// </summary>
/// <param name="IsNegative">True for less than zero.</param>
/// <param name="Whole">The whole part, with decimals for metric; empty when only a fraction is shown.</param>
/// <param name="Numerator">The numerator of the fraction.</param>
/// <param name="Denominator">The denominator, or 0 for no fraction.</param>
/// <param name="Unit">The unit as shown after the figure; empty for none.</param>
/// <param name="Residue">Exact value minus the figure shown; zero when nothing was rounded.</param>
public readonly record struct Figure(
    bool IsNegative, string Whole, int Numerator, int Denominator, string Unit, ExactLength Residue)
{
    /// <summary>True when the figure shown is the value itself.</summary>
    public bool IsExact => Residue.Sign == 0;

    /// <summary>What stands before the figure where the value lies between two marks of a rule: what is set by it alone, such as a groove for a sheet, would come out too narrow or too wide.</summary>
    public string Hair => Residue.Sign switch { 0 => "", > 0 => "just over ", _ => "just under " };

    /// <summary>The figure as it is set by a rule, such as <c>23 1/4 in</c> or <c>just over 13/64 in</c>.</summary>
    public string ByTheRule => $"{Hair}{this}";

    /// <summary>True when there is a fraction to stack.</summary>
    public bool HasFraction => Denominator != 0;

    /// <summary>The figure without its unit, such as <c>23 1/4</c>.</summary>
    public string Number
    {
        get
        {
            var text = new StringBuilder();
            if (IsNegative) text.Append('-');
            text.Append(Whole);
            if (HasFraction)
            {
                if (Whole.Length > 0) text.Append(' ');
                text.Append(Numerator).Append('/').Append(Denominator);
            }
            return text.ToString();
        }
    }

    /// <summary>The text that is copied, searched, spoken and stored, such as <c>23 1/4 in</c>.</summary>
    public override string ToString() => Unit.Length == 0 ? Number : $"{Number} {Unit}";
}
