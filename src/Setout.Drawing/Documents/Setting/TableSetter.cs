// Over 200 lines: widths, heads and rows of one table, set in one go.
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Setting;

/// <summary>Sets a table: widths first, then each row as one strip with the head it repeats.</summary>
internal sealed class TableSetter
{
    private readonly record struct CellLine(Phrase Text, double Width, double Size, double Leading);

    private readonly Setter _setter;
    private readonly TableBlock _table;
    private readonly double _tick;
    private readonly double[] _lefts;
    private readonly double[] _widths;
    private readonly int _element;

    private TableSetter(Setter setter, TableBlock table)
    {
        if (table.Columns.IsEmpty) throw new ArgumentException("A table needs a column.", nameof(table));
        (_setter, _table) = (setter, table);
        _tick = table.TickBoxes == TickBoxes.EachRow ? SheetStyle.TickColumn : 0;
        _element = setter.Element(ElementKind.Table, setter.Parent);
        _widths = Widths();
        _lefts = new double[_widths.Length];
        double x = _tick;
        for (int i = 0; i < _widths.Length; i++)
        {
            _lefts[i] = x;
            x += _widths[i] + SheetStyle.ColumnGap;
        }
    }

    public static List<Strip> Set(Setter setter, TableBlock table) => new TableSetter(setter, table).Strips();

    private List<Strip> Strips()
    {
        Strip head = Head(_setter.Element(ElementKind.Row, _element));
        Strip again = Head(LayoutElement.Decoration);
        // A head that takes a third of the page is not worth repeating.
        Strip? repeated = again.Height < _setter.Height / 3 ? again : null;
        var strips = new List<Strip> { head with { Gap = 3.5, KeepsWithNext = true } };
        Strip? rowHead = repeated;
        foreach (TableRow row in _table.Rows)
        {
            if (row is GroupRow group)
            {
                strips.Add(Group(group.Title, _setter.Element(ElementKind.Row, _element)) with { KeepsWithNext = true, Head = repeated });
                Strip continued = Group(group.Title.Add(", continued"), LayoutElement.Decoration);
                rowHead = repeated is null || continued.Height > _setter.Height / 6 ? repeated : Setter.Joined([repeated, continued], 0);
            }
            else strips.Add(Row((CellRow)row, rowHead));
        }
        return strips;
    }

    private double[] Widths()
    {
        int n = _table.Columns.Length;
        double room = _setter.Width - _tick - (SheetStyle.ColumnGap * (n - 1));
        var widths = new double[n];
        double shares = 0;
        for (int i = 0; i < n; i++)
        {
            Column column = _table.Columns[i];
            widths[i] = column.Width.Rule switch { WidthRule.Fixed => column.Width.Amount, WidthRule.Fit => Widest(i), _ => 0 };
            if (column.Width.Rule == WidthRule.Share) shares += column.Width.Amount;
        }
        double taken = widths.Sum();
        // Columns by share never get less than this part of the room each, whatever the others ask for.
        double kept = shares > 0 ? room * 0.25 : 0;
        if (taken > room - kept)
            for (int i = 0; i < n; i++) widths[i] *= (room - kept) / taken;
        double left = room - widths.Sum();
        for (int i = 0; i < n; i++)
            if (_table.Columns[i].Width.Rule == WidthRule.Share) widths[i] = left * _table.Columns[i].Width.Amount / shares;
        return widths;
    }

    private double Widest(int column)
    {
        Column asked = _table.Columns[column];
        double widest = TextMeasure.Width(_setter.Covered(Phrase.Of(asked.Title).Bold()), SheetStyle.Small);
        foreach (TableRow row in _table.Rows)
        {
            if (row is not CellRow cells || column >= cells.Cells.Length) continue;
            foreach (Phrase phrase in cells.Cells[column].Phrases)
                widest = Math.Max(widest, TextMeasure.Width(_setter.Covered(Weighted(phrase, asked.Size)), SheetStyle.SizeOf(asked.Size)));
        }
        return Math.Max(widest + 0.01, 1);
    }

    private static Phrase Weighted(Phrase phrase, TextSize size) => size is TextSize.Figure or TextSize.Large ? phrase.Bold() : phrase;

    private Strip Head(int row)
    {
        var cells = new List<List<CellLine>>();
        foreach ((Column column, double width) in _table.Columns.Zip(_widths))
            cells.Add(Lines([Phrase.Of(column.Title).Bold()], width, SheetStyle.Small));
        Strip strip = Block(cells, row, ElementKind.HeadCell, Shade.Ink);
        var rule = new RulePiece(0, strip.Height, _setter.Width, strip.Height, SheetStyle.Rule, Shade.Ink);
        return strip with { Pieces = [.. strip.Pieces, rule], Split = Splitter(cells, row, ElementKind.HeadCell, null) };
    }

    private Strip Group(Phrase title, int row)
    {
        int cell = row == LayoutElement.Decoration ? row : _setter.Element(ElementKind.HeadCell, row);
        List<Strip> lines = _setter.Paragraph(title.Bold(), 0, _setter.Width, SheetStyle.Body, Shade.Ink, cell, 0);
        Strip strip = Setter.Joined(lines, 0);
        double lead = 2.2;
        double height = lead + strip.Height + 0.6;
        return new(height, [.. strip.Pieces.Select(p => p.Moved(0, lead)), new RulePiece(0, height, _setter.Width, height, SheetStyle.RuleThin, Shade.Ink)])
        {
            Split = strip.Split,
        };
    }

    private Strip Row(CellRow row, Strip? head)
    {
        if (row.Cells.Length != _table.Columns.Length)
            throw new ArgumentException($"A row has {row.Cells.Length} cells where the table has {_table.Columns.Length} columns.");
        int element = _setter.Element(ElementKind.Row, _element);
        var cells = new List<List<CellLine>>();
        for (int i = 0; i < row.Cells.Length; i++)
        {
            TextSize size = _table.Columns[i].Size;
            cells.Add(Lines(row.Cells[i].Phrases.Select(p => Weighted(p, size)), _widths[i], SheetStyle.SizeOf(size)));
        }
        return Ruled(Block(cells, element, ElementKind.Cell, Shade.Ink), cells) with
        {
            Head = head,
            Split = Splitter(cells, element, ElementKind.Cell, head),
        };
    }

    /// <summary>A row with its rule below and, at its beginning, its box to tick.</summary>
    private Strip Ruled(Strip strip, List<List<CellLine>>? boxFor)
    {
        var pieces = strip.Pieces.ToList();
        double height = strip.Height;
        if (_tick > 0 && boxFor is not null)
        {
            double first = SheetStyle.CellPad + FirstBaseline(boxFor);
            double top = Math.Max(SheetStyle.TickBoxTop(first, SheetStyle.Body), SheetStyle.CellPad / 2);
            pieces.Insert(0, new BoxPiece(0.4, top, SheetStyle.TickBox, SheetStyle.TickBox, SheetStyle.Rule));
            height = Math.Max(height, top + SheetStyle.TickBox + (SheetStyle.CellPad / 2));
        }
        pieces.Add(new RulePiece(0, height, _setter.Width, height, SheetStyle.RuleThin, Shade.Faint));
        return strip with { Height = height, Pieces = pieces };
    }

    private List<CellLine> Lines(IEnumerable<Phrase> phrases, double width, double size) =>
        [.. phrases.SelectMany(p => _setter.Lines(p, width, size)).Select(l => new CellLine(l.Text, l.Width, l.Size, size))];

    private static double FirstBaseline(List<List<CellLine>> cells) => cells.Max(c => c.Count == 0 ? 0 : Setter.Baseline(c[0].Leading));

    /// <summary>Sets the lines of cells side by side, their first baselines level.</summary>
    private Strip Block(List<List<CellLine>> cells, int row, ElementKind kind, Shade shade)
    {
        double first = FirstBaseline(cells);
        double height = 0;
        var pieces = new List<LayoutPiece>();
        for (int i = 0; i < cells.Count; i++)
        {
            int element = row == LayoutElement.Decoration ? row : _setter.Element(kind, row);
            double y = SheetStyle.CellPad + first;
            foreach (CellLine line in cells[i])
            {
                double left = _table.Columns[i].Align switch
                {
                    ColumnAlign.Right => _widths[i] - line.Width,
                    ColumnAlign.Centre => (_widths[i] - line.Width) / 2,
                    _ => 0,
                };
                pieces.Add(new TextPiece(_lefts[i] + left, y, line.Width, line.Size, line.Text, shade, element));
                y += line.Leading * SheetStyle.Leading;
            }
            if (cells[i].Count > 0)
                height = Math.Max(height, y - Setter.Baseline(cells[i][0].Leading));
        }
        return new(height + SheetStyle.CellPad, pieces);
    }

    /// <summary>Parts a row that is higher than a page: as many lines of each cell as the page takes.</summary>
    private Func<double, double, IReadOnlyList<Strip>> Splitter(List<List<CellLine>> cells, int row, ElementKind kind, Strip? head) => (firstHeight, laterHeight) =>
    {
        if (kind == ElementKind.Cell) _setter.Remark("page.split", "A row longer than a page is split.");
        var strips = new List<Strip>();
        var next = new int[cells.Count];
        double deepest = cells.Max(c => c.Count == 0 ? 0 : c[0].Leading);
        while (next.Where((n, i) => n < cells[i].Count).Any())
        {
            double room = (strips.Count == 0 ? firstHeight : laterHeight) - (2 * SheetStyle.CellPad) - (deepest * SheetStyle.Leading);
            var part = new List<List<CellLine>>();
            for (int i = 0; i < cells.Count; i++)
            {
                int take = cells[i].Count == 0 ? 0 : Math.Max(1, (int)(room / (cells[i][0].Leading * SheetStyle.Leading)));
                part.Add([.. cells[i].Skip(next[i]).Take(take)]);
                next[i] += take;
            }
            strips.Add(Ruled(Block(part, row, kind, Shade.Ink), strips.Count == 0 && kind == ElementKind.Cell ? part : null) with { Head = head });
        }
        return strips;
    };
}
