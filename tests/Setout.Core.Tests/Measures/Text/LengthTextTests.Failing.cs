using Setout.Core.Measures.Text;

namespace Setout.Core.Tests.Measures.Text;

public sealed partial class LengthTextTests
{
    public static TheoryData<string, string, int, LengthUnit> Failing
    {
        get
        {
            var rows = new TheoryData<string, string, int, LengthUnit>();
            foreach ((string text, string code, int position) in FailingInBothUnits)
            {
                rows.Add(text, "length." + code, position, LengthUnit.Inch);
                rows.Add(text, "length." + code, position, LengthUnit.Millimetre);
            }
            // 96 mm less 3 1/4 in, or less 3 mm and 1/4 in; among inches both are the same.
            rows.Add("96-3-1/4\"", "length.two-readings", 4, LengthUnit.Millimetre);
            return rows;
        }
    }

    private static readonly (string Text, string Code, int Position)[] FailingInBothUnits =
    [
        ("", "empty", 0),
        ("   ", "empty", 0),
        ("\u00A0", "empty", 0),

        // Two readings.
        ("23-1/4", "two-readings", 2),
        ("23 -1/4", "two-readings", 3),
        ("23- 1/4", "two-readings", 2),
        ("23 -1/4\"", "two-readings", 3),
        ("23-¼", "two-readings", 2),
        ("23 -¼\"", "two-readings", 3),
        ("23-1/4 mm", "two-readings", 2),
        ("-23-1/4", "two-readings", 3),
        ("20+3-1/4\"", "two-readings", 4),
        ("20+3-¼\"", "two-readings", 4),
        ("2*3-1/4\"", "two-readings", 3),
        ("(4)+3-1/4\"", "two-readings", 5),
        ("2' 3-1/4", "two-readings", 4),
        ("2' - 3\"", "two-readings", 3),
        ("2' -3\"", "two-readings", 3),
        ("2'- 3\"", "two-readings", 2),
        ("2' - 3", "two-readings", 3),
        ("2' - 3/4\"", "two-readings", 3),
        ("96 ÷ 3/4", "two-readings", 3),
        ("96÷3/4", "two-readings", 2),
        ("(1/2) / 3/4", "two-readings", 6),
        ("(96)/-3/4", "two-readings", 4),
        ("1,250", "two-readings", 1),
        ("12,250", "two-readings", 2),
        ("125,250 mm", "two-readings", 3),
        ("2 + 1,250", "two-readings", 5),
        ("24 x 36", "two-readings", 3),
        ("24\" x 36\"", "two-readings", 4),
        ("24 × 36", "two-readings", 3),
        ("2X4", "two-readings", 1),

        // Marks for thousands, digits, size.
        ("1,250.5", "thousands", 5),
        ("1,250,000", "thousands", 5),
        ("1.2.3", "thousands", 3),
        ("1234567890123456", "too-many-digits", 0),
        ("1 + 1.234567890123456", "too-many-digits", 4),
        (new string('1', 201), "too-long", 200),
        (new string(' ', 201), "too-long", 200),
        (new string('(', 200), "too-deep", 16),
        (new string('(', 17) + "7" + new string(')', 17), "too-deep", 16),
        ("999999999999999", "too-large", 0),
        ("-999999999999999 * 999999999999999 * 999999999999999", "too-large", 0),
        ("10000.001 m", "too-large", 0),

        // Broken sums.
        ("1 +", "number-wanted", 3),
        ("+", "number-wanted", 1),
        ("-", "number-wanted", 1),
        ("*2", "number-wanted", 0),
        ("/2", "number-wanted", 0),
        ("1/", "number-wanted", 2),
        ("in", "number-wanted", 0),
        ("\"", "number-wanted", 0),
        ("()", "number-wanted", 1),
        (")", "number-wanted", 0),
        ("--1", "two-signs", 1),
        ("+-1", "two-signs", 1),
        ("3 - -2", "two-signs", 4),
        ("23--1/4", "two-signs", 3),
        ("(1 + 2", "open-bracket", 0),
        ("1 + (2 * (3)", "open-bracket", 4),
        ("1 + 2)", "left-over", 5),
        ("3 4", "left-over", 2),
        ("1 2 3/4", "left-over", 2),
        ("3/4 1/2", "left-over", 4),
        ("23.5 1/4", "left-over", 5),
        ("23 1/4 1/2", "left-over", 7),
        ("3 in 4", "left-over", 5),
        ("1' 2'", "left-over", 3),
        ("1' 20 mm", "left-over", 3),
        ("1' 11\" 1/4", "left-over", 7),
        ("(1/2 + 1/4) in", "left-over", 12),
        ("5'''", "left-over", 3),
        ("1 4/4", "improper", 2),
        ("1 96/3", "improper", 2),
        ("1/0", "zero-division", 2),
        ("1 1/0", "zero-division", 4),
        ("1 / (2 - 2)", "zero-division", 5),
        ("0/0", "zero-division", 2),
        ("1-1/0\"", "zero-division", 4),
        ("2\" * 3\"", "area", 3),
        ("2\" / 3\"", "ratio", 3),

        // Not numbers, not signs of a length.
        ("NaN", "unknown-word", 0),
        ("Infinity", "unknown-word", 0),
        ("-Infinity", "unknown-word", 1),
        ("∞", "unknown-sign", 0),
        ("1e3", "unknown-word", 1),
        ("1E-3", "unknown-word", 1),
        ("0x1F", "unknown-word", 3),
        ("5 yd", "unknown-word", 2),
        ("5 inchs", "unknown-word", 2),
        ("5mmm", "unknown-word", 1),
        ("23 1/4 in 😀", "unknown-sign", 10),
        ("😀", "unknown-sign", 0),
        ("1\0", "unknown-sign", 1),
        ("1\u0007", "unknown-sign", 1),
        ("1\u200B2", "unknown-sign", 1),
        ("\uFEFF12", "unknown-sign", 0),
        ("1\u0301", "unknown-sign", 1),
        ("\u202E12", "unknown-sign", 0),
        ("٣", "unknown-sign", 0),
        ("三", "unknown-sign", 0),
        ("5.", "unknown-sign", 1),
        (".", "unknown-sign", 0),
        (",", "unknown-sign", 0),
        ("1..2", "unknown-sign", 1),
        ("1, 2", "unknown-sign", 1),
        ("5%", "unknown-sign", 1),
        ("#5", "unknown-sign", 0),
        ("$5", "unknown-sign", 0),
        ("3 ft 2 in; rm", "unknown-sign", 9),
        ("1'; DROP TABLE parts;--", "unknown-sign", 2),
        ("<script>alert(1)</script>", "unknown-sign", 0),
        ("=1+1", "unknown-sign", 0),
        ("${jndi:ldap}", "unknown-sign", 0),
        ("{0}", "unknown-sign", 0),
        ("../../etc", "unknown-sign", 0),
        ("5 \\ 2", "unknown-sign", 2),

        // Small digits make fractions and nothing else.
        ("23²", "unknown-sign", 2),
        ("²", "unknown-sign", 0),
        ("1.5²", "unknown-sign", 3),
        ("1.²", "unknown-sign", 1),
        (".₅", "unknown-sign", 0),
        ("H₂", "unknown-word", 0),
        ("5₂", "unknown-sign", 1),
    ];
}
