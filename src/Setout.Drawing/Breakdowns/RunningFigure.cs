using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Breakdowns;

/// <summary>
/// A small running figure with the arrow that ends its dimension: the arrow points at the cut, away from the edge that the figure runs from.
/// Running dimensions have a mark at their origin and an arrow at each end (the way of ISO 129-1; from memory).
/// </summary>
/// <param name="Text">The figure.</param>
/// <param name="Tail">Where the arrow begins.</param>
/// <param name="Tip">Where it ends, at the line of the cut. The same place as <paramref name="Tail"/> for a figure that has no room for its arrow.</param>
internal sealed record RunningFigure(TextItem Text, Point Tail, Point Tip)
{
    /// <summary>How long an arrow is, and half how wide its head.</summary>
    public const double ArrowLength = 1.8, HalfHead = 0.55;

    private const double HeadLength = 0.9;

    /// <summary>What no other label may touch: figure and arrow.</summary>
    public Box Ink => !HasArrow ? LabelBook.Tight(Text) : LabelBook.Tight(Text).With(new Box(Math.Min(Tail.X, Tip.X), Math.Min(Tail.Y, Tip.Y), Math.Max(Tail.X, Tip.X), Math.Max(Tail.Y, Tip.Y)).With(Head(Tip, Tail)));

    /// <summary>Figure and arrow as one thing.</summary>
    public GroupItem Draw(bool hasGround) => new("", "", [Text with { HasGround = hasGround }, .. HasArrow ? Arrow(Tail, Tip) : []]);

    private bool HasArrow => Tail != Tip;

    /// <summary>An arrow that runs to the right or down.</summary>
    public static ImmutableArray<SceneItem> Arrow(Point tail, Point tip)
    {
        Box head = Head(tip, tail);
        Point one = new(head.Left, head.Top), other = tail.Y == tip.Y ? new(head.Left, head.Bottom) : new(head.Right, head.Top);
        return [new LineItem(tail, tip, Scenes.Ink.Dimension), new LineItem(one, tip, Scenes.Ink.Dimension), new LineItem(other, tip, Scenes.Ink.Dimension)];
    }

    private static Box Head(Point tip, Point tail) => tail.Y == tip.Y
        ? new(tip.X - HeadLength, tip.Y - HalfHead, tip.X, tip.Y + HalfHead)
        : new(tip.X - HalfHead, tip.Y - HeadLength, tip.X + HalfHead, tip.Y);
}
