using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;
using Setout.Shop.Plans;

namespace Setout.Shop.BenchSheets;

/// <summary>Figures as phrases and workings as blocks.</summary>
internal static partial class Figures
{
    /// <summary>Words with the fractions in them made ready to be stacked; the text stays the same.</summary>
    public static Phrase Phrase(string words)
    {
        Phrase phrase = Drawing.Scenes.Phrase.Empty;
        int from = 0;
        foreach (Match match in Fraction().Matches(words))
        {
            if (match.Index > from) phrase = phrase.Add(words[from..match.Index]);
            phrase = phrase.Add(new Figure(false, match.Groups["whole"].Value, int.Parse(match.Groups["above"].ValueSpan), int.Parse(match.Groups["below"].ValueSpan), "", ExactLength.Zero));
            from = match.Index + match.Length;
        }
        return from < words.Length ? phrase.Add(words[from..]) : phrase;
    }

    /// <summary>A working as a written sum.</summary>
    public static WorkingBlock Block(WrittenWorking working, LengthUnit unit)
    {
        LengthFormat bare = LengthFormat.For(unit).Bare;
        ImmutableArray<WorkingTerm> terms =
        [
            .. working.Terms.Select((t, i) => new WorkingTerm(Phrase(t.Words), Phrase(t.Origin.Words),
                working.How is WrittenHow.Least or WrittenHow.Greatest ? TermSign.None : t.Times.Sign < 0 ? TermSign.Minus : i == 0 ? TermSign.None : TermSign.Plus, Times(t, bare))),
            .. working.Share == Rational.One ? ImmutableArray<WorkingTerm>.Empty
                : [new WorkingTerm(Phrase("equal share"), Drawing.Scenes.Phrase.Empty, TermSign.None, Drawing.Scenes.Phrase.Of($"x {working.Share}"))],
            .. working.Reading is { } reading
                ? [new WorkingTerm(Phrase("read at the bench: it counts"), Phrase(reading.Origin.Words), TermSign.None, Drawing.Scenes.Phrase.Of(bare.Format(working.Value)))]
                : ImmutableArray<WorkingTerm>.Empty,
        ];
        string label = working.How switch
        {
            WrittenHow.Rounded => working.Rule,
            WrittenHow.Least => "the least counts",
            WrittenHow.Greatest => "the greatest counts",
            _ => "sum" + WorkingLines.Exactly(working.Expected, unit),
        };
        return new(Phrase(working.Name), Drawing.Scenes.Phrase.Of(bare.Format(working.Value)), terms, Phrase(label), Drawing.Scenes.Phrase.Of(bare.Format(working.Expected)));
    }

    private static Phrase Times(WrittenTerm term, LengthFormat bare)
    {
        Rational times = term.Times.Sign < 0 ? -term.Times : term.Times;
        Phrase figure = Drawing.Scenes.Phrase.Of(bare.Format(term.Value));
        return times == Rational.One ? figure : Drawing.Scenes.Phrase.Of($"{times} x ").Add(bare.Format(term.Value));
    }

    [GeneratedRegex(@"(?:(?<whole>\b\d{1,6}) )?(?<![\d/.])(?<above>\d{1,3})/(?<below>\d{1,3})(?![\d/])")]
    private static partial Regex Fraction();
}
