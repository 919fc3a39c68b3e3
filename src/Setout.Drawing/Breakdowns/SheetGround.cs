using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>A sheet on the paper: where everything lies, and what of the paper labels have taken.</summary>
internal sealed class SheetGround
{
    /// <summary>Room between a label and the edge of what it stands in.</summary>
    public const double Pad = 0.7;

    private readonly BoxGrid _cells = new();

    public SheetGround(SheetInput input, BreakdownPaper paper, SheetView view, Box outline)
    {
        (Input, Paper, View, Outline) = (input, paper, view, outline);
        Parts = [.. input.Parts.Select(p => view.Of(p.Area))];
        Waste = [.. input.Waste.Select(view.Of)];
        Kept = [.. input.Kept.Select(k => view.Of(k.Area))];
        foreach (Box box in Parts.Concat(Waste).Concat(Kept)) _cells.Add(box);
        Endings = input.InnerCuts.Where(c => !c.Figure.IsEmpty).ToLookup(OwnerOf);
    }

    public SheetInput Input { get; }

    public BreakdownPaper Paper { get; }

    public SheetView View { get; }

    public Box Outline { get; }

    public ImmutableArray<Box> Parts { get; }

    public ImmutableArray<Box> Waste { get; }

    public ImmutableArray<Box> Kept { get; }

    /// <summary>The inner cuts with figures, by the part each one ends; -1 for those that end none.</summary>
    public ILookup<int, InnerCut> Endings { get; }

    public LabelBook Book { get; } = new();

    /// <summary>The part, waste or kept piece that holds some ink with a hair to spare.</summary>
    public Box? CellOf(Box ink)
    {
        foreach (int i in _cells.Near(ink)) if (_cells.All[i].Grown(-0.35).Holds(ink)) return _cells.All[i];
        return null;
    }

    /// <summary>Heavy; slanted where work on the part is held back.</summary>
    public Phrase MarkOf(int part) => Input.Parts[part].IsHeld ? Phrase.Of(Input.Parts[part].Mark).Italic() : Phrase.Of(Input.Parts[part].Mark).Bold();

    /// <summary>The part that ends at a cut, or -1.</summary>
    public int OwnerOf(InnerCut cut)
    {
        const double near = 0.6;
        double at = cut.Axis == SheetAxis.Across ? View.X(cut.At) : View.Y(cut.At);
        double middle = cut.Axis == SheetAxis.Across ? (View.Y(cut.From) + View.Y(cut.To)) / 2 : (View.X(cut.From) + View.X(cut.To)) / 2;
        Point end = cut.Axis == SheetAxis.Across ? new(at, middle) : new(middle, at);
        foreach (int i in _cells.Near(new Box(end.X, end.Y, end.X, end.Y).Grown(near)).Where(i => i < Parts.Length))
        {
            Box p = Parts[i];
            bool ends = cut.Axis == SheetAxis.Across
                ? Math.Abs(p.Right - at) < near && p.Top <= middle && middle <= p.Bottom
                : Math.Abs(p.Bottom - at) < near && p.Left <= middle && middle <= p.Right;
            if (ends) return i;
        }
        return -1;
    }
}
