using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Workbench.Pieces;
using Setout.Workbench.SetOut;

namespace Setout.Workbench.Noting;

/// <summary>Marks on a drawing what the last change moved.</summary>
internal static partial class RedPencil
{
    /// <summary>The drawing with what moved in red pencil, in the picture and in the outline; the same where nothing moved.</summary>
    public static DrawingView? On(DrawingView? drawing, OpenPiece piece)
    {
        if (drawing is null || piece.Bench?.Last is not { } last) return drawing;
        ImmutableHashSet<string> moved = Moved(last.Account.Before, piece.Set, last.Account.Ripple);
        if (moved.IsEmpty) return drawing;
        string Pencilled(string svg) => Keyed().Replace(svg, m => moved.Contains(m.Groups[1].Value.Split('#')[0]) ? m.Groups[2].Success ? $"{m.Value[..^1]} is-moved\"" : $"{m.Value} class=\"is-moved\"" : m.Value);
        OutlineItem Item(OutlineItem item) => item with { Words = moved.Contains(item.Key) ? item.Words.Add(Drawing.Scenes.Phrase.Of(", moved")) : item.Words, Within = [.. item.Within.Select(Item)] };
        return drawing with { Wide = Pencilled(drawing.Wide), Narrow = Pencilled(drawing.Narrow), Outline = [.. drawing.Outline.Select(Item)] };
    }

    // A dimension moved where its value did; a part where one of its figures did; and the front of a drawer stands for its box, which is not drawn.
    private static ImmutableHashSet<string> Moved(SetPiece before, SetPiece after, Ripple ripple)
    {
        HashSet<string> parts = [.. ripple.Moved.SelectMany(m => m.Figures).Select(f => f.Part.Key)];
        HashSet<string> owners = [.. parts.Select(p => new QuantityKey(p).Owner)];
        bool IsOther(QuantityKey key) => before.Worked.Values.TryGetValue(key, out Worked? was) && after.Worked.Values.TryGetValue(key, out Worked? now) && was.Value != now.Value;
        return
        [
            .. after.Worked.Order.Where(IsOther).Select(k => k.Text), .. parts,
            .. after.Parts.Where(p => p.Role == PartRole.FalseFront && owners.Contains(new QuantityKey(p.Key).Owner)).Select(p => p.Key),
        ];
    }

    [GeneratedRegex(" data-key=\"([^\"]*)\"( class=\"[^\"]*\")?")]
    private static partial Regex Keyed();
}
