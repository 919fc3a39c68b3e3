using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.ShopEdits;
using Setout.Workbench.Changing;

namespace Setout.Workbench.ShopPages;

/// <summary>No shop was begun yet.</summary>
/// <param name="Form">What goes along.</param>
/// <param name="Assumed">What is taken until somebody says otherwise.</param>
public sealed record NoShopView(FormHead Form, ImmutableArray<Phrase> Assumed)
{
    internal static NoShopView Of()
    {
        string Usual(string kind, string key) => ShopFigures.Of(Setout.Shop.Texts.Shop.Usual, LengthUnit.Inch, kind, key);
        return new(new(ShopLinks.Of("begin"), ChangeForm.NewId(), 1, ShopLinks.Shop),
        [
            .. new[]
            {
                $"Figures to cut land on {Usual("grid", "in")}, for pieces in millimetres on {Usual("grid", "mm")}.",
                $"Saws take {Usual("kerf", "sheets")}; the fence goes to {Usual("fence", "widest")}, the sled takes {Usual("sled", "deepest")}, a straight edge leads {Usual("guided", "longest")}.",
                $"{Usual("trim", "sheets")} is trued off each edge of a sheet, {Usual("trim", "boards")} off each end of a board.",
                $"A tape reads within {Usual("instruments", "tape")}, a calliper within {Usual("instruments", "calliper")}.",
                "The rack is empty, and nothing has a price: sheets and boards of usual sizes are bought.",
            }.Select(Figures.Phrase),
        ]);
    }
}
