// Over 200 lines: the books are kept beside what is held against them, so that both can be read at once.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Runs;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Rack;

/// <summary>
/// A shop with its own books, kept beside the log and by other means: what lies in the rack, which parts are made, how much wood went to waste. A run is made by the formulas of
/// its cuts, not by the sizes that the plan writes; then the entry of the log is held against it.
/// </summary>
/// <param name="source">The piece.</param>
/// <param name="books">Those of the shop, where it stands beside other pieces; null for a shop of its own.</param>
/// <param name="ids">What ids of entries begin with.</param>
internal sealed class SawnShop(PieceSource source, ShopBooks? books = null, string ids = "e")
{
    private sealed record Done(string Id, ImmutableArray<string> Took, ImmutableArray<(string Name, Length Along, Length Across)> Left, ImmutableArray<string> Parts, ImmutableArray<int> Rack);

    private readonly ShopBooks _books = books ?? new();
    private readonly List<Done> _done = [];
    private int _entries;

    public PieceSource Source { get; private set; } = source;

    public IEnumerable<string> Entries => _done.Select(d => d.Id);

    /// <summary>The names of the blanks that this piece may use.</summary>
    public IEnumerable<string> Blanks => _books.Blanks.Where(b => IsMine(b.Value)).Select(b => b.Key);

    /// <summary>Those of them that no run of any plan is waiting for.</summary>
    public IEnumerable<string> Kept => _books.Blanks.Where(b => b.Value.IsForAll).Select(b => b.Key);

    public int Marked => _done.Count;

    /// <summary>Stands beside the other pieces of the shop as their logs are now.</summary>
    public void See(IEnumerable<SawnShop> others) => Source = Source.Beside(Source.FileName, others.Select(o => o.Source.InShop));

    private bool IsMine(BookedBlank blank) => blank.By == Source.FileName || blank.IsForAll;

    private string NextId => $"{ids}{++_entries}";

    private string At => $"2026-11-26T{_entries / 3600 % 24:00}:{_entries / 60 % 60:00}:{_entries % 60:00}Z";

    public Plan Plan() => new PlanMaker(SheetSolvers.Default, BoardSolvers.Default).Make(Source, LayoutEffort.Steps(new(2000, 1)));

    /// <summary>A plan asks for nothing that is gone and lays nothing that is cut, and every blank there is stands among its stock to the tick.</summary>
    public void Check(Plan plan)
    {
        SetPiece set = plan.Set;
        var used = new List<StockLine>();
        foreach (SheetPlan sheets in plan.Sheets) used.AddRange(sheets.Outcome.Layout.Sheets.Select(s => sheets.Stock.First(l => l.Id == s.StockId)));
        foreach (BoardPlan boards in plan.Boards) used.AddRange(boards.Outcome.Layout.Boards.Select(b => boards.Stock.First(l => l.Id == b.StockId)));
        string[] asked = [.. used.Where(l => l.IsBlank).Select(l => l.Size.Name)];
        Assert.Equal(asked.Distinct(), asked);
        Assert.All(asked, name => Assert.Contains(name, Blanks));
        foreach (var line in used.Where(l => l is { IsBlank: false, RackPlace: not null, Size.InHand: not null }).CountBy(l => l.RackPlace!.Value))
            Assert.True(line.Value + _books.TakenOfLine.GetValueOrDefault(line.Key) <= Source.Shop.Stock[line.Key].Size.InHand, $"line {line.Key} of the rack");
        HashSet<string> made = [.. _done.SelectMany(d => d.Parts)];
        ILookup<string, int> laid = plan.Sheets.SelectMany(s => s.Instance.Parts.Select(p => (p.Id, p.Count))).Concat(plan.Boards.SelectMany(b => b.Instance.Parts.Select(p => (p.Id, p.Count)))).ToLookup(p => p.Id, p => p.Count);
        foreach (Part part in set.Parts)
        {
            int uncut = Enumerable.Range(1, part.Count).Count(i => !made.Contains(part.Count == 1 ? part.Key : $"{part.Key}#{i}"));
            Assert.Equal(uncut, laid[part.Key].Sum());
        }
        ShopStock[] there = [.. Source.ShopInHand.Stock.Where(s => s.IsBlank)];
        Assert.Equal(Blanks.Order(StringComparer.Ordinal), there.Select(b => b.Size.Name).Order(StringComparer.Ordinal));
        Assert.All(there, b => Assert.Equal((_books.Blanks[b.Size.Name].Along, b.Size.Across is null ? (Length?)null : _books.Blanks[b.Size.Name].Across), (b.Size.Along, b.Size.Across)));
        Assert.All(there, b => Assert.True(b.Board is not null || b.Identity == _books.Blanks[b.Size.Name].Identity, b.Size.Name));
    }

    /// <summary>Marks a run, or tells why not; a refusal is held against the books too.</summary>
    public string? Mark(Plan printed, SawnPlan plan, int number)
    {
        Run run = plan.Runs.Runs.First(r => r.Number == number);
        (MarkEntry? entry, Finding? refusal) = RunMarking.Of(Source, Source.SetOut(), plan, number, NextId, At);
        if (entry is null)
        {
            if (refusal!.Code == "run.wood-gone") Assert.True(IsWoodGone(printed, plan, run), refusal.Words);
            return refusal.Code;
        }
        Dictionary<int, (Length Along, Length Across)> wood = plan.Runs.Blanks.ToDictionary(b => b.Id, b => (b.Along, b.Across));
        Area taken = Area.Zero, gone = Area.Zero, parts = Area.Zero, left = Area.Zero;
        var sawn = new Dictionary<int, (Length Along, Length Across)>();
        foreach (RunCut cut in run.Cuts)
        {
            if (!sawn.Remove(cut.Blank, out var blank)) taken += (blank = wood[cut.Blank]).Along * blank.Across;
            bool isAlong = cut.Axis == GrainAxis.Along;
            Length extent = isAlong ? blank.Along : blank.Across, f = cut.Figure, k = cut.Kerf;
            (Length off, Length rest) = run.Kind switch
            {
                RunKind.True or RunKind.Clear => (f - k, extent - f),
                _ => (f - cut.Planed, extent - f - k - cut.PlanedRest),
            };
            Area kept = Area.Zero;
            foreach ((int? id, Length size) in new[] { (cut.Off, off), (cut.Rest, rest) })
            {
                if (id is not { } piece) continue;
                sawn[piece] = isAlong ? (size, blank.Across) : (blank.Along, size);
                kept += sawn[piece].Along * sawn[piece].Across;
            }
            gone += (blank.Along * blank.Across) - kept;
        }
        foreach (RunBlank whole in plan.TakenBy(run).Where(b => b.Use == BlankUse.Part))
        {
            sawn[whole.Id] = (whole.Along, whole.Across);
            taken += whole.Along * whole.Across;
        }
        var remains = new List<(string, Length, Length)>();
        var named = entry.Left.ToDictionary(l => l.Name);
        foreach ((int id, (Length along, Length across)) in sawn.OrderBy(s => s.Key))
        {
            BlankUse use = plan.Runs.Blanks[id].Use;
            Area area = along * across;
            if (use == BlankUse.Part) parts += area;
            else if (use == BlankUse.Waste) gone += area;
            else
            {
                left += area;
                LeftWood told = named.Values.First(l => l.Size.Along == along && (l.Size.Across ?? across) == across && !remains.Any(r => r.Item1 == l.Name));
                remains.Add((told.Name, along, across));
            }
        }
        Assert.Equal(entry.Left.Length, remains.Count);
        Assert.Equal(taken, left + parts + gone);
        Assert.Equal(entry.Keys.Length, sawn.Keys.Count(id => plan.Runs.Blanks[id].Use == BlankUse.Part));
        // What it takes is there, to the tick.
        var took = new List<string>();
        var rack = new List<int>();
        Area lay = Area.Zero;
        foreach ((TakenWood was, RunBlank blank) in entry.Took.Zip(plan.TakenBy(run)))
        {
            Assert.Equal(plan.Materials[blank.Material].Name, was.Of);
            if (was.Source == WoodSource.Blank)
            {
                Assert.True(_books.Blanks.Remove(was.Name, out BookedBlank? there), was.Name);
                Assert.True(IsMine(there), was.Name);
                // A lane is a tick wider than its stick where that is no whole number of ticks; a log tells no width of it.
                bool isLane = !plan.Materials[blank.Material].IsSheet && there.Across == blank.Across + Length.FromTicks(1);
                lay += there.Along * (isLane ? blank.Across : there.Across);
                took.Add(was.Name);
                _books.Gone[was.Name] = there;
                continue;
            }
            Assert.Equal((blank.Along, blank.Across), (was.Size!.Along, was.Size.Across ?? blank.Across));
            lay += blank.Along * blank.Across;
            if (was.Source != WoodSource.Rack) continue;
            int line = LineOf(printed, blank).RackPlace!.Value;
            _books.TakenOfLine[line] = _books.TakenOfLine.GetValueOrDefault(line) + 1;
            Assert.True(_books.TakenOfLine[line] <= Source.Shop.Stock[line].Size.InHand, $"line {line} of the rack");
            rack.Add(line);
        }
        Assert.Equal(entry.Took.Length, plan.TakenBy(run).Length);
        Assert.Equal(taken, lay);
        HashSet<string> before = [.. _done.SelectMany(d => d.Parts)];
        Assert.DoesNotContain(entry.Keys, before.Contains);
        foreach ((string name, Length along, Length across) in remains)
            _books.Blanks.Add(name, new(along, across, Source.FileName, named[name].Use == BlankUse.Keep, MaterialIdentity.Of(Source.Piece.Materials[named[name].Of])));
        _done.Add(new(entry.Id, [.. took], [.. remains.Select(r => (r.Item1, r.Item2, r.Item3))], entry.Keys, [.. rack]));
        Add(entry);
        return null;
    }

    private static StockLine LineOf(Plan plan, RunBlank blank)
    {
        int boards = blank.Material - plan.Sheets.Length;
        return boards < 0
            ? plan.Sheets[blank.Material].Stock.First(l => l.Id == plan.Sheets[blank.Material].Outcome.Layout.Sheets[blank.Stock].StockId)
            : plan.Boards[boards].Stock.First(l => l.Id == plan.Boards[boards].Outcome.Layout.Boards[blank.Stock].StockId);
    }

    // By the books, not by the log: some stock of the run is not there, or not as often as it begins to cut it.
    private bool IsWoodGone(Plan printed, SawnPlan plan, Run run)
    {
        StockLine[] stock = [.. plan.TakenBy(run).Where(b => plan.MadeBy(b.Id) is null).Select(b => LineOf(printed, b))];
        return stock.Any(l => l.IsBlank && !Blanks.Contains(l.Size.Name))
            || stock.Where(l => l is { IsBlank: false, RackPlace: not null, Size.InHand: not null }).CountBy(l => l.RackPlace!.Value).Any(l => l.Value + _books.TakenOfLine.GetValueOrDefault(l.Key) > Source.Shop.Stock[l.Key].Size.InHand);
    }

    /// <summary>Marks a blank gone that this piece may use.</summary>
    public void MarkGone(string name)
    {
        string next = NextId;
        _books.Blanks.Remove(name, out BookedBlank? blank);
        _books.Gone[name] = blank!;
        string of = Source.Piece.Materials.Values.First(m => MaterialIdentity.Of(m) == blank!.Identity).Name;
        _done.Add(new(next, [name], [], [], []));
        Add(new MarkEntry(next, At, Progress.Cut, [], ImmutableDictionary<QuantityKey, ExactLength>.Empty) { Took = [new(of, WoodSource.Blank, name, null)] });
    }

    /// <summary>Voids an entry that nothing was built on; true when it could be.</summary>
    public bool Void(string id)
    {
        var entry = (MarkEntry)Source.Log.Entries.Last(e => e.Id == id);
        Done done = _done.Single(d => d.Id == id);
        bool isBuilt = done.Left.Any(l => !_books.Blanks.ContainsKey(l.Name));
        Assert.Equal(isBuilt, !Source.Ledger.Built(Source.InShop, entry).IsEmpty);
        if (isBuilt) return false;
        foreach (var left in done.Left) _books.Blanks.Remove(left.Name);
        foreach (string name in done.Took) _books.Blanks.Add(name, _books.Gone[name]);
        foreach (int line in done.Rack) _books.TakenOfLine[line]--;
        _done.Remove(done);
        string next = NextId;
        Add(new VoidEntry(next, At, id));
        return true;
    }

    /// <summary>Reads a quantity a little off what it is.</summary>
    public void Read(QuantityKey key, ExactLength value)
    {
        string next = NextId;
        Add(new ReadingEntry(next, At, key, [value], "tape", ""));
    }

    private void Add(LogEntry entry)
    {
        if (Source.Together is not { } together)
        {
            Source = Source with { Log = new(Source.Log.Entries.Add(Back(entry))) };
            return;
        }
        IEnumerable<(MemberPiece Member, LogEntry Entry)> each = entry switch
        {
            MarkEntry mark => together.Split(mark),
            VoidEntry gone => together.Members.Where(m => m.Source.Log.Entries.Any(e => e.Id == gone.Entry)).Select(m => (m, entry)),
            ReadingEntry reading => together.Own(reading.Key).Select(o => (o.Member, (LogEntry)(reading with { Key = o.Key }))),
            _ => throw new InvalidOperationException(),
        };
        Source = together.With([.. each.Select(e => (e.Member, Back(e.Entry)))]);
    }

    // As it comes back from the file.
    private static LogEntry Back(LogEntry entry)
    {
        Assert.Null(LogText.Fault(entry));
        return LogText.Read(LogText.Head + LogText.Write(entry)).Value!.Entries[0];
    }
}
