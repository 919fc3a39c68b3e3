using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Setout.Workbench.Shell;

/// <summary>Shows a page: a component that takes one model of ready-made strings.</summary>
internal static class Pages
{
    /// <summary>The page as the answer.</summary>
    public static IResult Show<TPage>(object model, int status = StatusCodes.Status200OK) where TPage : IComponent =>
        new RazorComponentResult<TPage>(new Dictionary<string, object?> { ["Model"] = model }) { StatusCode = status, PreventStreamingRendering = true };
}
