using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>
/// Which woods of several pieces are one at the saws. Parts of two pieces may come from one sheet where it is the same wood by the rack, of the same thickness by what has been read of it in both,
/// and their edges not treated in two ways. Each part keeps its own rule of grain; the strictest limit of divisions holds for all. A pooled wood has the name that the first of its pieces gives it.
/// </summary>
internal sealed class WoodPools
{
    private sealed record Pool(Material Material, List<(MemberPiece Member, Material Own)> In);

    private readonly List<Pool> _pools = [];
    private readonly Dictionary<(string Code, string Name), Pool> _byOwn = [];

    private WoodPools(ImmutableArray<MemberPiece> members)
    {
        var apart = ImmutableArray.CreateBuilder<Finding>();
        foreach (MemberPiece member in members)
        {
            // In the order of the parts; what no part is made of comes last.
            string[] names = [.. member.Set.Parts.Select(p => p.Material).Concat(member.Set.Piece.Materials.Keys.Order(StringComparer.Ordinal)).Distinct().Where(member.Set.Piece.Materials.ContainsKey)];
            foreach (Material own in names.Select(n => member.Set.Piece.Materials[n]))
            {
                bool isUsed = member.Set.Parts.Any(p => p.Material == own.Name);
                Pool[] same = [.. _pools.Where(p => MaterialIdentity.Of(p.Material) == MaterialIdentity.Of(own))];
                Pool? pool = same.FirstOrDefault(p => !p.In.Any(i => i.Member == member) && Difference(p.In[0], (member, own)) is null);
                if (pool is null)
                {
                    if (isUsed && same.FirstOrDefault(p => !p.In.Any(i => i.Member == member)) is { } other) apart.Add(Told(other.In[0], (member, own)));
                    string name = _pools.Any(p => p.Material.Name == own.Name) ? $"{own.Name}-{member.Code.ToLowerInvariant()}" : own.Name;
                    _pools.Add(pool = new(own with { Name = name, Sizes = [] }, []));
                }
                pool.In.Add((member, own));
                _byOwn[(member.Code, own.Name)] = pool;
            }
        }
        Apart = apart.ToImmutable();
        Materials = _pools.ToImmutableDictionary(p => p.Material.Name, Pooled);
    }

    public static WoodPools Of(ImmutableArray<MemberPiece> members) => new(members);

    /// <summary>The pooled woods by name, with what the piece files offer of each.</summary>
    public ImmutableDictionary<string, Material> Materials { get; }

    /// <summary>Why woods that are the same by the rack are cut apart.</summary>
    public ImmutableArray<Finding> Apart { get; }

    /// <summary>The pooled wood of a piece's own; the same name where the piece has no such wood.</summary>
    public string PoolOf(MemberPiece member, string own) => _byOwn.TryGetValue((member.Code, own), out Pool? pool) ? pool.Material.Name : own;

    /// <summary>A piece's own name for a pooled wood; null where it has none of it.</summary>
    public string? NameIn(MemberPiece member, string pool) => Named(pool)?.In.FirstOrDefault(i => i.Member.Code == member.Code).Own?.Name;

    /// <summary>The piece whose log tells of a pooled wood: the first that has it.</summary>
    public MemberPiece? KeeperOf(string pool) => Named(pool)?.In[0].Member;

    /// <summary>True when the thickness was read in one of the pieces.</summary>
    public bool IsRead(string pool) => Named(pool) is { } there && there.In.Any(i => Thickness(i) is { Pin: not null });

    /// <summary>A quantity of a piece among those of all: what is said of a wood goes by the pooled one, but a sheet of it is that piece's own.</summary>
    public QuantityKey KeyOf(MemberPiece member, QuantityKey key) =>
        _byOwn.TryGetValue((member.Code, key.Owner), out Pool? pool) && !key.Text.Contains(Core.SettingOut.BenchFacts.SheetWord, StringComparison.Ordinal)
            ? new(pool.Material.Name + key.Text[key.Owner.Length..]) : new(member.Prefixed(key.Text));

    private static Material Pooled(Pool pool)
    {
        Material pooled = pool.Material with { Sizes = Sizes(pool.In) };
        if (pooled is not Panel panel) return pooled;
        Panel[] all = [.. pool.In.Select(i => (Panel)i.Own)];
        return panel with
        {
            Grain = all.Any(p => p.Grain == Grain.Keep) ? Grain.Keep : Grain.Free,
            Edges = all.FirstOrDefault(p => p.Edges.Work != EdgeWork.Raw)?.Edges ?? EdgeTreatment.Raw,
            MostStages = all.Min(p => p.MostStages),
        };
    }

    private Pool? Named(string name) => _pools.FirstOrDefault(p => p.Material.Name == name);

    private static Worked? Thickness((MemberPiece Member, Material Own) of) => of.Member.Set.Worked.Values.GetValueOrDefault(QuantityKey.Of(of.Own.Name, "thickness"));

    private static Finding Told((MemberPiece Member, Material Own) first, (MemberPiece Member, Material Own) other)
    {
        bool isRead = Thickness(first)?.Value != Thickness(other)?.Value;
        (string Text, bool IsRead) Said((MemberPiece Member, Material Own) of) => (LengthFormat.For(of.Member.Set.Piece.Shown).Text(Thickness(of)?.Value ?? ExactLength.Zero), Thickness(of) is { Pin: not null });
        (string firstText, bool firstRead) = Said(first);
        (string otherText, bool otherRead) = Said(other);
        (MemberPiece unread, Material own) = firstRead ? other : first;
        var key = QuantityKey.Of(own.Name, "thickness");
        string read = firstRead ? firstText : otherText;
        string remedy = isRead && firstRead != otherRead
            ? unread.Source.Piece.Hand.Say($"If it is the same lot, record it there too: setout record {unread.File} {key} {read}.", $"If it is the same lot, enter {read} for {unread.Source.Piece.Name} too, at {Hands.Place(unread.Set.Worked.Values[key].Quantity.Name)}.")
            : isRead ? "Let it stand if they are two lots." : "Say the same of it in both piece files to cut it together.";
        return new("together.apart", Severity.Note, other.Own.Name,
            $"{first.Own.Name} of {first.Member.Source.Piece.Name} and {other.Own.Name} of {other.Member.Source.Piece.Name} are the same wood and are cut apart: {(isRead ? $"{(firstRead ? "read" : "taken as")} {firstText}, {(otherRead ? "read" : "taken as")} {otherText}" : Difference(first, other))}.", remedy);
    }

    // Why two woods that are the same by the rack cannot lie on one sheet; null where they can.
    private static string? Difference((MemberPiece Member, Material Own) first, (MemberPiece Member, Material Own) other)
    {
        if (Thickness(first)?.Value != Thickness(other)?.Value) return "their thickness differs";
        return (first.Own, other.Own) switch
        {
            (Panel a, Panel b) when a.Edges.Work != EdgeWork.Raw && b.Edges.Work != EdgeWork.Raw && a.Edges.Work != b.Edges.Work => "their edges are treated in two ways",
            (Stick a, Stick b) when a.Kind != b.Kind => "they are two kinds of wood",
            (Stick, Stick) when Width(first) != Width(other) => "their width differs",
            (Panel, Panel) or (Stick, Stick) => null,
            _ => "one is sheet goods and the other is not",
        };
    }

    private static ExactLength? Width((MemberPiece Member, Material Own) of) => of.Member.Set.Worked.Values.GetValueOrDefault(QuantityKey.Of(of.Own.Name, "width"))?.Value;

    // What can be bought is offered once; what a piece file says is in hand is that piece's own.
    private static ImmutableArray<StockSize> Sizes(List<(MemberPiece Member, Material Own)> of)
    {
        StockSize[] all = [.. of.SelectMany(i => i.Own.Sizes)];
        return [.. all.Where(s => s.InHand is not null).GroupBy(s => s with { InHand = 0 }).Select(g => g.Key with { InHand = g.Sum(s => s.InHand) }), .. all.Where(s => s.InHand is null).DistinctBy(s => s with { Price = null })];
    }
}
