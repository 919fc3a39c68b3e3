using System.Collections.Immutable;
using Setout.Drawing.Scenes;

namespace Setout.Drawing.Documents.Setting;

/// <summary>Turns each kind of block into strips.</summary>
internal static class BlockSetter
{
    /// <summary>The word that makes a caution a caution; the frame alone never does.</summary>
    public const string CautionWord = "Caution";

    private const double TogetherGap = 8;

    public static List<Strip> Set(Setter setter, Block block)
    {
        List<Strip> strips = block switch
        {
            HeadingBlock heading => Heading(setter, heading),
            ParagraphBlock paragraph => Paragraph(setter, paragraph),
            CautionBlock caution => [Caution(setter, caution.Lines, setter.Parent, 0, 4)],
            TableBlock table => TableSetter.Set(setter, table),
            WorkingBlock working => WorkingSetter.Set(setter, working),
            StepsBlock steps => Steps(setter, steps),
            TogetherBlock together => Together(setter, together),
            PageBreakBlock => [new Strip(0, []) { BreaksBefore = true }],
            _ => throw new ArgumentException($"No setting for {block.GetType().Name}.", nameof(block)),
        };
        if (block.KeepsWithNext && strips.Count > 0) strips[^1] = strips[^1] with { KeepsWithNext = true };
        return strips;
    }

    public static List<Strip> Title(Setter setter, string title)
    {
        int element = setter.Element(ElementKind.Title, 0);
        return KeptWhole(setter.Paragraph(Phrase.Of(title).Bold(), 0, setter.Width, SheetStyle.Title, Shade.Ink, element, 0));
    }

    public static List<Strip> SectionTitle(Setter setter, string title)
    {
        int element = setter.Element(ElementKind.SectionTitle, setter.Parent);
        List<Strip> strips = KeptWhole(setter.Paragraph(Phrase.Of(title).Bold(), 0, setter.Width, SheetStyle.SectionTitle, Shade.Ink, element, 9));
        const double Rule = 1.5;
        strips.Add(new(Rule, [new RulePiece(0, Rule / 2, setter.Width, Rule / 2, SheetStyle.RuleHeavy, Shade.Ink)]) { KeepsWithNext = true });
        return strips;
    }

    private static List<Strip> Together(Setter setter, TogetherBlock together)
    {
        Strip[] strips = [.. together.Blocks.SelectMany(b => Set(setter, b))];
        // Set off from what is above, so that a page shows at a glance what belongs together.
        return [.. strips.Select((s, i) => s with { KeepsWithNext = i < strips.Length - 1, Gap = i == 0 ? Math.Max(s.Gap, TogetherGap) : s.Gap })];
    }

    private static List<Strip> KeptWhole(List<Strip> strips) => [.. strips.Select(s => s with { KeepsWithNext = true })];

    private static List<Strip> Heading(Setter setter, HeadingBlock heading)
    {
        int element = setter.Element(ElementKind.Heading, setter.Parent);
        return KeptWhole(setter.Paragraph(heading.Text.Bold(), 0, setter.Width, SheetStyle.Heading, Shade.Ink, element, 6));
    }

    private static List<Strip> Paragraph(Setter setter, ParagraphBlock paragraph)
    {
        int element = setter.Element(ElementKind.Paragraph, setter.Parent);
        bool isFigure = paragraph.Size is TextSize.Figure or TextSize.Large;
        // Long lines of small type tire the eye: running text keeps to about 80 characters.
        double room = paragraph.Size is TextSize.Body or TextSize.Small ? Math.Min(setter.Width, 150) : setter.Width;
        return setter.Paragraph(isFigure ? paragraph.Text.Bold() : paragraph.Text, 0, room, SheetStyle.SizeOf(paragraph.Size),
            paragraph.Size == TextSize.Small ? Shade.Soft : Shade.Ink, element, paragraph.Size == TextSize.Small ? 1.5 : 2.5);
    }

    private static Strip Caution(Setter setter, ImmutableArray<Phrase> lines, int parent, double left, double gap)
    {
        int element = setter.Element(ElementKind.Caution, parent);
        const double Pad = 3, Bar = 1.6;
        double inner = left + Bar + Pad, room = setter.Width - inner - Pad;
        List<Strip> inside = setter.Paragraph(Phrase.Of(CautionWord).Bold(), inner, room, SheetStyle.Body, Shade.Ink, element, 0);
        foreach (Phrase line in lines) inside.AddRange(setter.Paragraph(line, inner, room, SheetStyle.Body, Shade.Ink, element, 1.6));

        Strip Framed(List<Strip> part)
        {
            Strip body = Setter.Joined(part, 0);
            double height = body.Height + (1.6 * Pad);
            return new(height,
            [
                new BoxPiece(left + 0.25, 0.25, setter.Width - left - 0.5, height - 0.5, SheetStyle.RuleHeavy),
                new RulePiece(left + (Bar / 2), 0, left + (Bar / 2), height, Bar, Shade.Ink),
                .. body.Pieces.Select(p => p.Moved(0, 0.8 * Pad)),
            ])
            {
                Gap = gap,
            };
        }

        return Framed(inside) with { Split = (first, later) => Parts(inside, first, later, 1.6 * Pad, Framed) };
    }

    /// <summary>Parts strips into as few groups as fit the heights, each made into one by <paramref name="make"/>.</summary>
    private static List<Strip> Parts(List<Strip> strips, double first, double later, double extra, Func<List<Strip>, Strip> make)
    {
        var parts = new List<Strip>();
        var part = new List<Strip>();
        double used = 0;
        foreach (Strip strip in strips)
        {
            double room = (parts.Count == 0 ? first : later) - extra;
            if (part.Count > 0 && used + strip.Gap + strip.Height > room)
            {
                parts.Add(make(part));
                (part, used) = ([], 0);
            }
            part.Add(strip);
            used += strip.Gap + strip.Height;
        }
        parts.Add(make(part));
        return parts;
    }

    private static List<Strip> Steps(Setter setter, StepsBlock steps)
    {
        int list = setter.Element(ElementKind.Steps, setter.Parent);
        var strips = new List<Strip>();
        double numberWidth = TextMeasure.Width(Phrase.Of($"{steps.First + steps.Steps.Length - 1}").Bold(), SheetStyle.Heading);
        const double Box = SheetStyle.TickBox + 3;
        double left = Box + numberWidth + 3;
        for (int i = 0; i < steps.Steps.Length; i++)
        {
            Step step = steps.Steps[i];
            int element = setter.Element(ElementKind.Step, list);
            Phrase number = Phrase.Of($"{steps.First + i}").Bold();
            double wide = TextMeasure.Width(number, SheetStyle.Heading);
            double baseline = Setter.Baseline(SheetStyle.Step);
            List<Strip> inside = setter.Paragraph(step.Text, left, setter.Width - left, SheetStyle.Step, Shade.Ink, element, 0);
            inside[0] = inside[0] with
            {
                Pieces =
                [
                    new BoxPiece(0.4, SheetStyle.TickBoxTop(baseline, SheetStyle.Step), SheetStyle.TickBox, SheetStyle.TickBox, SheetStyle.Rule),
                    new TextPiece(Box + numberWidth - wide, baseline, wide, SheetStyle.Heading, number, Shade.Ink, element),
                    .. inside[0].Pieces,
                ],
            };
            if (!step.Note.Runs.IsEmpty)
                inside.AddRange(setter.Paragraph(step.Note, left, setter.Width - left, SheetStyle.Small, Shade.Soft, element, 0.6));
            if (!step.Caution.Runs.IsEmpty) inside.Add(Caution(setter, [step.Caution], element, left, 1.8));
            strips.Add(Setter.Joined(inside, i == 0 ? 3 : 3.6));
        }
        return strips;
    }
}
