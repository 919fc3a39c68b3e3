using System.Collections.Immutable;
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
/// <param name="OnTheRule">What a rule shows of a sum that is only near; else empty.</param>
/// <param name="Rule">How it was landed on the grid; else empty.</param>
/// <param name="Sum">The sum.</param>
/// <param name="Reading">The reading that counts instead; null where there is none.</param>
public sealed record WorkingView(
    string Key, Phrase Name, ImmutableArray<TermView> Terms, string SumWords, Phrase OnTheRule, Phrase Rule, Phrase Sum, TermView? Reading)
{
    internal static WorkingView Of(WrittenWorking working, LengthUnit unit, string piece)
    {
        var terms = working.Terms.Select((t, i) => new TermView(
            Figures.Phrase(t.Words), Figures.Phrase(WorkingLines.Said(t.Origin, Time)), Phrase.Of(Sign(t, i, working.How)).Add(Times(t, working, unit)),
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
        return new(working.Key.Text, Figures.Phrase(working.Name), [.. terms], words, Figures.Phrase(working.OnTheRule(unit)), Figures.Phrase(working.Rule),
            Figures.Phrase(working.Result(unit).ToString()), working.Reading is { } reading ? Read(working, reading, unit) : null);
    }

    private static TermView Read(WrittenWorking working, Pin reading, LengthUnit unit)
    {
        string by = WorkingLines.Over(working.Value - working.Expected, unit);
        return new(Figures.Phrase(reading.IsFact ? WorkingLines.Marked(reading, by) : $"read at the bench: {by}"), Figures.Phrase(WorkingLines.Said(reading.Origin, Time) + (working.Remark.Length > 0 ? $"; {working.Remark}" : "")), Figures.Phrase(SumFigure.Of(working.Value, unit).ToString()), null, true);
    }

    // A log has times to the second with their offset; people say the hour.
    private static string Time(string at) => When.Of(at, TimeProvider.System);

    private static string Sign(WrittenTerm term, int index, WrittenHow how) =>
        how is WrittenHow.Least or WrittenHow.Greatest ? "" : term.Times.Sign < 0 ? "− " : index == 0 ? "" : "+ ";

    private static Phrase Times(WrittenTerm term, WrittenWorking working, LengthUnit unit)
    {
        Rational times = term.Times.Sign < 0 ? -term.Times : term.Times;
        return Figures.Phrase($"{(times == Rational.One ? "" : $"{times} × ")}{working.Figure(term, unit)}");
    }
}
