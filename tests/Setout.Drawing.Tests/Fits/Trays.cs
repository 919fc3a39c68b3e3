using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Drawing.Fits;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests.Fits;

/// <summary>Gaps of a chest of trays, with figures made up so that each mark is met once.</summary>
internal static class Trays
{
    public static GapsInput Gaps { get; } = new("Tray chest, gaps", "Five gaps with their windows.", LengthUnit.Inch,
    [
        Row("T1.play", "trays T1, T2, T3: slide play", (0, 4), 2, (-17, 17, 0, 3.2), "39 %", (-4, 8, 2, 1.3), "78 %"),
        // Stands outside: a reading found the opening narrow.
        Row("T4.play", "tray T4: slide play", (0, 4), -2, (-6, 3, -2, 1.5), "2 %", null, "") with { Out = Phrase.Of("out by ").Add(Sixtyfourths(2).Figure) },
        // Reaches beyond the paper.
        Row("C.reveal", "chest, reveal above the top front of all", (-4, 4), 0, (-64, 64, 0, 9), "20 %", (-30, 30, 0, 4), "87 %"),
        // Nowhere near its limits, and with a long name.
        Row("T2.gap", "trays T2, T3, T4: gap between a front and the front below it, as it is fixed", (4, 12), 8, (7, 9, 8, 0.6), "sure", null, ""),
        // Lopsided, with the middle at the edge of the window.
        Row("T1.floor", "tray T1: floor in its grooves", (0, 8), 4, (0, 11, 8, 2), "50 %", (1, 7, 4, 1), "over 99 %"),
    ])
    {
        Footer = Phrase.Of("Between the two uprights it fits."),
    };

    public static GapRow Row(string key, string name, (int Least, int Most) window, int stands, (int Low, int High, int Middle, double Likely) now, string chance, (int Low, int High, int Middle, double Likely)? then, string chanceThen)
    {
        GapReach Reach((int Low, int High, int Middle, double Likely) r, string words) => new(Sixtyfourths(r.Low), Sixtyfourths(r.High), Sixtyfourths(r.Middle).At,
            new(Estimate.Of(r.Likely * 25.4 / 64)), Phrase.Of(words));
        return new(key, $"{name}, {chance}", Phrase.Of(name), Sixtyfourths(window.Least), Sixtyfourths(window.Most), Sixtyfourths(stands).At, Reach(now, chance))
        {
            Note = Phrase.Of("stands at ").Add(LengthFormat.Inches(64).Bare.Format(Sixtyfourths(stands).At)),
            Then = then is { } t ? Reach(t, chanceThen) : null,
        };
    }

    private static GapLimitAndFigure Sixtyfourths(int count)
    {
        var at = ExactLength.FromInches(Rational.Of(count, 64));
        return new(at, LengthFormat.Inches(64).Bare.Format(at));
    }

    private sealed record GapLimitAndFigure(ExactLength At, Figure Figure)
    {
        public static implicit operator GapLimit(GapLimitAndFigure limit) => new(limit.At, Phrase.Of(limit.Figure));
    }
}
