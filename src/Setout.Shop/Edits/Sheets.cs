using Setout.Core.Measures.Text;

namespace Setout.Shop.Edits;

/// <summary>Sheets of about a thickness.</summary>
internal static class Sheets
{
    /// <summary>The sheet of a top where a piece has none yet.</summary>
    public static Wood ThreeQuarters(bool isInch) => Wood.Sheet(KindOf(isInch), isInch ? "3/4" : "18 mm");

    private static string KindOf(bool isInch) => isInch ? "hardwood plywood" : "birch plywood";

    /// <summary>A sheet of the piece with a label; one is added where there is none.</summary>
    public static string About(EditDraft draft, string inches, string millimetres)
    {
        bool isInch = draft.Unit == LengthUnit.Inch;
        string label = isInch ? inches : millimetres, kind = KindOf(isInch);
        string plain = label.Replace(" mm", "", StringComparison.Ordinal);
        return draft.Things.FirstOrDefault(t => t.Word == "material" && t.Map["panel"] is not null && ((t.Text("label") ?? t.Text("thickness") ?? "").Replace(" mm", "", StringComparison.Ordinal) == plain))?.Key
            ?? AddMaterial.Add(draft, Wood.Sheet(kind, label), null);
    }
}
