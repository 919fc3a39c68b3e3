using System.Collections.Immutable;
using Setout.Core.Pieces;

namespace Setout.Shop.Edits;

/// <summary>A thing of a piece with what stands in it.</summary>
/// <param name="Key">Permanent.</param>
/// <param name="Words">What it is called, such as <c>opening L</c>.</param>
/// <param name="Within">What stands in it, from the left and from the top.</param>
public sealed record PieceNode(string Key, string Words, ImmutableArray<PieceNode> Within)
{
    /// <summary>It and all below it.</summary>
    public IEnumerable<PieceNode> All => Within.SelectMany(n => n.All).Prepend(this);
}

/// <summary>A piece as a tree of the things that have keys: frames and cases, their openings and what divides these, drawers, shelves and doors.</summary>
public static class PieceTree
{
    /// <summary>The members of a piece in the order of its text.</summary>
    public static ImmutableArray<PieceNode> Of(Piece piece) => [.. piece.Members.Select(Of)];

    private static PieceNode Of(Member member)
    {
        string name = member.Name.Length > 0 ? $"{member.Name} {member.Key}" : "";
        return member switch
        {
            Frame frame => new(frame.Key, Or(name, "frame", frame.Key), Within(frame.Bays, "bay", "posts")),
            Case described => new(described.Key, Or(name, "case", described.Key), Within(described.Content, "opening", "")),
            Top top => new(top.Key, Or(name, "top", top.Key), [.. top.Wells.Select(w => new PieceNode(w.Key, $"well {w.Key}", []))]),
            _ => new(member.Key, Or(name, "part", member.Key), []),
        };
    }

    private static string Or(string name, string kind, string key) => name.Length > 0 ? name : $"{kind} {key}";

    private static ImmutableArray<PieceNode> Within(OpeningContent? content, string opening, string divider) => content switch
    {
        Division division => [.. division.Items.SelectMany(i => Item(division, i, opening, divider))],
        DrawerBank bank => [.. bank.Drawers.Select(d => new PieceNode(d.Key, $"drawer {d.Key}", []))],
        Shelves shelves => [.. shelves.Keys.Select(k => new PieceNode(k.Text, $"shelf {k.Text}", []))],
        DoorFilling doors => [.. doors.Keys.Select(k => new PieceNode(k.Text, $"door {k.Text}", [])), .. Within(doors.Behind, "opening", "")],
        _ => [],
    };

    private static IEnumerable<PieceNode> Item(Division division, DivisionItem item, string opening, string divider)
    {
        if (item is Opening space)
        {
            yield return new(space.Key, $"{opening} {space.Key}", Within(space.Content, "opening", ""));
            if (space.Behind is { } behind) yield return new(behind.Key, $"opening {behind.Key}, from behind", Within(behind.Content, "opening", ""));
            yield break;
        }
        string word = divider.Length > 0 ? divider : item is Divider { Rail: not null } ? "rails" : division.IsAcross ? "partition" : "deck";
        yield return new(item.Key, $"{word} {item.Key}", []);
    }
}
