using System.Collections.Immutable;
using Setout.Drawing.Documents.Setting;

namespace Setout.Drawing.Documents;

/// <summary>The room that a page has for drawings at their own size, in millimetres: what whoever draws for a document asks first.</summary>
/// <param name="Width">Of the column of a standing page.</param>
/// <param name="Height">Of a drawing alone on a standing page.</param>
/// <param name="LyingWidth">Of the column of a page lying down.</param>
/// <param name="LyingHeight">Of a drawing alone on a page lying down.</param>
public sealed record PageRoom(double Width, double Height, double LyingWidth, double LyingHeight)
{
    /// <summary>Of each of two drawings on a standing page.</summary>
    public double HalfHeight => (Height - SceneSetter.Gap) / 2;

    /// <summary>The room of a paper.</summary>
    public static PageRoom Of(Paper paper)
    {
        Setter setter = PageComposer.SetterOf(paper);
        return new(setter.Width, setter.Height, setter.LyingWidth, setter.LyingHeight);
    }

    /// <summary>The height left for a drawing on the page of a new section, under its title and some blocks. Drawings among the blocks are not counted.</summary>
    public static double Under(Paper paper, string title, ImmutableArray<Block> blocks)
    {
        Setter setter = PageComposer.SetterOf(paper);
        Strip[] strips = [.. BlockSetter.SectionTitle(setter, title), .. blocks.Where(b => b is not SceneBlock).SelectMany(b => BlockSetter.Set(setter, b))];
        return setter.Height - strips.Select((s, i) => s.Height + (i > 0 ? s.Gap : 0)).Sum() - SceneSetter.Gap;
    }
}
