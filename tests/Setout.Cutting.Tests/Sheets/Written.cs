using Setout.Cutting.Sheets.Model;
using Setout.Cutting.Sheets.Search;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>Builds search trees by hand, so that a test can say what is written from them.</summary>
internal static class Written
{
    public static Node Along(params Node[] slices) => Divided(NodeKind.Along, slices);

    public static Node Across(params Node[] slices) => Divided(NodeKind.Across, slices);

    /// <summary>A part, or a figure group by the id of its group.</summary>
    public static Node Lies(SheetModel model, string id) =>
        new() { Kind = NodeKind.Part, Type = Array.FindIndex(model.Types, t => t.Members.Any(m => m.Part.Id == id)) };

    private static Node Divided(NodeKind kind, Node[] slices) => new() { Kind = kind, Slices = [.. slices] };
}
