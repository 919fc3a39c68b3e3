// Over 200 lines: one look at a finished piece; what counts as touching and within is the same for each question.
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Testing;

/// <summary>
/// Looks at a piece set out as a woodworker would at the finished thing: do parts take the same room, does anything stand out, do the
/// boxes run, are the gaps even. Exact arithmetic on where the parts are; shares only values with the rules.
/// </summary>
public static class SetPieceChecker
{
    // Side slides of the 1/2 in class take 12.7 mm a side, slides under the box 21 mm to its inside; the rest common practice, no source.
    private static readonly ExactLength s_slide = ExactLength.FromInches(Rational.Of(1, 2)), s_under = ExactLength.FromMillimetres(21);
    private static readonly ExactLength s_play = ExactLength.FromInches(Rational.Of(1, 32));
    private static readonly ExactLength s_behind = ExactLength.FromInches(Rational.Of(1, 8));

    private sealed record Member(Part Part, int Number, Placement Box)
    {
        public override string ToString() => $"{Part.Key}#{Number}";
    }

    /// <summary>All that is wrong, in words; empty when nothing is.</summary>
    public static IReadOnlyList<string> Violations(SetPiece set)
    {
        Member[] members = [.. set.Parts.SelectMany(p => p.Placements.Select((b, i) => new Member(p, i + 1, b)))];
        return
        [
            .. set.Findings.Where(f => f.Severity == Severity.Stop).Select(f => $"stop: {f.Code} {f.Key}: {f.Words}"),
            .. Chains(set), .. Sizes(set), .. Placed(set), .. Overlaps(set, members), .. Outside(set, members), .. Boxes(set, members), .. Fronts(set, members), .. Touching(set, members),
            .. AssemblyChecker.Violations(set),
            .. set.Gaps.Where(g => set.Worked[g.Key] < g.Least || set.Worked[g.Key] > g.Most).Select(g => $"gap {g.Name}: {set.Worked[g.Key]}"),
        ];
    }

    private static IEnumerable<string> Chains(SetPiece set) =>
        from chain in set.Chains
        where chain.Misfit(set.Worked) is not { Sign: 0 }
        select $"chain {chain.Name} is off by {chain.Misfit(set.Worked)}";

    private static IEnumerable<string> Sizes(SetPiece set) =>
        from part in set.Parts
        from size in new[] { part.Length, part.Width }
        where size.Exact != size.ToCut
        let cut = set.Worked[size.ToCut]
        where cut.Sign <= 0 || !set.Grid.Holds(cut)
        select $"{size.ToCut} is {cut}";

    private static IEnumerable<string> Placed(SetPiece set)
    {
        foreach (Part part in set.Parts)
        {
            if (part.Placements.Length != part.Count && part.Role != PartRole.Loose) yield return $"{part.Key}: {part.Count} of it, {part.Placements.Length} placed";
            ExactLength[] cut = [.. new[] { set.Worked[part.Length.AsCut], set.Worked[part.Width.AsCut], set.Worked[part.Thickness] }.Order()];
            foreach (Placement box in part.Placements)
            {
                ExactLength[] placed = [.. new[] { box.SizeX, box.SizeY, box.SizeZ }.Order()];
                // A back is trimmed to the case after it is on, a filler is scribed, and a strip planed flush with the top.
                bool fits = part.Role is PartRole.Back or PartRole.Filler or PartRole.EdgeStrip ? placed.Zip(cut).All(p => p.First <= p.Second) : placed.SequenceEqual(cut);
                if (!fits) yield return $"{part.Key} is cut {string.Join(" x ", cut)} and placed {string.Join(" x ", placed)}";
            }
        }
    }

    private static IEnumerable<string> Overlaps(SetPiece set, Member[] members)
    {
        for (int i = 0; i < members.Length; i++)
        {
            for (int j = i + 1; j < members.Length; j++)
            {
                (Member a, Member b) = (members[i], members[j]);
                ExactLength x = Shared(a.Box.X, a.Box.SizeX, b.Box.X, b.Box.SizeX), y = Shared(a.Box.Y, a.Box.SizeY, b.Box.Y, b.Box.SizeY), z = Shared(a.Box.Z, a.Box.SizeZ, b.Box.Z, b.Box.SizeZ);
                if (x.Sign <= 0 || y.Sign <= 0 || z.Sign <= 0 || IsInItsGroove(set, a, b, x, y) || IsInItsGroove(set, b, a, x, y) || IsInItsCorner(set, a, b, x) || IsInItsCorner(set, b, a, x)
                    || IsLetIn(set, a, b, x, y, z) || IsLetIn(set, b, a, x, y, z) || IsMitre(set, a, b, x, y)) continue;
                yield return $"{a} and {b} overlap by {x} x {y} x {z}";
            }
        }
    }

    /// <summary>Two strips that are mitred share their corner, by the thickness of a strip each way.</summary>
    private static bool IsMitre(SetPiece set, Member a, Member b, ExactLength x, ExactLength y)
    {
        bool IsMitred(Member m) => m.Part.Role == PartRole.EdgeStrip && set.Machinings.Any(c => c.Part == m.Part.Key && c.Words.StartsWith("mitre", StringComparison.Ordinal));
        return IsMitred(a) && IsMitred(b) && x == set.Worked[a.Part.Thickness] && y == set.Worked[b.Part.Thickness];
    }

    /// <summary>A bottom may stand in the sides and ends of its own box, no deeper than their groove.</summary>
    private static bool IsInItsGroove(SetPiece set, Member bottom, Member round, ExactLength x, ExactLength y)
    {
        string owner = Owner(bottom.Part.Key);
        if (bottom.Part.Role != PartRole.BoxBottom || Owner(round.Part.Key) != owner || round.Part.Role is not (PartRole.BoxSide or PartRole.BoxEnd)) return false;
        ExactLength groove = set.Worked[QuantityKey.Of(owner, "groove.depth").ToCut];
        return round.Part.Role == PartRole.BoxSide ? x <= groove : y <= groove;
    }

    /// <summary>The end of a box may stand in its sides, no deeper than their joint says.</summary>
    private static bool IsInItsCorner(SetPiece set, Member end, Member side, ExactLength x) => end.Part.Role == PartRole.BoxEnd && side.Part.Role == PartRole.BoxSide
        && set.Joints.Any(j => j.Part == end.Part.Key && j.Against == side.Part.Key && j.Depth is { } depth && x <= set.Worked[depth]);

    private static DrawerKind KindOf(SetPiece set, string drawer)
    {
        static IEnumerable<DrawerBank> Banks(OpeningContent? content) => content switch
        {
            DrawerBank bank => [bank],
            Division division => division.Items.OfType<Opening>().SelectMany(o => Banks(o.Content)),
            DoorFilling doors => Banks(doors.Behind),
            _ => [],
        };
        DrawerBank holder = set.Piece.Members.SelectMany(m => m switch { Frame frame => Banks(frame.Bays), Case box => Banks(box.Content), _ => [] }).First(b => b.Drawers.Any(d => d.Key == drawer));
        return set.Piece.DrawerKinds[holder.Like.Text];
    }

    private static bool IsBehindDoors(SetPiece set, string drawer)
    {
        static bool Holds(OpeningContent? content, string drawer, bool isBehind) => content switch
        {
            DrawerBank bank => isBehind && bank.Drawers.Any(d => d.Key == drawer),
            Division division => division.Items.OfType<Opening>().Any(o => Holds(o.Content, drawer, isBehind)),
            DoorFilling doors => Holds(doors.Behind, drawer, true),
            _ => false,
        };
        return set.Piece.Members.Any(m => Holds(m switch { Frame frame => frame.Bays, Case box => box.Content, _ => null }, drawer, false));
    }

    /// <summary>What may stand beside a box on one side.</summary>
    private static (ExactLength Least, ExactLength Most) Beside(SetPiece set, string drawer, DrawerKind kind)
    {
        ExactLength side = set.Worked[set.Parts.First(p => p.Key == drawer + ".side").Thickness];
        return kind.Slides switch
        {
            SlideWay.Under => (s_under - side - (s_play / 2), s_under - side + (s_play / 2)),
            SlideWay.Runners => (ExactLength.Zero, s_play * 2),
            _ => (kind.Sheet.Clearance?.Value ?? s_slide, (kind.Sheet.Clearance?.Value ?? s_slide) + s_play),
        };
    }

    /// <summary>A part may stand in another no deeper than its joint says, along its length or width and never through its face.</summary>
    private static bool IsLetIn(SetPiece set, Member part, Member other, ExactLength x, ExactLength y, ExactLength z)
    {
        ExactLength thick = ExactLength.Min(part.Box.SizeX, ExactLength.Min(part.Box.SizeY, part.Box.SizeZ));
        return set.Joints.Any(j => j.Depth is { } depth && j.Part == part.Part.Key && j.Against == other.Part.Key
            && ((part.Box.SizeX != thick && x <= set.Worked[depth]) || (part.Box.SizeY != thick && y <= set.Worked[depth]) || (part.Box.SizeZ != thick && z <= set.Worked[depth])));
    }

    private static IEnumerable<string> Outside(SetPiece set, Member[] members)
    {
        if (set.Piece.Members.FirstOrDefault(m => m is Core.Pieces.Case or Core.Pieces.Frame) is not { } structure) yield break;
        // What rounding the parts to the grid may add to a size over all: half a step for each that lands on the grid by itself.
        ExactLength grain = set.Grid.Step.ToExact() / 2;
        ExactLength width = set.Worked[QuantityKey.Of(structure.Key, "width")] + grain, height = set.Worked[QuantityKey.Of(structure.Key, "height")] + grain,
            depth = set.Worked[QuantityKey.Of(structure.Key, "depth")] + grain;
        // Base and feet lift it, fillers stand beside it, a face frame may stand over its sides.
        ExactLength Of(string what) => set.Worked.Values.TryGetValue(QuantityKey.Of(structure.Key, what), out Worked? w) ? w.Value : ExactLength.Zero;
        height += Of("lift");
        ExactLength over = Of("frame.overhang"), from = -over;
        // The rails of a face frame land on the grid once more.
        width += Of("filler-left.space") + Of("filler-right.space") + over + (Of("frame.rail").Sign > 0 ? grain : ExactLength.Zero);
        foreach (Member member in members)
        {
            Placement box = member.Box;
            bool isDoor = member.Part.Role is PartRole.Door or PartRole.DoorStile or PartRole.DoorRail or PartRole.DoorPanel;
            bool inFront = member.Part.Role == PartRole.FalseFront || (isDoor && box.Y.Sign < 0), onTop = member.Part.Role is PartRole.Top or PartRole.EdgeStrip;
            if (!onTop && (box.X < from || box.X + box.SizeX > width)) yield return $"{member} stands out sideways";
            if (!onTop && (box.Z.Sign < 0 || box.Z + box.SizeZ > height)) yield return $"{member} stands out above or below";
            if (!onTop && !inFront && (box.Y.Sign < 0 || box.Y + box.SizeY > depth)) yield return $"{member} stands out in front or behind";
            // What is behind doors is looked at with its box.
            if (member.Part.Role == PartRole.FalseFront && IsBehindDoors(set, Owner(member.Part.Key))) continue;
            bool isInset = member.Part.Role == PartRole.FalseFront && KindOf(set, Owner(member.Part.Key)).Fronts == FrontWay.Inset;
            if (inFront && member.Part.Role != PartRole.DoorPanel && (isInset ? box.Y : box.Y + box.SizeY) != ExactLength.Zero) yield return $"{member} does not lie on the face";
        }
    }

    private static SetOpening? BankOf(SetPiece set, Member member) => set.Openings.FirstOrDefault(o => o.Content == "drawers"
        && Holds(o.Space.X, o.Space.SizeX, member.Box.X + (member.Box.SizeX / 2)) && Holds(o.Space.Z, o.Space.SizeZ, member.Box.Z + (member.Box.SizeZ / 2)));

    private static IEnumerable<string> Boxes(SetPiece set, Member[] members)
    {
        foreach (IGrouping<string, Member> drawer in members.Where(m => m.Part.Role is PartRole.BoxSide or PartRole.BoxEnd or PartRole.BoxBottom).GroupBy(m => Owner(m.Part.Key)))
        {
            if (BankOf(set, drawer.First(m => m.Part.Role == PartRole.BoxEnd)) is not { } opening)
            {
                yield return $"drawer {drawer.Key} stands in no opening";
                continue;
            }
            Placement room = opening.Space;
            Member front = members.First(m => m.Part.Key == drawer.Key + ".front");
            ExactLength left = drawer.Min(m => m.Box.X) - room.X, right = room.X + room.SizeX - drawer.Max(m => m.Box.X + m.Box.SizeX);
            ExactLength low = drawer.Min(m => m.Box.Z), high = drawer.Max(m => m.Box.Z + m.Box.SizeZ);
            ExactLength behind = room.Y + room.SizeY - drawer.Max(m => m.Box.Y + m.Box.SizeY);
            DrawerKind kind = KindOf(set, drawer.Key);
            (ExactLength least, ExactLength most) = Beside(set, drawer.Key, kind);
            if (left != right || left < least || left > most) yield return $"drawer {drawer.Key} has {left} and {right} beside it";
            if (low < room.Z || high > room.Z + room.SizeZ) yield return $"drawer {drawer.Key} stands out of its opening in height";
            if (low < front.Box.Z || high > front.Box.Z + front.Box.SizeZ) yield return $"drawer {drawer.Key} shows beside its front";
            // The box comes flush with the face, so that its front lies on both; or it stands right behind an inset front, which stands in the opening.
            ExactLength face = room.Y + (kind.Fronts == FrontWay.Inset ? front.Box.SizeY : ExactLength.Zero);
            if (kind.Fronts == FrontWay.Inset && (front.Box.X <= room.X || front.Box.Z <= room.Z || front.Box.X + front.Box.SizeX >= room.X + room.SizeX || front.Box.Z + front.Box.SizeZ >= room.Z + room.SizeZ))
                yield return $"{front} does not go into its opening";
            if (drawer.Min(m => m.Box.Y) != face || behind < s_behind) yield return $"drawer {drawer.Key} stands {behind} from the back";
        }
    }

    private static IEnumerable<string> Fronts(SetPiece set, Member[] members)
    {
        foreach (var bank in members.Where(m => m.Part.Role == PartRole.FalseFront).GroupBy(m => BankOf(set, m)))
        {
            if (bank.Key is null)
            {
                yield return $"{bank.First()} covers no opening";
                continue;
            }
            QuantityKey gap = set.Worked.Order.First(k => k.Owner == bank.Key.Key && k.Text.EndsWith(".front-gap", StringComparison.Ordinal));
            Member[] fronts = [.. bank.OrderBy(m => m.Box.Z)];
            foreach ((Member low, Member high) in fronts.Zip(fronts.Skip(1)))
            {
                ExactLength between = high.Box.Z - low.Box.Z - low.Box.SizeZ;
                if (between != set.Worked[gap]) yield return $"{low} and {high} stand {between} apart";
                if (low.Box.X != high.Box.X || low.Box.SizeX != high.Box.SizeX) yield return $"{low} and {high} are not in line";
            }
        }
    }

    /// <summary>Shelves, decks and partitions meet what carries them on one side and are under by less than a step on the other.</summary>
    private static IEnumerable<string> Touching(SetPiece set, Member[] members)
    {
        Member[] solid = [.. members.Where(m => m.Part.Role is PartRole.Side or PartRole.Deck or PartRole.Partition or PartRole.Post or PartRole.Rail or PartRole.SlidePanel)];
        foreach (Member member in members.Where(m => m.Part.Role is PartRole.Shelf or PartRole.Partition || (m.Part.Role == PartRole.Deck && !m.Part.Key.Contains('.', StringComparison.Ordinal))))
        {
            bool upright = member.Part.Role == PartRole.Partition;
            (ExactLength from, ExactLength size) = upright ? (member.Box.Z, member.Box.SizeZ) : (member.Box.X, member.Box.SizeX);
            Joint? held = set.Joints.FirstOrDefault(j => j.Part == member.Part.Key);
            ExactLength into = set.Joints.FirstOrDefault(j => j.Part == member.Part.Key && j.Depth is not null) is { Depth: { } deep } ? set.Worked[deep] : ExactLength.Zero;
            (from, size) = (from + into, size - (into * 2));
            var beside = solid.Where(s => s != member && Shared(member.Box.Y, member.Box.SizeY, s.Box.Y, s.Box.SizeY).Sign > 0
                && (upright ? Shared(member.Box.X, member.Box.SizeX, s.Box.X, s.Box.SizeX) : Shared(member.Box.Z, member.Box.SizeZ, s.Box.Z, s.Box.SizeZ)).Sign > 0).ToList();
            var before = beside.Select(s => from - (upright ? s.Box.Z + s.Box.SizeZ : s.Box.X + s.Box.SizeX)).Where(d => d.Sign >= 0).ToList();
            var after = beside.Select(s => (upright ? s.Box.Z : s.Box.X) - from - size).Where(d => d > -set.Grid.Step.ToExact()).ToList();
            if (held?.Kind == JointKind.Pins)
            {
                if (before.Count == 0 || after.Count == 0 || before.Min().Sign <= 0 || after.Min() != before.Min()) yield return $"{member} has no play, or not alike at both ends";
                continue;
            }
            if (before.Count == 0 || before.Min().Sign != 0) yield return $"{member} does not touch what is before it";
            if (after.Count == 0 || after.Min().Sign < 0 || after.Min() >= set.Grid.Step.ToExact()) yield return $"{member} is {(after.Count == 0 ? "far" : after.Min())} from what is after it";
        }
    }

    private static string Owner(string key) => new QuantityKey(key).Owner;

    private static bool Holds(ExactLength from, ExactLength size, ExactLength at) => at >= from && at <= from + size;

    private static ExactLength Shared(ExactLength a, ExactLength aSize, ExactLength b, ExactLength bSize) =>
        ExactLength.Min(a + aSize, b + bSize) - ExactLength.Max(a, b);
}
