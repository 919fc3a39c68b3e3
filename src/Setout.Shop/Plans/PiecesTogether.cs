// Over 200 lines: all that is said of several pieces as one for the saws, in the order in which a piece is made up.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting.Sheets;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Shop.Plans;

/// <summary>One of several pieces that are broken down together.</summary>
/// <param name="Code">What marks and keys of its parts begin with, such as <c>CC</c> for a cedar chest; its own among the pieces.</param>
/// <param name="File">The name of its piece file, without a folder.</param>
/// <param name="Source">Its texts.</param>
/// <param name="Set">It as set out by itself.</param>
public sealed record MemberPiece(string Code, string File, PieceSource Source, SetPiece Set)
{
    /// <summary>A key of this piece among those of all: <c>CC-F.tie</c>.</summary>
    public string Prefixed(string key) => $"{Code}-{key}";

    /// <summary>The piece's own key of one among those of all; null where it is of another piece.</summary>
    public string? Own(string key) => key.StartsWith(Code + "-", StringComparison.Ordinal) ? key[(Code.Length + 1)..] : null;
}

/// <summary>
/// Several pieces as one for the saws: their parts, each with the code of its piece before its key and its mark, and their woods, pooled where they are the same. How each piece is put
/// together, and what will fit, stays with its own plan. Immutable.
/// </summary>
public sealed class PiecesTogether
{
    private readonly WoodPools _pools;

    private PiecesTogether(ImmutableArray<MemberPiece> members)
    {
        Members = members;
        _pools = WoodPools.Of(members);
        Set = SetTogether();
        Log = LogTogether();
        Texts.Shop shop = members[0].Source.Shop;
        HashSet<string> names = [.. members.Select(m => m.Source.Piece.Name)];
        // What is kept for one of them is there for the breakdown that it is part of.
        Shop = shop with { Stock = [.. shop.Stock.Select(s => names.Contains(s.For) ? s with { For = Set.Piece.Name } : s)] };
    }

    /// <summary>The pieces, in the order named.</summary>
    public ImmutableArray<MemberPiece> Members { get; }

    /// <summary>All that the saws need of them, as if they were one piece.</summary>
    public SetPiece Set { get; }

    /// <summary>What their logs say of wood, in the names of the pooled woods.</summary>
    public Log Log { get; }

    /// <summary>The shop.</summary>
    internal Texts.Shop Shop { get; }

    /// <summary>Puts pieces together; two or more, set out in the order named. All have one shop file.</summary>
    /// <param name="pieces">The name of each piece file without a folder, and its texts.</param>
    /// <returns>The pieces as one, or why they cannot be.</returns>
    public static (PieceSource? Source, Finding? Refusal) Of(IEnumerable<(string File, PieceSource Source)> pieces)
    {
        (string File, PieceSource Source)[] given = [.. pieces];
        ArgumentOutOfRangeException.ThrowIfLessThan(given.Length, 2, nameof(pieces));
        if (given.GroupBy(g => g.File, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            return (null, new("together.twice", Severity.Stop, "", $"{twice.Key} is named twice.", "Name each piece once. Two of one piece: copy its file, each has its own log."));
        if (given.FirstOrDefault(g => g.Source.Piece.Unit != given[0].Source.Piece.Unit) is { File: { } other })
            return (null, new("together.units", Severity.Stop, "", $"{given[0].File} is in {given[0].Source.Piece.Unit.Words} and {other} in {given.First(g => g.File == other).Source.Piece.Unit.Words}: at one fence setting only one of them would be exact.", "Plan them one after the other."));
        if (given.Select(g => g.Source.Piece.Name).Distinct(StringComparer.Ordinal).Count() < given.Length)
            return (null, new("together.names", Severity.Stop, "", "Two of the pieces have one name: on the pages nobody could tell them apart.", "Give each piece a name of its own."));
        string[] codes = Codes([.. given.Select(g => g.Source.Piece.Name)]);
        var together = new PiecesTogether([.. given.Select((g, i) => new MemberPiece(codes[i], g.File, g.Source, g.Source.SetOut()))]);
        return (PieceSource.Of(together), null);
    }

    /// <summary>The same pieces with more entries in their logs.</summary>
    public PieceSource With(IEnumerable<(MemberPiece Member, LogEntry Entry)> entries)
    {
        ILookup<string, LogEntry> byFile = entries.ToLookup(e => e.Member.File, e => e.Entry);
        return Of(Members.Select(m => (m.File, m.Source with { Log = new(m.Source.Log.Entries.AddRange(byFile[m.File])) }))).Source!;
    }

    /// <summary>An entry told of all pieces as the entries of the log of each: parts and figures go to their piece; wood goes to the first piece that has such wood, once.</summary>
    public ImmutableArray<(MemberPiece Member, LogEntry Entry)> Split(MarkEntry entry)
    {
        var split = ImmutableArray.CreateBuilder<(MemberPiece, LogEntry)>();
        foreach (MemberPiece member in Members)
        {
            ImmutableDictionary<QuantityKey, ExactLength> Own(ImmutableDictionary<QuantityKey, ExactLength> figures) =>
                figures.Where(f => member.Own(f.Key.Text) is not null).ToImmutableDictionary(f => new QuantityKey(member.Own(f.Key.Text)!), f => f.Value);
            MarkEntry own = entry with
            {
                Keys = [.. entry.Keys.Select(member.Own).OfType<string>()],
                Figures = Own(entry.Figures),
                Chosen = Own(entry.Chosen),
                Took = [.. entry.Took.Where(t => Keeper(t) == member).Select(t => t with { Of = _pools.NameIn(member, t.Of)! })],
                Left = [.. entry.Left.Where(l => _pools.KeeperOf(l.Of) == member).Select(l => l with { Of = _pools.NameIn(member, l.Of)! })],
            };
            if (!own.Keys.IsEmpty || !own.Took.IsEmpty || !own.Left.IsEmpty) split.Add((member, own));
        }
        // All pieces of the breakdown are named, not only those that have an entry of this run: what is begun together is gone on with together.
        return [.. split.Select(s => (s.Item1, (LogEntry)((MarkEntry)s.Item2 with { With = [.. Members.Where(m => m != s.Item1).Select(m => m.File)] })))];
    }

    /// <summary>The groups whose figure runs through, of one pooled wood.</summary>
    internal ImmutableArray<FigureGroup> Figures(Panel pool, IEnumerable<Part> parts, List<Finding> findings)
    {
        var groups = ImmutableArray.CreateBuilder<FigureGroup>();
        foreach (MemberPiece member in Members)
        {
            if (_pools.NameIn(member, pool.Name) is not { } name) continue;
            var own = new List<Finding>();
            HashSet<string> there = [.. parts.Select(p => member.Own(p.Key)).OfType<string>()];
            groups.AddRange(FigureGroups.Of(member.Set, (Panel)member.Set.Piece.Materials[name], member.Set.Parts.Where(p => p.Material == name && there.Contains(p.Key)), own)
                .Select(g => new FigureGroup($"{member.Code} {g.Id}", g.Axis, [.. g.PartIds.Select(member.Prefixed)])));
            findings.AddRange(own.Select(f => Named(member, f)));
        }
        return groups.ToImmutable();
    }

    /// <summary>What a quantity of all pieces is called in each piece that has it: one for what belongs to a piece, as many as share it for what is said of a pooled wood.</summary>
    public IEnumerable<(MemberPiece Member, QuantityKey Key)> Own(QuantityKey key) => Members
        .Select(m => (Member: m, Own: _pools.NameIn(m, key.Owner) is { } name ? name + key.Text[key.Owner.Length..] : m.Own(key.Text)))
        .Where(m => m.Own is not null && m.Member.Set.Worked.Values.ContainsKey(new(m.Own))).Select(m => (m.Member, new QuantityKey(m.Own!)));

    /// <summary>How the thickness of a pooled wood is recorded by commands: once for each piece that has it.</summary>
    internal string Commands(string pool) => string.Join("; ", Own(QuantityKey.Of(pool, "thickness")).Select(m => $"setout record {m.Member.File} {m.Key} READING"));

    /// <summary>Where the same is entered on pages.</summary>
    internal string Places(string pool) => Runs.CutLines.List(Own(QuantityKey.Of(pool, "thickness")).Select(m => $"for {m.Member.Source.Piece.Name} at {Hands.Place(m.Member.Set.Worked.Values[m.Key].Quantity.Name)}"));

    // What the piece's own file offers is counted with that piece.
    private MemberPiece? Keeper(TakenWood wood) => wood.Source == WoodSource.Piece && wood.Size is { } size
        ? Members.FirstOrDefault(m => _pools.NameIn(m, wood.Of) is { } name && m.Set.Piece.Materials[name].Sizes.Any(s => s.InHand > 0 && (s.Along, s.Across, s.Name) == (size.Along, size.Across, wood.Name))) ?? _pools.KeeperOf(wood.Of)
        : _pools.KeeperOf(wood.Of);

    private SetPiece SetTogether()
    {
        var piece = new Piece(string.Join(" and ", Members.Select(m => m.Source.Piece.Name)), "", Members[0].Source.Piece.Unit, null,
            _pools.Materials, ImmutableDictionary<string, DrawerKind>.Empty, [], ImmutableDictionary<string, Place>.Empty)
        {
            Shown = Members[0].Source.Piece.Shown,
            Hand = Members[0].Source.Piece.Hand,
            MoistureChange = Members.Max(m => m.Source.Piece.MoistureChange),
        };
        var order = ImmutableArray.CreateBuilder<QuantityKey>();
        var values = ImmutableDictionary.CreateBuilder<QuantityKey, Worked>();
        foreach (MemberPiece member in Members)
        {
            foreach (QuantityKey key in member.Set.Worked.Order.Concat(member.Set.Worked.Values.Keys).Distinct())
            {
                if (!member.Set.Worked.Values.TryGetValue(key, out Worked? worked)) continue;
                QuantityKey named = _pools.KeyOf(member, key);
                // Of one pooled wood all say the same; what was read says so.
                if (values.TryGetValue(named, out Worked? there) && (there.Pin is not null || worked.Pin is null)) continue;
                if (there is null) order.Add(named);
                values[named] = worked with { Quantity = Renamed(member, named, worked.Quantity) };
            }
        }
        ImmutableArray<Part> parts = [.. Members.SelectMany(m => m.Set.Parts.Select(p => PartOf(m, p)))];
        var states = ImmutableDictionary.CreateBuilder<string, PartState>(StringComparer.Ordinal);
        foreach (MemberPiece member in Members)
        {
            foreach (Part part in member.Set.Parts)
                for (int i = 1; i <= part.Count; i++)
                    if (member.Set.Facts.StateOf(part.Key, i) is > PartState.Planned and var state) states[BenchFacts.Member(member.Prefixed(part.Key), i)] = state;
        }
        return new(piece, Members.Select(m => m.Source.Grid).MinBy(g => g.Step), new(order.ToImmutable(), values.ToImmutable(), []), parts,
            [.. Members.SelectMany(m => m.Set.Joints)], [.. Members.SelectMany(m => m.Set.Hardware.Select(h => h with { Key = m.Prefixed(h.Key) }))],
            [.. Members.SelectMany(m => m.Set.Machinings.Select(c => c with { Part = m.Prefixed(c.Part), Figures = [.. c.Figures.Select(f => (f.Name, _pools.KeyOf(m, f.Key)))], By = [.. c.By.Select(m.Prefixed)] }))],
            [.. Members.SelectMany(m => m.Set.Choices.Select(c => c with { Key = _pools.KeyOf(m, c.Key) }))], [], [], [], [], [], [.. FindingsTogether()])
        {
            Facts = BenchFacts.Empty with { States = states.ToImmutable() },
        };
    }

    private Part PartOf(MemberPiece member, Part part)
    {
        PartSize Of(PartSize size) => new(_pools.KeyOf(member, size.Exact), _pools.KeyOf(member, size.ToCut), _pools.KeyOf(member, size.AsCut)) { Made = _pools.KeyOf(member, size.Made) };
        return part with
        {
            Key = member.Prefixed(part.Key),
            Mark = $"{member.Code}-{part.Mark}",
            Name = $"{part.Name} ({member.Source.Piece.Name})",
            Material = _pools.PoolOf(member, part.Material),
            Length = Of(part.Length),
            Width = Of(part.Width),
            Thickness = _pools.KeyOf(member, part.Thickness),
            Placements = [],
            Place = default,
            // Another piece may treat edges of this wood: these stay raw.
            Seen = member.Set.Piece.Materials.GetValueOrDefault(part.Material) is Panel { Edges.Work: not EdgeWork.Raw } ? part.Seen : default,
            HeldUntil = part.HeldUntil.IsDefault ? default : [.. part.HeldUntil.Select(k => _pools.KeyOf(member, k))],
        };
    }

    private Quantity Renamed(MemberPiece member, QuantityKey key, Quantity quantity)
    {
        Term Of(Term term) => term with { Of = term.Of is { } of ? _pools.KeyOf(member, of) : null, Part = term.Part.Length > 0 ? member.Prefixed(term.Part) : "" };
        Working working = quantity.Working switch
        {
            Sum sum => sum with { Terms = [.. sum.Terms.Select(Of)] },
            Extreme extreme => extreme with { Of = [.. extreme.Of.Select(Of)] },
            ToCut cut => cut with { Exact = _pools.KeyOf(member, cut.Exact) },
            var stated => stated,
        };
        return quantity with { Key = key, Working = working };
    }

    // Notes stand in the plan of each piece; a thickness that nobody has read is told of the pooled wood, once.
    private IEnumerable<Finding> FindingsTogether()
    {
        var unread = new HashSet<string>(StringComparer.Ordinal);
        foreach (MemberPiece member in Members)
        {
            foreach (Finding finding in member.Set.Findings)
            {
                if (finding.Code == "material.not-read" && _pools.PoolOf(member, finding.Key) is var pool && !_pools.IsRead(pool) && unread.Add(pool))
                    yield return finding with { Key = pool, Words = $"The thickness of {pool} is a default.", Remedy = $"Read the sheets first{member.Source.Piece.Hand.Say($": {Commands(pool)}", $", and enter it {Places(pool)}")}.", Place = default };
                else if (finding.Severity > Severity.Note) yield return Named(member, finding);
            }
        }
        foreach (Finding apart in _pools.Apart) yield return apart;
    }

    private static Finding Named(MemberPiece member, Finding finding) => finding with { Key = finding.Key.Length > 0 ? member.Prefixed(finding.Key) : "", Words = $"{member.Source.Piece.Name}: {finding.Words}", Place = default };

    // One act has one id in every log that tells of it: here it is one entry again.
    private Log LogTogether() => new(
    [
        .. Members.SelectMany(m => m.Source.Log.Standing.OfType<MarkEntry>().Select(e => e with
        {
            Keys = [.. e.Keys.Select(m.Prefixed)],
            Figures = ImmutableDictionary<QuantityKey, ExactLength>.Empty,
            Chosen = ImmutableDictionary<QuantityKey, ExactLength>.Empty,
            Took = [.. e.Took.Select(t => t with { Of = _pools.PoolOf(m, t.Of) })],
            Left = [.. e.Left.Select(l => l with { Of = _pools.PoolOf(m, l.Of) })],
        })).GroupBy(e => e.Id, StringComparer.Ordinal)
            .Select(g => g.Aggregate((a, b) => a with { Keys = [.. a.Keys, .. b.Keys], Took = [.. a.Took, .. b.Took], Left = [.. a.Left, .. b.Left] })),
    ]);

    private static string Unit((string File, PieceSource Source) piece) => piece.Source.Piece.Unit.Words;

    // First letters of the words, two of a single word; a number tells apart those that are alike.
    private static string[] Codes(string[] names)
    {
        var codes = new List<string>();
        foreach (string name in names)
        {
            string[] words = [.. name.Split(' ', '-', '_').Select(w => new string([.. w.Where(char.IsAsciiLetter)])).Where(w => w.Length > 0)];
            string code = (words.Length > 1 ? string.Concat(words.Take(3).Select(w => w[0])) : words.Length == 1 ? words[0][..Math.Min(2, words[0].Length)] : "P").ToUpperInvariant();
            string free = code;
            for (int i = 2; codes.Contains(free); i++) free = $"{code}{i}";
            codes.Add(free);
        }
        return [.. codes];
    }
}
