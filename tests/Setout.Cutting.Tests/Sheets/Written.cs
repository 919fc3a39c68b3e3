using Setout.Cutting.Sheets.Model;
using Setout.Cutting.Sheets.Search;

namespace Setout.Cutting.Tests.Sheets;

/// <summary>Builds search trees by hand, so that a test can say what is written from them.</summary>
internal static class Written
{
    public static Node Along(params Node[] slices) => Divided(NodeKind.Along, slices);

    public static Node Across(params Node[] slices) => Divided(NodeKind.Across, slices);

    /// <summary>A part, or a figure group by the id of its group.</summary>
    public static Node Lies(SheetModel model, string id)
    {
        int type = Array.FindIndex(model.Types, t => t.Members.Any(m => m.Part.Id == id));
        return new(model.Types[type].Along, model.Types[type].Across) { Kind = NodeKind.Part, Type = type };
    }

    private static Node Divided(NodeKind kind, Node[] slices)
    {
        bool along = kind == NodeKind.Along;
        long inLine = slices.Sum(s => along ? s.SizeAlong : s.SizeAcross), other = slices.Max(s => along ? s.SizeAcross : s.SizeAlong);
        return new(along ? inLine : other, along ? other : inLine) { Kind = kind, Slices = [.. slices] };
    }
}
