using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;
using Setout.Shop.Plans;
using Setout.Shop.Runs;

namespace Setout.Shop.Drawings;

/// <summary>What the runs say of one sheet beyond its first cuts: which sides are trued when, how it lies, what is kept at which size, what inside it has a name.</summary>
internal sealed class SheetAtTheSaw
{
    private readonly Plan _plan;
    private readonly SawnSheets _saws;
    private readonly SheetStock _stock;
    private readonly RunBlank[] _own;
    private readonly (Cutting.Runs.Run Run, RunCut Cut)[] _cuts;
    private readonly Length _kerf;
    private readonly LengthFormat _bare, _format;

    public SheetAtTheSaw(Plan plan, SawnSheets saws, int material, int sheet, SheetStock stock)
    {
        (_plan, _saws, _stock, _kerf) = (plan, saws, stock, plan.Sheets[material].Instance.Kerf);
        _own = [.. plan.Runs.Blanks.Where(b => b.Material == material && b.Stock == sheet)];
        HashSet<int> ids = [.. _own.Select(b => b.Id)];
        _cuts = [.. plan.Runs.Runs.SelectMany(r => r.Cuts.Select(c => (r, c))).Where(p => ids.Contains(p.c.Blank))];
        (_bare, _format) = (LengthFormat.For(plan.Set.Piece.Shown).Bare, LengthFormat.For(plan.Set.Piece.Shown));
    }

    /// <summary>The two sides that figures run from: which run makes each true, and what goes off.</summary>
    public Phrase Reference()
    {
        EdgeTrim trim = _stock.Trim;
        Phrase words = Side(Phrase.Of("reference edge 0: "), trim.AcrossStart, BlankSide.NearEdge);
        words = Side(words.Add("; end 0: "), trim.AlongStart, BlankSide.NearEnd);
        // A saw that takes another kerf than the drawing has leaves the difference with what remains.
        bool isExact = _cuts.All(c => c.Run.Kind is RunKind.True or RunKind.Clear || c.Cut.Kerf == _kerf);
        return words.Add(isExact ? "; all figures run from there" : "; figures run from there, with kerfs of ").Add(isExact ? Phrase.Empty : Phrase.Of(_format.Format(_kerf)).Add(": find the place by them, cut by the runs"));
    }

    private Phrase Side(Phrase words, Length off, BlankSide side)
    {
        if (off.Sign == 0) return words.Add("true as it is");
        (Cutting.Runs.Run Run, RunCut Cut)[] trued = [.. _cuts.Where(c => c.Run.Kind == RunKind.True && c.Cut.From == side && Lies(c.Cut.Blank, side))];
        int[] runs = [.. trued.Select(c => c.Run.Number).Distinct().Order()];
        string Pieces() => string.Join(", ", trued.OrderBy(c => c.Run.Number).Select(c => _saws.Names.Spoken(c.Cut.Blank)).Distinct());
        string when = runs.Length switch
        {
            // No run cuts it yet.
            0 => "to be trued first, ",
            _ when trued.Any(c => c.Run.Number == runs[0] && IsWhole(c.Cut.Blank, side)) => $"trued in run {runs[0]}, ",
            1 => $"trued piece by piece in run {runs[0]} ({Pieces()}), ",
            _ => $"trued piece by piece in runs {CutLines.List(runs.Select(r => $"{r}"))} ({Pieces()}), ",
        };
        return words.Add(when).Add(_format.Format(off)).Add(" off");
    }

    // The blank reaches to that side of the sheet as it came.
    private bool Lies(int blank, BlankSide side) => _saws.PlaceOf(blank) is { } place && (side == BlankSide.NearEdge ? place.FromAcross == -_stock.Trim.AcrossStart : place.FromAlong == -_stock.Trim.AlongStart);

    private bool IsWhole(int blank, BlankSide side) => _plan.Runs.Blanks[blank] is var b && (side == BlankSide.NearEdge ? b.Along == _own[0].Along : b.Across >= _own[0].Across - _stock.Trim.AcrossStart);

    /// <summary>How the sheet lies under a guided saw, against how it is drawn; empty where none cuts it. Turned over about the line across, so that the reference edge stays away from the hands.</summary>
    public string FaceDown => Array.Exists(_cuts, c => c.Run.Way == SawWay.Guide) ? "for the guided saw it lies face down: with the reference edge away from you, the 0 end is at your right" : "";

    /// <summary>The words on what is kept: its size as it is kept, and which of its sides are raw; then the size alone.</summary>
    public (Phrase Words, Phrase Brief) Kept(SheetRectangle place)
    {
        RunBlank? kept = _own.Where(b => b.Use == BlankUse.Keep).OrderByDescending(b => Overlap(_saws.PlaceOf(b.Id), place)).FirstOrDefault();
        if (kept is null || Overlap(_saws.PlaceOf(kept.Id), place) == 0) return (Phrase.Of("keep, ").Add(_bare.Format(place.Along)).Add(" x ").Add(_bare.Format(place.Across)), Phrase.Empty);
        string name = _saws.Names[kept.Id], raw = RawSides.Words(kept);
        string words = name.Contains('.', StringComparison.Ordinal) ? $"keep {name}, " : "keep, ";
        Phrase Size(string before) => Phrase.Of(before).Add(_bare.Format(kept.Along)).Add(" x ").Add(_bare.Format(kept.Across));
        return (Size(words).Add(raw.Length > 0 ? $", {raw}" : ""), Size("keep, "));
    }

    private static Int128 Overlap(SheetRectangle? at, SheetRectangle place)
    {
        if (at is null) return 0;
        Length along = Length.Min(at.FromAlong + at.Along, place.FromAlong + place.Along) - Length.Max(at.FromAlong, place.FromAlong);
        Length across = Length.Min(at.FromAcross + at.Across, place.FromAcross + place.Across) - Length.Max(at.FromAcross, place.FromAcross);
        return along.Sign > 0 && across.Sign > 0 ? (Int128)along.Ticks * across.Ticks : 0;
    }

    /// <summary>Pieces with names of their own that no strip name stands for: what comes out of each; empty where there are none.</summary>
    public string Inside(FirstCuts first)
    {
        HashSet<string> told = [.. first.Strips.Select(s => s.Name)];
        string[] pieces =
        [
            .. _cuts.Select(c => c.Cut.Off).OfType<int>().Select(id => _plan.Runs.Blanks[id])
                .Where(b => b.Use is BlankUse.Work or BlankUse.Waiting && !told.Contains(_saws.Names[b.Id]) && _saws.Names[b.Id].Contains('.', StringComparison.Ordinal))
                .Select(b => (Name: _saws.Names[b.Id], Marks: Marks(b))).Where(p => p.Marks.Length > 0).DistinctBy(p => p.Name).Select(p => $"{p.Name} is the piece of {p.Marks}"),
        ];
        return string.Join("; ", pieces);
    }

    private string Marks(RunBlank piece)
    {
        SheetRectangle place = _saws.PlaceOf(piece.Id)!;
        IEnumerable<string> ids = _own.Where(b => b.Use == BlankUse.Part && Overlap(_saws.PlaceOf(b.Id), place) > 0).Select(b => b.PartId).Concat(piece.Waiting);
        return CutLines.List(ids.Select(id => _plan.Set.Parts.First(p => p.Key == id).Mark).GroupBy(m => m).Select(g => g.Count() == 1 ? g.Key : $"{g.Count()} x {g.Key}"));
    }
}
