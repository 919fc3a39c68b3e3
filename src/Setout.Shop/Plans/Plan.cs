using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Boards;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>A size of stock as the layouts know it.</summary>
/// <param name="Id">The id in the instance.</param>
/// <param name="Size">What it is.</param>
/// <param name="Words">For people: <c>96 x 48 in</c>, or the shop's own name for a blank.</param>
public sealed record StockLine(string Id, StockSize Size, string Words)
{
    /// <summary>Which line of the shop's stock it is, from 0; null for what the piece file offers and for usual sizes.</summary>
    public int? RackPlace { get; init; }

    /// <summary>The thickness read of this very sheet; null, the default, where nobody has.</summary>
    public ExactLength? Reads { get; init; }

    /// <summary>True for a blank that the log left.</summary>
    public bool IsBlank { get; init; }

    /// <summary>True for such a blank that is worth keeping, and was not left for parts of the piece.</summary>
    public bool IsKept { get; init; }

    /// <summary>Of a board to rip: its section; null, the default, for all else.</summary>
    public StickSection? Section { get; init; }

    /// <summary>How the board is ripped into lanes; null, the default, for what is used as wide as it is.</summary>
    public BoardRip? Rip { get; init; }

    /// <summary>The words, and that it is to be ripped where it is.</summary>
    public string Task => Rip is null ? Words : $"{Words}, to rip";
}

/// <summary>The layouts of one kind of sheet.</summary>
/// <param name="Material">Which.</param>
/// <param name="Instance">What was asked.</param>
/// <param name="Outcome">What came out, checked.</param>
/// <param name="Stock">The stock offered.</param>
/// <param name="IsPriced">False when prices are missing and area stood in for money.</param>
public sealed record SheetPlan(Panel Material, SheetInstance Instance, SheetOutcome Outcome, ImmutableArray<StockLine> Stock, bool IsPriced);

/// <summary>The layouts of one section of board.</summary>
/// <param name="Material">Which.</param>
/// <param name="Instance">What was asked.</param>
/// <param name="Outcome">What came out, checked.</param>
/// <param name="Stock">The stock offered.</param>
/// <param name="IsPriced">False when prices are missing and length stood in for money.</param>
public sealed record BoardPlan(Stick Material, BoardInstance Instance, BoardOutcome Outcome, ImmutableArray<StockLine> Stock, bool IsPriced)
{
    /// <summary>What a board of the layout is, as the solver was told.</summary>
    public BoardStock StockOf(LaidBoard board) => Instance.Stock.First(s => s.Id == board.StockId);

    /// <summary>True when a board of the layout is ripped.</summary>
    public bool IsRipped => Outcome.Layout.Boards.Any(b => StockOf(b).Rip is not null);
}

/// <summary>One line of the buying list.</summary>
/// <param name="Kind">Sheet, board or hardware: how a supplier sells it.</param>
/// <param name="Item">What to ask for.</param>
/// <param name="Count">How many.</param>
/// <param name="Unit">Of what: sheet, board, pair, piece.</param>
/// <param name="Price">For one; null when not known.</param>
/// <param name="Note">A remark, such as why so many; may be empty.</param>
public sealed record BuyingLine(BuyingKind Kind, string Item, int Count, string Unit, Money? Price, string Note)
{
    /// <summary>What is over when all is cut or used, such as <c>leaves 22 x 12 in to keep</c> or <c>52 spare</c>; empty when nothing worth telling is.</summary>
    public string Spare { get; init; } = "";

    /// <summary>How many more these are than what is marked bought, and why they are asked for; empty where nothing of it is marked bought.</summary>
    public string More { get; init; } = "";

    /// <summary>What stands beside it, small: that it is more than was bought, then what is over.</summary>
    public string Beside => string.Join("; ", new[] { More, Spare }.Where(w => w.Length > 0));

    /// <summary>Of sheets and boards to buy: the wood and its size, as a line of a rack has it; null for all else, and for boards that are ripped.</summary>
    public ShopStock? Wood { get; init; }

    /// <summary>Of sheets and boards to buy: the materials of the piece that are cut from them; empty for all else.</summary>
    public ImmutableArray<string> Of { get; init; } = [];

    /// <summary>Of hardware: what it is marked bought by, its own name as a rule, also where it comes in packs; empty for all else.</summary>
    public string Thing { get; init; } = "";

    /// <summary>The unit as it is said of so many: one sheet, two sheets.</summary>
    public string Units => Count == 1 || Unit.Length == 0 ? Unit : Unit switch { "foot" => "feet", "square foot" => "square feet", "box" => "boxes", _ => $"{Unit}s" };

    /// <summary>Count times price.</summary>
    public Money? Total => Price is { } price ? price * Count : null;
}

/// <summary>How a supplier sells it.</summary>
public enum BuyingKind
{
    /// <summary>Sheet goods.</summary>
    Sheet,

    /// <summary>Lumber.</summary>
    Board,

    /// <summary>All that is not wood.</summary>
    Hardware,

    /// <summary>Taken from the rack, not bought.</summary>
    FromTheRack,
}

/// <summary>The whole plan of a piece: everything the bench needs, worked out. Immutable, and the same for the same inputs.</summary>
/// <param name="Set">The piece set out.</param>
/// <param name="Source">What it was made from.</param>
/// <param name="Sheets">Layouts of sheets.</param>
/// <param name="Boards">Layouts of boards.</param>
/// <param name="Buying">The buying list.</param>
/// <param name="Findings">All findings, those that stop first.</param>
public sealed record Plan(
    SetPiece Set, PieceSource Source, ImmutableArray<SheetPlan> Sheets, ImmutableArray<BoardPlan> Boards,
    ImmutableArray<BuyingLine> Buying, ImmutableArray<Finding> Findings)
{
    /// <summary>The work at the saws, material by material: those of <see cref="Sheets"/> first, then those of <see cref="Boards"/>.</summary>
    public RunPlan Runs { get; init; } = RunPlan.None;

    /// <summary>The same plan told of the same texts in another unit: the layouts, the runs and the names of what is bought stay, and with them what a run is told by.</summary>
    /// <param name="source">The texts, <see cref="PieceSource.ShownIn"/> the unit.</param>
    public Plan Told(PieceSource source)
    {
        if (source.Piece.Shown == Source.Piece.Shown) return this;
        SetPiece set = source.SetOut();
        ImmutableArray<Finding> own = Set.Findings;
        return this with { Set = set, Source = source, Findings = own.Length != set.Findings.Length ? Findings : [.. Findings.Select(f => own.IndexOf(f) is >= 0 and int at ? set.Findings[at] : f)] };
    }

    /// <summary>The version of plan.json.</summary>
    public const int Version = 1;

    /// <summary>True when a finding stops the plan.</summary>
    public bool IsStopped => Findings.Any(f => f.Severity == Severity.Stop);

    /// <summary>The money of all lines that have a price.</summary>
    public Money Cost => Buying.Aggregate(Money.Zero, (sum, line) => sum + (line.Total ?? Money.Zero));

    /// <summary>How many lines to buy have no price.</summary>
    public int Unpriced => Buying.Count(l => l.Kind != BuyingKind.FromTheRack && l.Price is null);
}
