using System.Collections.Immutable;
using Setout.Cutting.Runs;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>
/// What each rectangle of wood is called, on drawings, run pages and screens alike. Sheets have letters through all materials of a plan, boards numbers; none that marks of parts or the names of
/// wood in hand begin with. Wood in hand with a short name of its own keeps it. What comes off a sheet A to be cut again, kept or put aside is A.1, A.2... in the order in which it comes off, and off
/// A.1 in a later plan A.1.1; off a board 1 it is 1a, 1b... What remains keeps the name, and so does a piece of which nothing but waste remains. Parts are called by their marks, waste by nothing.
/// </summary>
public sealed class BlankNames
{
    private readonly Plan _plan;
    private readonly string[] _names;
    private readonly StockNames _stock;

    private BlankNames(Plan plan)
    {
        _plan = plan;
        _stock = StockNames.Of(plan);
        ImmutableArray<RunBlank> blanks = plan.Runs.Blanks;
        _names = new string[blanks.Length];
        Array.Fill(_names, "");
        // Stock stands first, and one that needs no cut is a part from the start.
        foreach (RunBlank stock in blanks.DistinctBy(b => (b.Material, b.Stock))) _names[stock.Id] = OfStock(stock.Material, stock.Stock);
        var counts = new Dictionary<(int, int), int>();
        foreach (RunCut cut in plan.Runs.Runs.SelectMany(r => r.Cuts))
        {
            RunBlank? off = Blank(cut.Off), rest = Blank(cut.Rest);
            if (rest is not null) _names[rest.Id] = rest.Use switch { BlankUse.Part => Mark(rest), _ => _names[cut.Blank] };
            if (off is null || off.Use == BlankUse.Waste) continue;
            if (off.Use == BlankUse.Part) _names[off.Id] = Mark(off);
            else if (rest is null or { Use: BlankUse.Waste }) _names[off.Id] = _names[cut.Blank];
            else
            {
                string name;
                do name = Piece(off, counts[(off.Material, off.Stock)] = counts.GetValueOrDefault((off.Material, off.Stock)) + 1);
                while (!_stock.IsFree(name));
                _names[off.Id] = name;
            }
        }
    }

    /// <summary>The names of all blanks of a plan.</summary>
    public static BlankNames Of(Plan plan) => new(plan);

    /// <summary>The name of a blank by its id; the mark of a part; of waste the name of what it came off, or nothing.</summary>
    public string this[int blank] => _names[blank];

    /// <summary>The letter of a sheet or the number of a board, or its own name.</summary>
    /// <param name="material">The material: those of sheets first, then those of boards.</param>
    /// <param name="stock">Which sheet or board of its layout, from 0.</param>
    public string OfStock(int material, int stock) => _stock[material, stock];

    /// <summary>The same with what it is; an own name alone, unless it begins with a number and might be a part or a size.</summary>
    public string SpokenStock(int material, int stock) => _stock.IsOwn(material, stock) && !char.IsAsciiDigit(_stock[material, stock][0]) ? _stock[material, stock] : $"{(IsSheet(material) ? "sheet" : "board")} {_stock[material, stock]}";

    /// <summary>The name with what it is: <c>sheet A</c>, <c>board 1</c>, or <c>A.1</c>; the own name of wood in hand as it is.</summary>
    public string Spoken(int blank)
    {
        RunBlank what = _plan.Runs.Blanks[blank];
        string name = _names[blank];
        return name == OfStock(what.Material, what.Stock) ? SpokenStock(what.Material, what.Stock) : name;
    }

    /// <summary>The same; a part that is marked by a number is <c>part 4</c>.</summary>
    public string SpokenPiece(int blank) => _plan.Runs.Blanks[blank].Use == BlankUse.Part && char.IsAsciiDigit(_names[blank][0]) ? $"part {_names[blank]}" : Spoken(blank);

    /// <summary>The line of stock that a sheet or board of a layout is.</summary>
    /// <param name="material">The material: those of sheets first, then those of boards.</param>
    /// <param name="stock">Which sheet or board of its layout, from 0.</param>
    public StockLine LineOf(int material, int stock)
    {
        (ImmutableArray<StockLine> lines, string id) = IsSheet(material)
            ? (_plan.Sheets[material].Stock, _plan.Sheets[material].Outcome.Layout.Sheets[stock].StockId)
            : (_plan.Boards[material - _plan.Sheets.Length].Stock, _plan.Boards[material - _plan.Sheets.Length].Outcome.Layout.Boards[stock].StockId);
        return lines.First(l => l.Id == id);
    }

    /// <summary>True for a sheet, false for a board.</summary>
    public bool IsSheet(int material) => material < _plan.Sheets.Length;

    // A number is told from what follows it by a small letter, all else by a point.
    private string Piece(RunBlank off, int number)
    {
        string of = OfStock(off.Material, off.Stock);
        return IsSheet(off.Material) || !of.All(char.IsAsciiDigit) ? $"{of}.{number}" : of + Letters.Lower(number - 1);
    }

    private RunBlank? Blank(int? id) => id is { } at ? _plan.Runs.Blanks[at] : null;

    private string Mark(RunBlank part) => _plan.Set.Parts.First(p => p.Key == part.PartId).Mark;
}
