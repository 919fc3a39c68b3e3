using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Setting;

/// <summary>Gives a drawing its place: true size if it fits, else smaller with a note.</summary>
internal static class SceneSetter
{
    /// <summary>Space above a drawing.</summary>
    public const double Gap = 4;

    private const double NoteRoom = 6;

    /// <summary>Sets a drawing.</summary>
    /// <param name="setter">The document.</param>
    /// <param name="block">The drawing.</param>
    /// <param name="taken">Height taken on its page by headings above it.</param>
    public static Strip Set(Setter setter, SceneBlock block, double taken)
    {
        Scene scene = Covered(setter, block.Scene);
        if (!(scene.Width > 0 && scene.Height > 0))
            throw new ArgumentException($"The drawing \"{scene.Title}\" has no size.", nameof(block));
        bool isWhole = block.Place == ScenePlace.WholePage;
        taken = Math.Min(taken, setter.LyingHeight / 2);
        double above = taken > 0 ? taken + Gap : 0;
        double standing = Scale(scene, setter.Width, setter.Height - above), lying = Scale(scene, setter.LyingWidth, setter.LyingHeight - above);
        bool liesDown = isWhole && lying > standing + 1e-9;
        double scale = liesDown ? lying : standing;
        double width = liesDown ? setter.LyingWidth : setter.Width;

        int element = setter.Element(ElementKind.Figure, setter.Parent, Words(scene));
        double left = (width - (scene.Width * scale)) / 2;
        double height = scene.Height * scale;
        var pieces = new List<LayoutPiece> { new ScenePiece(left, 0, scale, scene, element) };
        if (scale < 1)
        {
            string note = $"Printed at {Math.Floor(scale * 100):0} % of the drawing's own size: read the figures, take no sizes off it.";
            foreach ((Phrase text, double wide, double size) in setter.Lines(Phrase.Of(note), width, SheetStyle.Small).Take(1))
                pieces.Add(new TextPiece(Math.Min(left, width - wide), height + Setter.Baseline(SheetStyle.Small) + 1, wide, size, text, Shade.Soft, setter.Element(ElementKind.Paragraph, setter.Parent)));
            height += NoteRoom;
            double smallest = Texts(scene.Items).Select(t => t.Size).DefaultIfEmpty(SheetStyle.Body).Min() * scale;
            if (smallest < SheetStyle.SmallestInDrawing)
                setter.Remark("page.small-drawing", $"The smallest text of \"{scene.Title}\" is printed at {smallest / SheetStyle.Point:0.0} pt.");
        }
        return new(height, pieces) { Gap = Gap, BreaksAfter = isWhole, LiesDown = liesDown, KeepsWithNext = block.KeepsWithNext };
    }

    private static string Words(Scene scene) => scene.Description.Length == 0 ? scene.Title : $"{scene.Title}. {scene.Description}";

    private static double Scale(Scene scene, double width, double height) =>
        scene.Width <= width && scene.Height <= height ? 1 : Math.Min(width / scene.Width, (height - NoteRoom) / scene.Height);

    private static IEnumerable<TextItem> Texts(IEnumerable<SceneItem> items) => items.SelectMany(i => i switch
    {
        TextItem text => [text],
        GroupItem group => Texts(group.Items),
        _ => [],
    });

    private static Scene Covered(Setter setter, Scene scene) => scene with { Items = [.. scene.Items.Select(i => Covered(setter, i))] };

    private static SceneItem Covered(Setter setter, SceneItem item) => item switch
    {
        TextItem text => text with { Text = setter.Covered(text.Text) },
        GroupItem group => group with { Items = [.. group.Items.Select(i => Covered(setter, i))] },
        _ => item,
    };
}
