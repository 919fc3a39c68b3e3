using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Drawings;

/// <summary>Shelves where they were written.</summary>
/// <param name="Opening">The key of their opening.</param>
/// <param name="Shelves">The shelves.</param>
/// <param name="Doors">The doors before them; null for none.</param>
/// <param name="IsFromBehind">True where they are reached from behind.</param>
internal sealed record ShelvesAt(string Opening, Shelves Shelves, DoorFilling? Doors, bool IsFromBehind);

/// <summary>In which structure each key of a piece was written, and where the structures stand.</summary>
internal sealed class Whereabouts
{
    private static readonly ImmutableHashSet<PartRole> s_outer = [PartRole.Side, PartRole.Post];
    private readonly Dictionary<string, Structure> _structures = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Placement> _boxes = new(StringComparer.Ordinal);
    private readonly HashSet<string> _openings = new(StringComparer.Ordinal);
    private readonly List<ShelvesAt> _shelves = [];
    private readonly List<(DoorFilling Doors, bool IsFromBehind)> _doors = [];

    public Whereabouts(SetPiece set)
    {
        foreach (Structure structure in set.Piece.Members.OfType<Structure>())
        {
            _structures[structure.Key] = structure;
            _openings.Add(structure.Key);
            Walk(structure, structure.Key, structure is Frame frame ? frame.Bays : ((Case)structure).Content, null, false);
        }
        foreach (Structure structure in _structures.Values.Distinct())
        {
            Placement[] outer = [.. set.Parts.Where(p => s_outer.Contains(p.Role) && In(p.Key) == structure).SelectMany(p => p.Placements)];
            if (outer.Length > 0) _boxes[structure.Key] = Round(outer);
        }
        // In the order of the piece what carries is written before what it carries.
        foreach (Structure structure in set.Piece.Members.OfType<Structure>().Where(s => _boxes.ContainsKey(s.Key)))
            Standing = Standing.Add(structure, Standing.Where(under => IsOver(_boxes[structure.Key], _boxes[under.Key.Key])).Select(under => under.Value + 1).DefaultIfEmpty(0).Max());
    }

    /// <summary>The structures that have a place, each with how many stand below it.</summary>
    public ImmutableDictionary<Structure, int> Standing { get; } = ImmutableDictionary<Structure, int>.Empty;

    /// <summary>All shelves.</summary>
    public IReadOnlyList<ShelvesAt> Shelves => _shelves;

    /// <summary>All doors.</summary>
    public IReadOnlyList<(DoorFilling Doors, bool IsFromBehind)> Doors => _doors;

    /// <summary>The structure that a key, or the owner of a key such as <c>C.side</c>, was written in; null for tops, wells and loose parts.</summary>
    public Structure? In(string key) => _structures.GetValueOrDefault(new QuantityKey(key).Owner);

    /// <summary>Where a structure stands, over its sides or posts; null where it has none.</summary>
    public Placement? Box(Structure structure) => _boxes.GetValueOrDefault(structure.Key);

    /// <summary>True for an opening, and for a case, which is one.</summary>
    public bool IsOpening(string key) => _openings.Contains(key);

    /// <summary>How many structures stand below what a key was written in.</summary>
    public int Tier(string key) => In(key) is { } structure ? Standing.GetValueOrDefault(structure) : 0;

    /// <summary>True where something stands on a structure.</summary>
    public bool Carries(Structure structure) => Standing.Keys.Any(s => s != structure && IsOver(_boxes[s.Key], _boxes[structure.Key]));

    /// <summary>Whether a structure is the first from the left, and the last, of those that stand as high as it does.</summary>
    public (bool IsFirst, bool IsLast) Ends(Structure structure)
    {
        Placement[] row = [.. Standing.Where(s => s.Value == Standing[structure]).Select(s => _boxes[s.Key.Key])];
        return (row.Min(b => b.X) == _boxes[structure.Key].X, row.Max(b => b.X + b.SizeX) == _boxes[structure.Key].X + _boxes[structure.Key].SizeX);
    }

    private static bool IsOver(Placement box, Placement under) => box.Z >= under.Z + under.SizeZ && box.Shared(under).X.Sign > 0;

    private void Walk(Structure structure, string opening, OpeningContent? content, DoorFilling? doors, bool isBehind)
    {
        switch (content)
        {
            case Division division:
                foreach (DivisionItem item in division.Items)
                {
                    _structures[item.Key] = structure;
                    if (item is not Opening inner) continue;
                    _openings.Add(inner.Key);
                    Walk(structure, inner.Key, inner.Content, doors, isBehind);
                    if (inner.Behind is not { } behind) continue;
                    _structures[behind.Key] = structure;
                    _openings.Add(behind.Key);
                    Walk(structure, behind.Key, behind.Content, null, true);
                }
                break;
            case DrawerBank bank:
                foreach (Drawer drawer in bank.Drawers) _structures[drawer.Key] = structure;
                break;
            case Shelves shelves:
                foreach (Named key in shelves.Keys) _structures[key.Text] = structure;
                _shelves.Add(new(opening, shelves, doors, isBehind));
                break;
            case DoorFilling filling:
                foreach (Named key in filling.Keys) _structures[key.Text] = structure;
                _doors.Add((filling, isBehind));
                Walk(structure, opening, filling.Behind, filling, isBehind);
                break;
        }
    }

    private static Placement Round(Placement[] boxes)
    {
        ExactLength x = boxes.Min(b => b.X), y = boxes.Min(b => b.Y), z = boxes.Min(b => b.Z);
        return new(x, y, z, boxes.Max(b => b.X + b.SizeX) - x, boxes.Max(b => b.Y + b.SizeY) - y, boxes.Max(b => b.Z + b.SizeZ) - z);
    }
}
