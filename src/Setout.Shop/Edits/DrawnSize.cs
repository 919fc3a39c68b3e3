using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Edits;

/// <summary>A size that can be given.</summary>
/// <param name="Key">The quantity, such as <c>C.width</c>.</param>
/// <param name="At">What the edit is offered for: the quantity itself, or the material that it belongs to.</param>
/// <param name="Choice">The edit, with one field.</param>
public sealed record GivenSize(string Key, string At, EditChoice Choice)
{
    /// <summary>What is typed.</summary>
    public EditField Field => Choice.Fields[0];
}

/// <summary>What can be typed at a dimension that was clicked.</summary>
/// <param name="Key">The dimension.</param>
/// <param name="Own">The size that is typed there; null where the dimension follows from several.</param>
/// <param name="From">What it follows from, the nearest first; empty where it is given itself, or where nothing that can be given stands behind it.</param>
public sealed record DrawnSize(string Key, GivenSize? Own, ImmutableArray<GivenSize> From)
{
    /// <summary>The most sizes that are named in place of one that follows.</summary>
    public const int Most = 5;

    /// <summary>Looks for what is given behind a dimension: the size itself, else those its working leads back to. Where that is a single one, it is typed in place of it.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="key">A quantity, as on the drawing: <c>L.width</c>, <c>L1.front.height.as-cut</c>.</param>
    /// <param name="shop">The shop; null for a usual one.</param>
    public static DrawnSize Of(SetPiece set, string key, Texts.Shop? shop = null)
    {
        var asked = new QuantityKey(key);
        if ((Given(set, asked.Exact.Text, shop) ?? OfItsOpening(set, asked, shop)) is { } own) return new(key, own, []);
        var found = ImmutableArray.CreateBuilder<GivenSize>();
        var seen = new HashSet<string>(StringComparer.Ordinal) { asked.Text };
        var open = new Queue<QuantityKey>([asked]);
        while (open.TryDequeue(out QuantityKey next) && found.Count < Most)
        {
            if (!set.Worked.Values.TryGetValue(next, out Worked? worked)) continue;
            foreach (QuantityKey behind in Behind(worked.Quantity.Working))
            {
                if (!seen.Add(behind.Text)) continue;
                if (Given(set, behind.Exact.Text, shop) is { } given)
                {
                    if (found.Count < Most && !found.Any(f => f.Key == given.Key)) found.Add(given);
                }
                else open.Enqueue(behind);
            }
        }
        return found.Count == 1 ? new(key, found[0], []) : new(key, null, found.ToImmutable());
    }

    /// <summary>What lies across an opening from side to side, such as the rail of a bay, is as long as the opening is given.</summary>
    private static GivenSize? OfItsOpening(SetPiece set, QuantityKey asked, Texts.Shop? shop)
    {
        // Of a bay with slide panels the rail is wider than the opening between them.
        if (asked.Exact == QuantityKey.Of(asked.Owner + ".rail", "length")) return Given(set, QuantityKey.Of(asked.Owner, "width").Text, shop);
        if (set.Openings.FirstOrDefault(o => o.Key == asked.Owner)?.Space is not { } space || set.Dimensions.FirstOrDefault(d => d.Key == asked || d.Key.Exact == asked.Exact) is not { IsDeep: false } drawn) return null;
        return drawn.To - drawn.From == (drawn.IsAcross ? space.SizeX : space.SizeZ) ? Given(set, QuantityKey.Of(asked.Owner, drawn.IsAcross ? "width" : "height").Text, shop) : null;
    }

    private static IEnumerable<QuantityKey> Behind(Working working) => working switch
    {
        Sum sum => sum.Terms.Select(t => t.Of).OfType<QuantityKey>(),
        Extreme extreme => extreme.Of.Select(t => t.Of).OfType<QuantityKey>(),
        ToCut cut => [cut.Exact],
        _ => [],
    };

    private static GivenSize? Given(SetPiece set, string key, Texts.Shop? shop)
    {
        static bool IsSize(EditChoice choice) => choice.Fields is [{ Kind: FieldKind.Length or FieldKind.Share }];
        string owner = new QuantityKey(key).Owner;
        if (key == QuantityKey.Of(owner, "thickness").Text && set.Piece.Materials.ContainsKey(owner))
            return Choices.For(set, owner, shop).FirstOrDefault(c => c.Id == "thickness" && IsSize(c)) is { } thickness ? new(key, owner, thickness) : null;
        return key.Length > owner.Length && Choices.For(set, key, shop) is [var only] && IsSize(only) ? new(key, key, only) : null;
    }
}
