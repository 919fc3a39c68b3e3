using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Plans;

/// <summary>One line of a written working.</summary>
/// <param name="Words">What it is.</param>
/// <param name="Times">How often it counts; negative to take away.</param>
/// <param name="Value">One of it.</param>
/// <param name="Key">The quantity it comes from; null for a figure.</param>
/// <param name="Origin">Where it comes from.</param>
public sealed record WrittenTerm(string Words, Rational Times, ExactLength Value, QuantityKey? Key, Origin Origin);

/// <summary>How the terms make the value.</summary>
public enum WrittenHow
{
    /// <summary>It stands by itself.</summary>
    Stated,

    /// <summary>They are added up, and shared out where <see cref="WrittenWorking.Share"/> is not one.</summary>
    Sum,

    /// <summary>The least counts.</summary>
    Least,

    /// <summary>The greatest counts.</summary>
    Greatest,

    /// <summary>It is landed on the grid.</summary>
    Rounded,
}

/// <summary>A working written out as a person would write it: terms with their origins, the result, and a reading if there is one.</summary>
/// <param name="Key">The quantity.</param>
/// <param name="Name">For people.</param>
/// <param name="How">How the terms make the value.</param>
/// <param name="Terms">In order.</param>
/// <param name="Share">One for a plain sum.</param>
/// <param name="Rule">For a rounded figure: which way and why; else empty.</param>
/// <param name="Expected">What the working gives.</param>
/// <param name="Value">What counts: the reading if there is one.</param>
/// <param name="Reading">The reading, or null.</param>
public sealed record WrittenWorking(
    QuantityKey Key, string Name, WrittenHow How, ImmutableArray<WrittenTerm> Terms, Rational Share, string Rule,
    ExactLength Expected, ExactLength Value, Pin? Reading)
{
    /// <summary>What is to be known of the reading, such as that it is one spot of a sheet; empty for nothing.</summary>
    public string Remark { get; init; } = "";

    /// <summary>The grid that what it gives is landed on for the saw; null where it is on none.</summary>
    public Grid? LandsOn { get; init; }

    /// <summary>What it gives, as it is told.</summary>
    /// <param name="unit">In which.</param>
    public SumFigure Result(LengthUnit unit) => SumFigure.Of(Expected, unit, LandsOn);

    /// <summary>What a rule shows of a result that is only near, such as <c>18 5/8 to the nearest 1/64</c>; nothing where the figure to cut is to come, which is what is set.</summary>
    /// <param name="unit">In which.</param>
    public string OnTheRule(LengthUnit unit) => LandsOn is null && SumFigure.OnTheRule(Expected, unit) is { Length: > 0 } rule ? $"{rule} to the nearest 1/64" : "";

    /// <summary>One of a term, as it is told.</summary>
    /// <param name="term">The term.</param>
    /// <param name="unit">In which.</param>
    public SumFigure Figure(WrittenTerm term, LengthUnit unit) => SumFigure.Of(term.Value, unit, TermsLandOn);

    // The one term of a figure to cut is what is landed.
    private Grid? TermsLandOn { get; init; }

    /// <summary>Writes the working of a quantity; null when the key is not known or has no value.</summary>
    public static WrittenWorking? Of(WorkedPiece piece, QuantityKey key)
    {
        if (!piece.Values.TryGetValue(key, out Worked? worked)) return null;
        (WrittenHow how, ImmutableArray<WrittenTerm> terms, Rational share, string rule) = worked.Quantity.Working switch
        {
            Stated stated => (WrittenHow.Stated, [new WrittenTerm(worked.Quantity.Name, 1, stated.Value, null, stated.Origin)], Rational.One, ""),
            Sum sum => (WrittenHow.Sum, [.. sum.Terms.Select(t => Term(piece, t))], sum.Share, ""),
            Extreme extreme => (extreme.IsLeast ? WrittenHow.Least : WrittenHow.Greatest, [.. extreme.Of.Select(t => Term(piece, t))], Rational.One, ""),
            ToCut cut => (WrittenHow.Rounded, ImmutableArray.Create(Reference(piece, "the sum", 1, cut.Exact)), Rational.One, $"to the {cut.Grid} grid, {cut.Why}"),
            _ => (WrittenHow.Stated, ImmutableArray<WrittenTerm>.Empty, Rational.One, ""),
        };
        return new(key, worked.Quantity.Name, how, terms, share, rule, worked.Expected, worked.Value, worked.Pin) { LandsOn = GridOf(piece, key.ToCut), TermsLandOn = GridOf(piece, key) };
    }

    /// <summary>The workings behind a size, from the sum to the figure as cut; each only where it says something new.</summary>
    public static ImmutableArray<WrittenWorking> Of(WorkedPiece piece, PartSize size)
    {
        var all = ImmutableArray.CreateBuilder<WrittenWorking>();
        foreach (QuantityKey key in new[] { size.Exact, size.ToCut, size.AsCut }.Distinct())
        {
            if (Of(piece, key) is not { } working) continue;
            if (key == size.AsCut && key != size.ToCut && working.Reading is null) continue;
            all.Add(working);
        }
        return all.ToImmutable();
    }

    private static Grid? GridOf(WorkedPiece piece, QuantityKey key) => piece.Values.TryGetValue(key, out Worked? worked) && worked.Quantity.Working is ToCut cut ? cut.Grid : null;

    private static WrittenTerm Term(WorkedPiece piece, Term term) => term.Figure is { } figure
        ? new(term.Words, term.Times, figure.Value, null, figure.Origin)
        : Reference(piece, term.Words, term.Times, term.Of!.Value);

    private static WrittenTerm Reference(WorkedPiece piece, string words, Rational times, QuantityKey key)
    {
        if (!piece.Values.TryGetValue(key, out Worked? of)) return new(words, times, ExactLength.Zero, key, new(OriginKind.Worked, "has no value"));
        Origin origin = of.Pin?.Origin ?? of.Quantity.Working switch
        {
            Stated stated => stated.Origin,
            ToCut cut => new(OriginKind.Worked, $"to cut, {cut.Why}"),
            // A figure as cut is the figure to cut until it is read; say so instead of "worked out".
            Sum { Terms: [{ Words: "to cut" }] } => new(OriginKind.Worked, "to cut, until read"),
            _ => Origin.Worked,
        };
        return new(words, times, of.Value, key, origin);
    }
}

/// <summary>Writes workings as lines of plain text, figures in one column.</summary>
public static class WorkingLines
{
    /// <summary>The lines of a working.</summary>
    public static IEnumerable<string> Of(WrittenWorking working, LengthUnit unit)
    {
        string suffix = unit.Mark;
        yield return $"{working.Name}  ({working.Key})";
        var rows = working.Terms.Select((t, i) => (Sign(t, i, working.How), Figure: Times(t, working, unit), t.Words, Origin: Said(t.Origin), Key: t.Key?.Text ?? "")).ToList();
        int widest = rows.Count == 0 ? 10 : Math.Max(10, rows.Max(r => r.Figure.Length));
        foreach ((string sign, string figure, string words, string origin, string key) in rows)
            yield return $"  {sign} {figure.PadLeft(widest)}  {words}{(origin.Length > 0 ? "; " + origin : "")}{(key.Length > 0 ? $"  [{key}]" : "")}";
        if (working.Share != Rational.One) yield return $"  x {working.Share.ToString().PadLeft(widest)}  of the sum";
        if (working.How is WrittenHow.Least or WrittenHow.Greatest) yield return $"    the {(working.How == WrittenHow.Least ? "least" : "greatest")} counts";
        if (working.Rule.Length > 0) yield return $"    {working.Rule}";
        SumFigure result = working.Result(unit);
        yield return $"  {(result.IsNear ? SumFigure.Near : "=")} {result.Number.PadLeft(widest)} {suffix}{(working.OnTheRule(unit) is { Length: > 0 } rule ? $", {rule}" : "")}";
        if (working.Reading is not { } reading) yield break;
        string stands = $"{SumFigure.Of(working.Value, unit)} {suffix}";
        yield return reading.IsFact ? $"  {stands}, {Said(reading.Origin)}: {Marked(reading, Over(working.Value - working.Expected, unit))}"
            : $"  read {stands}, {Said(reading.Origin)}: {Over(working.Value - working.Expected, unit)}; the reading counts";
        if (working.Remark.Length > 0) yield return $"    {working.Remark}";
    }

    /// <summary>
    /// What a mark says of a figure that nobody read: <c>marked cut; taken as planned</c>, or by how much it is over what is planned now. It may have been planned so then, or said with the mark.
    /// </summary>
    public static string Marked(Pin mark, string over) => $"marked {mark.Origin.Words.Split(',')[0]}; {(over == AsExpected ? "taken as planned" : $"not read, {over} what is planned now")}";

    /// <summary>Said of a reading that is what was expected.</summary>
    public const string AsExpected = "as expected";

    /// <summary>A reading against what was expected: <c>1/16 in over</c>, <c>1/128 in under</c>, <c>as expected</c>.</summary>
    public static string Over(ExactLength over, LengthUnit unit)
    {
        if (over.Sign == 0) return AsExpected;
        // A difference is small: it is shown finer than a size, so that 1/128 does not read as 1/64 or as nothing.
        LengthFormat fine = unit == LengthUnit.Inch ? LengthFormat.Inches(256) : LengthFormat.Millimetres(2);
        Figure figure = fine.Format(over.Abs());
        return $"{(figure.IsExact ? "" : "about ")}{figure} {(over.Sign > 0 ? "over" : "under")}";
    }

    /// <summary>For a quantity that was picked from a series: why, and where the pick would flip; nothing for any other.</summary>
    public static IEnumerable<string> Of(SetPiece set, QuantityKey key)
    {
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        foreach (Choice choice in set.Choices.Where(c => c.Key == key))
        {
            yield return $"  picked: {choice.Chosen}; {choice.Reason}";
            if (choice.FlipsUpAt is { } up) yield return $"    the next longer from {choice.Decides} = {format.Text(up)}";
            if (choice.FlipsDownBelow is { } down) yield return $"    the next shorter below {choice.Decides} = {format.Text(down)}";
        }
    }

    /// <summary>An origin with its source; times in it as a person says them.</summary>
    /// <param name="origin">The origin.</param>
    /// <param name="time">How a time is said; null for the clock of the bench.</param>
    public static string Said(Origin origin, Func<string, string>? time = null) => origin.Source is { Length: > 0 } source ? $"{origin.Words} ({source})" : Texts.EntryTime.In(origin.Words, time);

    private static string Sign(WrittenTerm term, int index, WrittenHow how) =>
        how is WrittenHow.Least or WrittenHow.Greatest ? " " : term.Times.Sign < 0 ? "-" : index == 0 ? " " : "+";

    private static string Times(WrittenTerm term, WrittenWorking working, LengthUnit unit)
    {
        Rational times = term.Times.Sign < 0 ? -term.Times : term.Times;
        return times == Rational.One ? working.Figure(term, unit).ToString() : $"{times} x {working.Figure(term, unit)}";
    }
}
