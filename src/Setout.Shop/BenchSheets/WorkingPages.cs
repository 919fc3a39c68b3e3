using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Documents;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;

namespace Setout.Shop.BenchSheets;

/// <summary>
/// The workings on paper: every size that is cut with its sum, then the sums behind those. Sizes with the same working stand in one row, so
/// that a bank of equal drawers is read once.
/// </summary>
internal static class WorkingPages
{
    private sealed record Row(string Owner, string What, string Key, Cell Working, string WorkingText, Cell Figure)
    {
        public bool IsNear => WorkingText.Contains(SumFigure.Near, StringComparison.Ordinal);
    }

    public static IEnumerable<Section> Of(SetPiece set)
    {
        var cut = new List<Row>();
        var behind = new Queue<QuantityKey>();
        foreach (Part part in set.Parts.Where(p => p.Role != PartRole.Loose))
        {
            foreach ((string word, PartSize size) in new[] { ("length", part.Length), ("width", part.Width) })
            {
                if (size.Exact == size.ToCut || WrittenWorking.Of(set.Worked, size.Exact) is not { } working) continue;
                foreach (WrittenTerm term in working.Terms) if (term.Key is { } key) behind.Enqueue(key);
                cut.Add(Line(part.Mark, $"{Kind(part)}, {word}", working, set.Worked.Values[size.ToCut], set.Worked.Values[size.AsCut], set.Piece.Shown));
            }
        }
        if (cut.Count == 0) yield break;
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.Add(new ParagraphBlock("Every size that is cut, with the sum it comes from and where each term comes from. Marks in one row share the working.", TextSize.Small));
        blocks.Add(Table("Cut", cut));
        var sums = Behind(set, behind);
        if (cut.Concat(sums).Any(r => r.IsNear))
            blocks.Insert(1, new ParagraphBlock($"Behind {SumFigure.Near} stands what has no end as a decimal, with places enough to land it by.{(set.Piece.Shown == LengthUnit.Inch ? " Below such a figure stands the nearest 1/64." : "")}", TextSize.Small));
        if (sums.Count > 0)
        {
            blocks.Add(new HeadingBlock("The sums behind them"));
            blocks.Add(Table("What", sums));
        }
        yield return new("Workings", blocks.ToImmutable());
    }

    private static List<Row> Behind(SetPiece set, Queue<QuantityKey> asked)
    {
        var rows = new List<Row>();
        var seen = new HashSet<QuantityKey>();
        while (asked.TryDequeue(out QuantityKey key))
        {
            if (!seen.Add(key) || WrittenWorking.Of(set.Worked, key) is not { } working) continue;
            foreach (WrittenTerm term in working.Terms) if (term.Key is { } of) asked.Enqueue(of);
            // A figure to cut stands above; what is only stated shows its origin where it is used.
            if (working.How is WrittenHow.Rounded or WrittenHow.Stated || key.Text.EndsWith(QuantityKey.AsCutSuffix, StringComparison.Ordinal)
                || set.Parts.Any(p => p.Length.Exact == key || p.Width.Exact == key)) continue;
            int comma = working.Name.IndexOf(", ", StringComparison.Ordinal);
            string what = comma > 0 ? working.Name[(comma + 2)..] : working.Name;
            Worked worked = set.Worked.Values[key];
            rows.Add(Line(key.Owner, what, working, worked, worked, set.Piece.Shown));
        }
        return rows;
    }

    private static string Kind(Part part) => part.Role switch
    {
        PartRole.BoxSide => "box side",
        PartRole.BoxEnd => "box end",
        PartRole.BoxBottom => "box bottom",
        PartRole.FalseFront => "false front",
        PartRole.DoorStile => "door stile",
        PartRole.DoorPanel => "door panel",
        _ => part.Name,
    };

    private static Row Line(string owner, string what, WrittenWorking working, Worked toCut, Worked asCut, LengthUnit unit)
    {
        var lines = ImmutableArray.CreateBuilder<Phrase>();
        for (int i = 0; i < working.Terms.Length; i++)
        {
            WrittenTerm term = working.Terms[i];
            Rational times = term.Times.Sign < 0 ? -term.Times : term.Times;
            string sign = working.How is WrittenHow.Least or WrittenHow.Greatest ? "" : term.Times.Sign < 0 ? "\u2212 " : i == 0 ? "" : "+ ";
            lines.Add(Phrase.Of(sign + (times == Rational.One ? "" : $"{times} x ")).Add(Figures.Phrase(working.Figure(term, unit).ToString())).Add("  ")
                .Add(Figures.Phrase($"{term.Words}; {Texts.EntryTime.In(term.Origin.Words)}")));
        }
        if (working.Share != Rational.One) lines.Add(Phrase.Of($"x {working.Share} of the sum"));
        if (working.How == WrittenHow.Least) lines.Add(Phrase.Of("the least counts"));
        if (working.How == WrittenHow.Greatest) lines.Add(Phrase.Of("the greatest counts"));
        // A mark fixes the figure to cut; what the sum comes to since then lands on the grid by itself.
        if (toCut.Quantity.Working is ToCut cut && toCut.Expected != working.Value)
            lines.Add(Figures.Phrase($"{SumFigure.Of(working.Value, unit, cut.Grid).AsResult}, on the {cut.Grid} grid {cut.Why}"));
        foreach ((Pin pin, ExactLength value, ExactLength over) in new[] { (working.Reading, working.Value, working.Value - working.Expected), (toCut.Pin, toCut.Value, toCut.Over), (asCut.Pin, asCut.Value, asCut.Over) }
            .Where(p => p.Item1 is not null).Select(p => (p.Item1!, p.Item2, p.Item3)).DistinctBy(p => p.Item1))
        {
            lines.Add(pin.IsFact ? Say(value, unit).Add($", {Texts.EntryTime.In(pin.Origin.Words)}: ").Add(Figures.Phrase(WorkingLines.Marked(pin, WorkingLines.Over(over, unit))))
                : Phrase.Of("read ").Add(Say(value, unit)).Add($", {Texts.EntryTime.In(pin.Origin.Words)}: the reading counts"));
        }
        var cell = new Cell(lines.ToImmutable());
        return new(owner, what, working.Key.Text, cell, string.Join('|', lines.Select(l => l.PlainText)), Result(toCut.Value, unit));
    }

    // What a rule shows of it stands below what is only near, and takes no line of its own where the working has two.
    private static Cell Result(ExactLength value, LengthUnit unit) => SumFigure.OnTheRule(value, unit) is { Length: > 0 } rule ? new([Say(value, unit), Figures.Phrase(rule)]) : Cell.Of(Say(value, unit));

    private static Phrase Say(ExactLength value, LengthUnit unit) => Figures.Phrase(SumFigure.Of(value, unit).ToString());

    private static TableBlock Table(string head, List<Row> rows) => new(
        [new(head, ColumnWidth.Share(2)), new("Working", ColumnWidth.Share(5), ColumnAlign.Left, TextSize.Small), new("Figure", ColumnWidth.Fit, ColumnAlign.Right, TextSize.Figure)],
        [
            .. rows.GroupBy(r => (r.What, r.WorkingText, Figure: string.Join('|', r.Figure.Phrases.Select(p => p.PlainText)))).Select(g => (TableRow)CellRow.Of(
                new Cell([Phrase.Of(string.Join(" ", g.Select(r => r.Owner).Distinct())).Bold(), Phrase.Of(g.Key.What)]), g.First().Working, g.First().Figure)),
        ]);
}
