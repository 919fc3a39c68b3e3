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
    /// <summary>Space above a drawing.</summary>
    public static double Gap => SceneSetter.Gap;

    /// <summary>Of each of two drawings on a standing page.</summary>
    public double HalfHeight => (Height - SceneSetter.Gap) / 2;

    /// <summary>The room of a paper.</summary>
    public static PageRoom Of(Paper paper)
    {
        Setter setter = PageComposer.SetterOf(paper);
        return new(setter.Width, setter.Height, setter.LyingWidth, setter.LyingHeight);
    }

    /// <summary>The height left for a drawing on the page of a new section, under its title and some blocks. Drawings among the blocks are not counted.</summary>
    /// <param name="paper">The paper.</param>
    /// <param name="title">Of the section.</param>
    /// <param name="blocks">What stands before the drawing.</param>
    /// <param name="document">The title of the document, on its first page; empty on others.</param>
    public static double Under(Paper paper, string title, ImmutableArray<Block> blocks, string document = "")
    {
        Setter setter = PageComposer.SetterOf(paper);
        return Left(setter, [.. document.Length > 0 ? BlockSetter.Title(setter, document) : [], .. BlockSetter.SectionTitle(setter, title), .. Strips(setter, blocks)]);
    }

    /// <summary>The same for a drawing on a page lying down, which what stays on its page is taken along to.</summary>
    public static double UnderLying(Paper paper, string title, ImmutableArray<Block> blocks)
    {
        Setter setter = PageComposer.SetterOf(paper);
        return Left(setter, [.. BlockSetter.SectionTitle(setter, title), .. Strips(setter, blocks)]) + setter.LyingHeight - setter.Height;
    }

    /// <summary>The height left for a drawing on top of a page that some blocks are to stand on too.</summary>
    public static double Over(Paper paper, ImmutableArray<Block> blocks)
    {
        Setter setter = PageComposer.SetterOf(paper);
        return Left(setter, [.. Strips(setter, blocks)]);
    }

    private static IEnumerable<Strip> Strips(Setter setter, ImmutableArray<Block> blocks) => blocks.Where(b => b is not SceneBlock).SelectMany(b => BlockSetter.Set(setter, b));

    private static double Left(Setter setter, Strip[] strips) => setter.Height - strips.Select((s, i) => s.Height + (i > 0 ? s.Gap : 0)).Sum() - SceneSetter.Gap;
}
