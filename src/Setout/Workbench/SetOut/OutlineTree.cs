using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Edits;
using Setout.Shop.Plans;
using Setout.Workbench.Shell;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.SetOut;

/// <summary>An item of the outline.</summary>
/// <param name="Words">What it is, with its figures where it is drawn.</param>
/// <param name="Href">Its working.</param>
/// <param name="Key">Its key, as on the drawing; empty for what is not drawn itself.</param>
/// <param name="IsChosen">Whether it is the one shown.</param>
/// <param name="Within">What stands in it or belongs to it.</param>
public sealed record OutlineItem(Phrase Words, string Href, string Key, bool IsChosen, ImmutableArray<OutlineItem> Within)
{
    /// <summary>Whether it or anything in it is shown: such a branch stands open.</summary>
    public bool HoldsChosen => IsChosen || Within.Any(w => w.HoldsChosen);
}

/// <summary>The drawing as a tree: each thing with its dimensions and members, and what stands in it. It holds the same as the drawing, no more and no less.</summary>
internal static class OutlineTree
{
    public static ImmutableArray<OutlineItem> Of(SetPiece set, string piece, string view, string? asked, IEnumerable<OutlineLine> lines)
    {
        Dictionary<string, OutlineLine> left = lines.ToDictionary(l => l.Key);
        ImmutableArray<PieceNode> things = PieceTree.Of(set.Piece);
        HashSet<string> known = [.. things.SelectMany(t => t.All).Select(t => t.Key)];
        // What belongs to a thing stands under it, first; what belongs to none stands last.
        ILookup<string, OutlineLine> owned = left.Values.Where(l => !known.Contains(l.Key)).ToLookup(l => known.Contains(new QuantityKey(l.Key).Owner) ? new QuantityKey(l.Key).Owner : "");
        OutlineItem Leaf(OutlineLine line) => new(Said(set, line), line.Href, line.Key, line.IsChosen, []);
        OutlineItem? Item(PieceNode node)
        {
            OutlineLine? own = left.GetValueOrDefault(node.Key);
            ImmutableArray<OutlineItem> within = [.. owned[node.Key].Select(Leaf), .. node.Within.Select(Item).OfType<OutlineItem>()];
            // What is neither drawn nor holds anything drawn is chosen here all the same: a pair of posts, say.
            return own is not null ? new(Said(set, own), own.Href, own.Key, own.IsChosen, within)
                : new(Figures.Phrase(node.Words), Links.Size(piece, node.Key, view), "", asked == node.Key, within);
        }
        return [.. things.Select(Item).OfType<OutlineItem>(), .. owned[""].Select(Leaf)];
    }

    // Planned and read stand one below the other, and say which they are.
    private static Phrase Said(SetPiece set, OutlineLine line)
    {
        if (new QuantityKey(line.Key) is { IsAsCut: true } cut && set.Worked.Values.GetValueOrDefault(cut) is { Pin.IsFact: false }) return line.Words.Add(", read");
        LengthFormat format = LengthFormat.For(set.Piece.Shown);
        string[] read = set.Parts.FirstOrDefault(p => p.Key == line.Key.Split('#')[0]) is { } part ? [.. ReadAsCut.Of(set, part).Select(r => $"{r.Word} {format.Text(r.Read)}")] : [];
        return read.Length == 0 ? line.Words : new([.. line.Words.Runs, .. Figures.Phrase($"; to cut; read: {string.Join(", ", read)}").Runs]);
    }
}
