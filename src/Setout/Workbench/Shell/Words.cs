using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using Setout.Core.Measures.Text;
using Setout.Drawing.Scenes;

namespace Setout.Workbench.Shell;

/// <summary>
/// A phrase on a page. A fraction is set as one by the font, on the fraction alone, so that the whole number beside it stays whole and the
/// copied text stays <c>23 1/4</c>. Written by hand because every space counts.
/// </summary>
public sealed class Words : ComponentBase
{
    /// <summary>What is said.</summary>
    [Parameter, EditorRequired]
    public Phrase Of { get; set; } = Phrase.Empty;

    /// <inheritdoc/>
    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        foreach (Run run in Of.Runs)
        {
            builder.OpenRegion(0);
            if (run.Figure is { HasFraction: true } figure) WriteFigure(builder, figure);
            else builder.AddContent(0, run.ToString());
            builder.CloseRegion();
        }
    }

    private static void WriteFigure(RenderTreeBuilder builder, Figure figure)
    {
        string fraction = $"{figure.Numerator}/{figure.Denominator}";
        builder.OpenElement(0, "span");
        builder.AddAttribute(1, "class", "figure");
        builder.AddContent(2, figure.Number[..^fraction.Length]);
        builder.OpenElement(3, "span");
        builder.AddAttribute(4, "class", "fraction");
        builder.AddContent(5, fraction);
        builder.CloseElement();
        builder.AddContent(6, figure.Unit.Length > 0 ? " " + figure.Unit : "");
        builder.CloseElement();
    }
}
