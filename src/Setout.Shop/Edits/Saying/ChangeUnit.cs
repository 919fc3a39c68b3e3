using System.Collections.Immutable;
using Setout.Core.Measures.Text;

namespace Setout.Shop.Edits.Saying;

/// <summary>Changes the unit of bare figures, and no size: each figure that names no unit is first given the one it was written in.</summary>
/// <param name="To">The unit, as the text says it: <c>in</c> or <c>mm</c>.</param>
internal sealed record ChangeUnit(string To) : Edit
{
    /// <inheritdoc/>
    public override string Words => $"unit: {To}, every size as it was";

    internal override void Do(EditDraft draft)
    {
        (LengthUnit from, LengthUnit to) = (draft.Unit, To == "mm" ? LengthUnit.Millimetre : LengthUnit.Inch);
        string text = draft.Text;
        foreach (string key in draft.Things.Where(t => t.Node is Texts.YamlMap).Select(t => t.Key).Prepend("").Distinct().ToArray())
        {
            foreach (EditChoice said in Sayings.Of(text, key)?.All.Where(s => s.IsSaid && s.Choice.Fields.Length == 1).Select(s => s.Choice) ?? [])
            {
                EditChoice named = said.For(from, to);
                if (named.Fields[0].Default == said.Fields[0].Default) continue;
                named.Make(ImmutableDictionary<string, string>.Empty).Value!.Do(draft);
            }
        }
        new SetAny(TextPath.Of("", "unit"), To).Do(draft);
        (draft.Name, draft.Chosen) = (Words, "");
    }
}
