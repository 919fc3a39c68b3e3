using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Drawing.Scenes;
using Setout.Shop.Rack;

namespace Setout.Shop.Drawings;

/// <summary>What stands in the rack, drawn small and all to one scale: sheets on their long edge one before the other, boards lying on arms.</summary>
public static class RackPicture
{
    // One millimetre of paper for so many of wood: the longest board of a yard, 16 ft, is 122 mm then.
    private const double Scale = 40;
    private const double Step = 1.6, BoardHeight = 2.6, Edge = 0.4;
    private const int MostShown = 5;

    /// <summary>Draws a thing.</summary>
    public static Scene Of(RackThing thing)
    {
        double along = Millimetres(thing.Stock.Size.Along) / Scale;
        int shown = Math.Clamp(thing.Count, 1, MostShown);
        return thing.Stock.Size.Across is { } across ? Sheets(thing, along, Millimetres(across) / Scale, shown) : Boards(thing, along, shown);
    }

    private static Scene Sheets(RackThing thing, double along, double across, int shown)
    {
        var items = ImmutableArray.CreateBuilder<SceneItem>();
        double lean = Step * (shown - 1);
        for (int i = shown - 1; i >= 0; i--)
        {
            double x = Edge + (Step * i), y = Edge + lean - (Step * i);
            items.Add(ShapeItem.Rectangle(x, y, along, across, i == 0 ? Ink.Outline : Ink.Part, Wash.Panel));
        }
        // The grain runs along the sheet: the nearest shows it.
        foreach (double at in new[] { 0.25, 0.5, 0.75 }) items.Add(new LineItem(new(Edge + (along * 0.04), Edge + lean + (across * at)), new(Edge + (along * 0.96), Edge + lean + (across * at)), Ink.Grain));
        return new(along + lean + (2 * Edge), across + lean + (2 * Edge), thing.Wood, "", items.ToImmutable());
    }

    private static Scene Boards(RackThing thing, double along, int shown)
    {
        var items = ImmutableArray.CreateBuilder<SceneItem>();
        for (int i = 0; i < shown; i++)
        {
            double y = Edge + (BoardHeight * i);
            items.Add(ShapeItem.Rectangle(Edge, y, along, BoardHeight, Ink.Part, Wash.Wood));
            items.Add(new LineItem(new(Edge + 0.6, y + (BoardHeight / 2)), new(Edge + along - 0.6, y + (BoardHeight / 2)), Ink.Grain));
        }
        double height = (BoardHeight * shown) + (2 * Edge);
        foreach (Core.Pieces.Flaw flaw in thing.Stock.Size.Flaws)
        {
            double from = Millimetres(flaw.From) / Scale, to = Millimetres(flaw.To) / Scale;
            items.Add(new HatchItem(new(Edge + from, Edge), Math.Max(to - from, 0.8), BoardHeight));
        }
        return new(along + (2 * Edge), height, thing.Wood, "", items.ToImmutable());
    }

    private static double Millimetres(Length length) => length.Ticks / 160_000.0;
}
