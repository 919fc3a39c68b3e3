using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Workbench.Shell;

namespace Setout.Workbench.SetOut;

/// <summary>One line of a written sum.</summary>
/// <param name="Words">What it is.</param>
/// <param name="Origin">Where it comes from, with its source; small type.</param>
/// <param name="Figure">Its sign and figure.</param>
/// <param name="Href">The working of the quantity it comes from; null for a figure.</param>
/// <param name="IsRead">Whether it was read at the bench: in red pencil.</param>
public sealed record TermView(Phrase Words, Phrase Origin, Phrase Figure, string? Href, bool IsRead);

/// <summary>A working as a person would write it: terms, a rule, the sum, and a reading if there is one.</summary>
/// <param name="Key">The quantity.</param>
/// <param name="Name">For people.</param>
/// <param name="Terms">In order.</param>
/// <param name="SumWords">What stands beside the sum.</param>
/// <param name="Exact">The exact value where the figure does not say it already; else empty.</param>
/// <param name="Rule">How it was landed on the grid; else empty.</param>
/// <param name="Sum">The sum.</param>
/// <param name="Reading">The reading that counts instead; null where there is none.</param>
public sealed record WorkingView(
    string Key, Phrase Name, ImmutableArray<TermView> Terms, string SumWords, string Exact, Phrase Rule, Phrase Sum, TermView? Reading)
{
    internal static WorkingView Of(WrittenWorking working, LengthUnit unit, string piece)
    {
        LengthFormat bare = LengthFormat.For(unit).Bare;
        var terms = working.Terms.Select((t, i) => new TermView(
            Figures.Phrase(t.Words), Figures.Phrase(WorkingLines.Said(t.Origin, Time)), Phrase.Of(Sign(t, i, working.How)).Add(Times(t, bare)),
            t.Key is { } key ? Links.Size(piece, key.Text) : null, t.Origin.Kind == OriginKind.Reading)).ToList();
        if (working.Share != Rational.One) terms.Add(new(Phrase.Of("of the sum"), Phrase.Empty, Figures.Phrase($"× {working.Share}"), null, false));
        string words = working.How switch
        {
            WrittenHow.Rounded => "to cut",
            WrittenHow.Least => "the least counts",
            WrittenHow.Greatest => "the greatest counts",
            WrittenHow.Stated => "as it stands",
            _ => "sum",
        };
        return new(working.Key.Text, Figures.Phrase(working.Name), [.. terms], words, ExactText.Beside(working.Expected, unit), Figures.Phrase(working.Rule),
            Phrase.Of(bare.Format(working.Expected)), working.Reading is { } reading ? Read(working, reading, bare) : null);
    }

    private static TermView Read(WrittenWorking working, Pin reading, LengthFormat bare)
    {
        ExactLength over = working.Value - working.Expected;
        string by = over.Sign == 0 ? WorkingLines.AsExpected : $"{bare.Text(over.Abs())} {(over.Sign > 0 ? "over" : "under")}";
        return new(Figures.Phrase(reading.IsFact ? WorkingLines.Marked(reading, by) : $"read at the bench: {by}"), Figures.Phrase(WorkingLines.Said(reading.Origin, Time) + (working.Remark.Length > 0 ? $"; {working.Remark}" : "")), Phrase.Of(bare.Format(working.Value)), null, true);
    }

    // A log has times to the second with their offset; people say the hour.
    private static string Time(string at) => When.Of(at, TimeProvider.System);

    private static string Sign(WrittenTerm term, int index, WrittenHow how) =>
        how is WrittenHow.Least or WrittenHow.Greatest ? "" : term.Times.Sign < 0 ? "− " : index == 0 ? "" : "+ ";

    private static Phrase Times(WrittenTerm term, LengthFormat bare)
    {
        Rational times = term.Times.Sign < 0 ? -term.Times : term.Times;
        // What is called exact and is not on the scale of the figures says so.
        Figure shown = bare.Format(term.Value);
        Phrase figure = shown.IsExact ? Phrase.Of(shown) : Figures.Phrase("≈ ").Add(shown);
        return times == Rational.One ? figure : Figures.Phrase($"{times} × ").Add(figure);
    }
}

/// <summary>Writes exact values.</summary>
internal static class ExactText
{
    private const int MostDecimals = 12, Near = 10_000;

    /// <summary>
    /// The value as it stands beside a figure: a decimal where it ends, else to four places with a sign that says so, as of millimetres in inches: nobody reads 2617/127. Empty where the figure says
    /// it already. The exact fraction is what <c>setout why</c> tells.
    /// </summary>
    public static string Beside(ExactLength value, LengthUnit unit)
    {
        Rational exact = unit == LengthUnit.Inch ? value.Inches : value.Millimetres;
        Rational near = Rational.Of(((exact * Near) + Rational.Of(1, 2)).Floor(), Near);
        string text = Decimal(exact) ?? $"≈ {Decimal(near)}";
        return text == LengthFormat.For(unit).Bare.Text(value) ? "" : text;
    }

    /// <summary>The value as a decimal number; null where it does not end within twelve places.</summary>
    private static string? Decimal(Rational value)
    {
        BigInteger scale = BigInteger.One, whole = BigInteger.Abs(value.Numerator);
        for (int places = 0; places <= MostDecimals; places++, scale *= 10)
        {
            (BigInteger digits, BigInteger rest) = BigInteger.DivRem(whole * scale, value.Denominator);
            if (!rest.IsZero) continue;
            string text = digits.ToString().PadLeft(places + 1, '0');
            return (value.Sign < 0 ? "-" : "") + (places == 0 ? text : $"{text[..^places]}.{text[^places..]}");
        }
        return null;
    }
}
