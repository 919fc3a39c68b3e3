using System.Xml.Linq;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Drawing.Breakdowns;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Tests;

/// <summary>Short ways to write lengths and figures in the tests.</summary>
internal static class Figures
{
    public static Length In(string text) => LengthText.Parse(text, LengthUnit.Inch).Value.ToLength();

    public static Phrase Fig(string text) => Phrase.Of(LengthFormat.Inches(64).Bare.Format(In(text)));

    public static Phrase Fig(Length length) => Phrase.Of(LengthFormat.Inches(64).Bare.Format(length));

    /// <summary>Every text of a scene, groups opened.</summary>
    public static IEnumerable<TextItem> Texts(IEnumerable<SceneItem> items) => items.SelectMany(i => i switch
    {
        TextItem t => [t],
        GroupItem g => Texts(g.Items),
        _ => Array.Empty<TextItem>(),
    });

    public static IEnumerable<GroupItem> Groups(IEnumerable<SceneItem> items) =>
        items.OfType<GroupItem>().SelectMany(g => Groups(g.Items).Prepend(g));

    /// <summary>Reads the SVG as XML, which fails where it is not well formed.</summary>
    public static XDocument Xml(Scene scene, SvgOptions? options = null) => XDocument.Parse(SvgWriter.Write(scene, options ?? SvgOptions.Standalone), LoadOptions.PreserveWhitespace);

    /// <summary>Texts that lie on each other, named; empty when all is well.</summary>
    public static IReadOnlyList<string> Clashes(Scene scene)
    {
        TextItem[] texts = [.. Texts(scene.Items)];
        Box[] boxes = [.. texts.Select(LabelBook.Tight)];
        var clashes = new List<string>();
        for (int i = 0; i < boxes.Length; i++)
            for (int j = i + 1; j < boxes.Length; j++)
                if (boxes[i].Overlaps(boxes[j])) clashes.Add($"{texts[i].Text} on {texts[j].Text}");
        return clashes;
    }

    /// <summary>Texts that run off the paper.</summary>
    public static IReadOnlyList<string> Spilled(Scene scene)
    {
        var paper = new Box(0, 0, scene.Width, scene.Height);
        return [.. Texts(scene.Items).Where(t => !paper.Holds(Box.Of(t))).Select(t => t.Text.PlainText)];
    }
}
