using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Drawing.Scenes;

namespace Setout.Shop.Drawings;

/// <summary>Finds the fractions in words, so that they are stacked when drawn, and set as one on a page.</summary>
public static partial class Figures
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

    /// <summary>A figure as it is set by a rule, such as <c>just over 13/64</c>, with its fraction to be stacked.</summary>
    /// <param name="figure">The figure.</param>
    public static Phrase ByTheRule(Figure figure) => Drawing.Scenes.Phrase.Of(figure.Hair).Add(figure);

    [GeneratedRegex(@"(?:(?<whole>\b\d{1,6}) )?(?<![\d/.])(?<above>\d{1,3})/(?<below>\d{1,3})(?![\d/])")]
    private static partial Regex Fraction();
}
