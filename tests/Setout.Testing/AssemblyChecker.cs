// Over 200 lines: the walk, the ways out and what joints allow belong together, and are to be read beside one another.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;

namespace Setout.Testing;

/// <summary>
/// Takes a piece apart in thought, step by step from the words' own order: what came in last must come out again.
/// <list type="bullet">
/// <item>A step works on one unit: a structure, a drawer, a door, a top, a base, or the piece where it stands. What is made by itself comes in whole, as one body.</item>
/// <item>What came in before is one body, except in the carcase of a structure and inside other units, where what touches is one body (a pair of posts with its ties)
/// and what was put in dry is loose. So a step that closes is the same as this: there is an order in which its parts, and the bodies that lay ready, go in one after the other.</item>
/// <item>A body goes in along one of six directions, past all that is there; or along two, one after the other, as packing does: in through the opening, then sideways.
/// Touching is allowed. Sharing room is allowed only to a joint with a depth, and only along what it is: out of it; along a dado, groove or rabbet that
/// is not stopped; out of the open side of a rabbet. What stands on dowels comes off them only straight.</item>
/// <item>Where a step says that its parts are tipped, one may be longer than the way in: there must be room to tip it so far that it goes through, and to stand it up again.</item>
/// <item>Drawers come out at the front, and so do doors.</item>
/// <item>Parts are boxes: notches, chamfers and the openings of wells are not seen. Weight and reach are left out: what goes straight may still want many hands.</item>
/// </list>
/// Exact; shares only values with the rules.
/// </summary>
public static class AssemblyChecker
{
    private static readonly ImmutableArray<string> s_slots = ["dado", "groove", "rabbet", "slid in"];

    /// <summary>All that is wrong, in words; empty when the piece can be put together as its steps say.</summary>
    public static IReadOnlyList<string> Violations(SetPiece set) => [.. new Walk(set).Violations().Distinct()];

    private sealed record Member(Part Part, int Number, Placement Box)
    {
        public override string ToString() => Part.Count > 1 ? $"{Part.Key}#{Number}" : Part.Key;
    }

    private sealed record Body(string Name, ImmutableArray<Member> Members, bool IsNew);

    private sealed class Walk(SetPiece set)
    {
        private readonly Dictionary<string, List<Body>> _sites = new(StringComparer.Ordinal);
        private readonly HashSet<string> _done = new(StringComparer.Ordinal);
        private readonly List<string> _wrong = [];

        public List<string> Violations()
        {
            string first = set.Piece.Members.OfType<Structure>().FirstOrDefault()?.Key ?? "";
            foreach (AssemblyStep step in set.Steps)
            {
                string on = step.On ?? "";
                // Lips on edges are part of what they are glued to.
                if (on.Length == 0 && step.Stage == Stage.Edges) continue;
                if (on.Length == 0 && !_sites.ContainsKey("")) _sites[""] = Taken(first);
                Do(step, Site(on));
            }
            foreach (string left in _sites.Keys.Where(k => k.Length > 0 && (k != first || _sites.ContainsKey("")))) _wrong.Add($"{left} is made and never comes in");
            foreach (Part part in set.Parts.Where(p => p.Placements.Length > 0 && !_done.Contains(p.Key))) _wrong.Add($"{part.Key} never comes in");
            return _wrong;
        }

        private List<Body> Site(string key)
        {
            if (_sites.TryGetValue(key, out List<Body>? site)) return site;
            if (_done.Contains(key)) _wrong.Add($"work on {key} after it came in");
            // Work on a part before it comes in: strips glued to a sheet.
            Part? core = set.Units.Any(u => u.Key == key && set.Steps.Any(s => s.Whole.Contains(key))) ? null : set.Parts.FirstOrDefault(p => p.Key == key);
            return _sites[key] = core is null ? [] : [.. Members(core).Select(m => new Body(m.ToString(), [m], false))];
        }

        private List<Body> Taken(string key)
        {
            _done.Add(key);
            return _sites.Remove(key, out List<Body>? site) ? site : [];
        }

        private static IEnumerable<Member> Members(Part part) => part.Placements.Select((b, i) => new Member(part, i + 1, b));

        private void Do(AssemblyStep step, List<Body> site)
        {
            string on = step.On ?? "";
            var fresh = new List<Body>();
            foreach (string whole in step.Whole.Where(w => w != on && !_done.Contains(w)))
            {
                ImmutableArray<Member> members = [.. Taken(whole).SelectMany(b => b.Members)];
                if (members.IsEmpty) _wrong.Add($"{whole} comes in before it is made");
                else fresh.Add(new(whole, members, true));
            }
            foreach (Part part in step.Parts.Select(k => set.Parts.First(p => p.Key == k)))
            {
                if (!_done.Add(part.Key) && !_sites.ContainsKey(part.Key)) _wrong.Add($"{part.Key} comes in twice");
                ImmutableArray<Member> onIt = _sites.Remove(part.Key, out List<Body>? worked) ? [.. worked.SelectMany(b => b.Members)] : [];
                if (onIt.IsEmpty) fresh.AddRange(Members(part).Select(m => new Body(m.ToString(), [m], true)));
                else fresh.Add(new(part.Key, onIt, true));
            }
            if (step.IsMadeFirst)
            {
                Solve(step, [], fresh, true);
                fresh = [new(string.Join(" and ", step.Parts), [.. fresh.SelectMany(b => b.Members)], true)];
            }
            bool isOpen = on.Length > 0 && (step.Stage <= Stage.Carcase || !set.Units.Any(u => u.Key == on && u.Kind == UnitKind.Structure));
            List<Body> there = isOpen || site.Count < 2 ? site : [new("what is there", [.. site.SelectMany(b => b.Members)], false)];
            Solve(step, there, fresh, isOpen);
            IEnumerable<Body> all = there.Concat(fresh).Select(b => b with { IsNew = false });
            List<Body> after = step.IsDry ? [.. all] : Joined([.. all]);
            site.Clear();
            site.AddRange(after);
        }

        /// <summary>Takes bodies out one by one; what is stuck could not go in. Fewer bodies never stand more in the way, so the first that can go may go.</summary>
        private void Solve(AssemblyStep step, List<Body> there, List<Body> fresh, bool oldMayGo)
        {
            var left = new List<Body>([.. there, .. fresh]);
            while (left.Count > 1 && left.Any(b => b.IsNew))
            {
                Body? out_ = left.FirstOrDefault(b => (b.IsNew || oldMayGo) && Goes(b, [.. left.Where(o => o != b).SelectMany(o => o.Members)]));
                if (out_ is null)
                {
                    _wrong.Add($"{string.Join(", ", left.Where(b => b.IsNew).Select(b => b.Name))} cannot go in: {step.Words}");
                    return;
                }
                left.Remove(out_);
            }

            bool Goes(Body body, ImmutableArray<Member> others) => CanGo(body, others) || (step.IsTipped && CanTip(body, others));
        }

        private static List<Body> Joined(List<Body> bodies)
        {
            var joined = new List<Body>();
            foreach (Body body in bodies)
            {
                List<Body> near = joined.FindAll(j => j.Members.Any(a => body.Members.Any(b => Touch(a.Box, b.Box))));
                joined.RemoveAll(near.Contains);
                joined.Add(near.Count == 0 ? body : new(string.Join("+", near.Append(body).Select(b => b.Name)), [.. near.Append(body).SelectMany(b => b.Members)], false));
            }
            return joined;
        }

        private static bool Touch(Placement a, Placement b)
        {
            int[] signs = [.. Enumerable.Range(0, 3).Select(i => Shared(a, b, i).Sign)];
            return signs.All(s => s >= 0) && signs.Count(s => s == 0) <= 1;
        }

        private bool CanGo(Body body, ImmutableArray<Member> others)
        {
            UnitKind? kind = set.Units.FirstOrDefault(u => u.Key == body.Name)?.Kind;
            bool isHung = kind is UnitKind.Drawer or UnitKind.Door || body.Members.All(m => m.Part.Role == PartRole.Door);
            if (isHung) return Travel(body.Members, others, 1, -1) is null;
            (int Axis, int Sign)[] ways = [.. from axis in new[] { 0, 1, 2 } from sign in new[] { -1, 1 } select (axis, sign)];
            if (ways.Any(w => Travel(body.Members, others, w.Axis, w.Sign) is null)) return true;
            // First sideways, then straight out.
            return Aside(body.Members, others).Any(a => ways.Any(w => w.Axis != a.Axis && Travel(a.Moved, others, w.Axis, w.Sign) is null));
        }

        /// <summary>Where a body comes when it goes sideways by just so much that something is cleared.</summary>
        private IEnumerable<(ImmutableArray<Member> Moved, int Axis)> Aside(ImmutableArray<Member> body, ImmutableArray<Member> others)
        {
            for (int way = 0; way < 6; way++)
            {
                (int axis, int sign) = (way / 2, way % 2 == 0 ? -1 : 1);
                if (Travel(body, others, axis, sign) is not { Sign: > 0 } far) continue;
                foreach (ExactLength by in body.SelectMany(m => others.SelectMany(o => Clears(m.Box, o.Box, axis, sign))).Append(far).Distinct().Where(d => d.Sign > 0 && d <= far))
                {
                    ImmutableArray<Member> moved = [.. body.Select(m => m with { Box = Moved(m.Box, axis, by * sign) })];
                    if (!moved.Any(m => others.Any(o => Overlap(m, o)))) yield return (moved, axis);
                }
            }
        }

        private static bool Overlap(Member a, Member b) => Enumerable.Range(0, 3).All(i => Shared(a.Box, b.Box, i).Sign > 0);

        /// <summary>
        /// A board l long and t thick, turned by an angle, takes l cos + t sin along its length and l sin + t cos across; standing up again it takes its diagonal. Tried are
        /// angles with whole tangents of their halves, so that all stays exact, and each clear rectangle bounded by what is there; how it turns from one to the other is not.
        /// </summary>
        private bool CanTip(Body body, ImmutableArray<Member> others) =>
            body.Members is [var only] && (CanTip(only, others) || Aside(body.Members, others).Any(a => CanTip(a.Moved[0], others)));

        private bool CanTip(Member member, ImmutableArray<Member> others)
        {
            int longest = Enumerable.Range(0, 3).MaxBy(i => Size(member.Box, i));
            (ExactLength l, ExactLength low, ExactLength high) = (Size(member.Box, longest), From(member.Box, longest) - Free(member, others, longest, -1), End(member.Box, longest) + Free(member, others, longest, 1));
            foreach (int across in Enumerable.Range(0, 3).Where(i => i != longest))
            {
                ExactLength t = Size(member.Box, across), left = From(member.Box, across) - Free(member, others, across, -1), right = End(member.Box, across) + Free(member, others, across, 1);
                if (Square(high - low) < Square(l) + Square(t)) continue;
                foreach ((ExactLength from, ExactLength h) in Spans(others, longest, low, high).Where(s => s.Size > t && s.Size < l))
                {
                    foreach ((ExactLength at, ExactLength wide) in Spans(others, across, left, right).Where(s => TippedTo(l, t, h) is { } takes && takes <= s.Size))
                    {
                        ImmutableArray<Member> tipped = [member with { Box = Stretched(member.Box, (longest, from, h), (across, at, wide)) }];
                        if (others.Any(o => Overlap(tipped[0], o))) continue;
                        if (Enumerable.Range(0, 3).Where(i => i != longest).Any(w => Travel(tipped, others, w, -1) is null || Travel(tipped, others, w, 1) is null)) return true;
                    }
                }
            }
            return false;
        }

        /// <summary>What a board takes across when it is tipped just so far that it takes no more than a height; null where it never does.</summary>
        private static ExactLength? TippedTo(ExactLength l, ExactLength t, ExactLength most)
        {
            for (int k = 1; k <= 256; k++)
            {
                Rational u = Rational.Of(k, 256), whole = Rational.One + (u * u), cos = (Rational.One - (u * u)) / whole, sin = u * 2 / whole;
                if ((l * cos) + (t * sin) <= most) return (l * sin) + (t * cos);
            }
            return null;
        }

        private ExactLength Free(Member member, ImmutableArray<Member> others, int axis, int sign) => Travel([member], others, axis, sign) ?? Size(member.Box, axis);

        /// <summary>The spans between two places that are bounded by them or by what is there.</summary>
        private static IEnumerable<(ExactLength From, ExactLength Size)> Spans(ImmutableArray<Member> others, int axis, ExactLength least, ExactLength most)
        {
            bool Within(ExactLength at) => at >= least && at <= most;
            ExactLength[] starts = [.. others.Select(o => End(o.Box, axis)).Append(least).Where(Within).Distinct()], ends = [.. others.Select(o => From(o.Box, axis)).Append(most).Where(Within).Distinct()];
            return from start in starts from end in ends where end > start select (start, end - start);
        }

        private static Rational Square(ExactLength length) => length.Millimetres * length.Millimetres;

        private static Placement Stretched(Placement p, params ReadOnlySpan<(int Axis, ExactLength From, ExactLength Size)> to)
        {
            foreach ((int axis, ExactLength from, ExactLength size) in to)
                p = axis switch { 0 => p with { X = from, SizeX = size }, 1 => p with { Y = from, SizeY = size }, _ => p with { Z = from, SizeZ = size } };
            return p;
        }

        private static IEnumerable<ExactLength> Clears(Placement a, Placement b, int axis, int sign) => sign > 0
            ? [End(b, axis) - From(a, axis), From(b, axis) - From(a, axis), End(b, axis) - End(a, axis)]
            : [End(a, axis) - From(b, axis), End(a, axis) - End(b, axis), From(a, axis) - From(b, axis)];

        /// <summary>How far bodies go along a direction until something is in the way; null for all the way.</summary>
        private ExactLength? Travel(ImmutableArray<Member> body, ImmutableArray<Member> others, int axis, int sign)
        {
            ExactLength? least = null;
            foreach (Member a in body)
            {
                foreach (Member b in others)
                {
                    if (Room(a, b, axis, sign) is { } room && (least is null || room < least)) least = room;
                }
            }
            return least;
        }

        private ExactLength? Room(Member a, Member b, int axis, int sign)
        {
            ExactLength along = Shared(a.Box, b.Box, axis);
            bool meet = Enumerable.Range(0, 3).Where(i => i != axis).All(i => Shared(a.Box, b.Box, i).Sign > 0);
            if (meet && along.Sign > 0) return IsFree(a, b, axis, sign) ? null : ExactLength.Zero;
            if (OnDowels(a, b) is { } pulls && pulls != (axis, sign)) return ExactLength.Zero;
            if (!meet) return null;
            ExactLength room = sign > 0 ? From(b.Box, axis) - End(a.Box, axis) : From(a.Box, axis) - End(b.Box, axis);
            return room.Sign >= 0 ? room : null;
        }

        /// <summary>The one way off dowels; null where there are none between the two.</summary>
        private (int Axis, int Sign)? OnDowels(Member a, Member b)
        {
            if (!Touch(a.Box, b.Box) || !set.Joints.Any(j => Between(j, a, b) && (j.Kind == JointKind.Dowels || j.Held.Contains("dowel", StringComparison.Ordinal)))) return null;
            int axis = Enumerable.Range(0, 3).FirstOrDefault(i => Shared(a.Box, b.Box, i).Sign == 0, -1);
            return axis < 0 ? null : (axis, Away(a.Box, b.Box, axis));
        }

        /// <summary>Whether one of two that share room may move so against the other.</summary>
        private bool IsFree(Member a, Member b, int axis, int sign)
        {
            foreach (Joint joint in set.Joints.Where(j => j.Depth is not null && Between(j, a, b)))
            {
                (Member inner, Member outer, int way) = joint.Part == a.Part.Key ? (a, b, sign) : (b, a, -sign);
                // What is lapped stands in the other by its whole thickness, and comes off the face it lies in.
                if (joint.Kind == JointKind.HalfLap && axis == 1 && way == Away(inner.Box, outer.Box, axis)) return true;
                ExactLength depth = set.Worked[joint.Depth!.Value];
                int[] into = [.. Enumerable.Range(0, 3).Where(i => Shared(a.Box, b.Box, i) is var s && s <= depth && s < Size(inner.Box, i)).OrderBy(i => Size(outer.Box, i))];
                if (into.Length == 0) continue;
                (int e, int thin) = (into[0], Enumerable.Range(0, 3).MinBy(i => Size(inner.Box, i)));
                if (axis == e && way == Away(inner.Box, outer.Box, e)) return true;
                string kind = joint.Kind.Word();
                if (axis != e && axis != thin && s_slots.Contains(kind) && Runs(kind, inner, outer, way)) return true;
                if (kind == "rabbet" && axis == thin && axis != e && way == Open(inner.Box, outer.Box, axis)) return true;
            }
            return IsMitred(a) && IsMitred(b) && sign == Away(a.Box, b.Box, axis);
        }

        /// <summary>Whether the slot of a joint runs on to the end on that side.</summary>
        private bool Runs(string kind, Member inner, Member outer, int way)
        {
            string word = kind == "slid in" ? "groove" : kind;
            IEnumerable<Machining> cuts = set.Machinings.Where(m => m.Part == outer.Part.Key && m.Words.StartsWith(word, StringComparison.OrdinalIgnoreCase)
                && (kind != "dado" || m.Words.Contains(inner.Part.Name, StringComparison.Ordinal)));
            return cuts.All(m => !m.Words.Contains("stopped", StringComparison.Ordinal) || (m.Words.Contains("from the back", StringComparison.Ordinal) && way > 0));
        }

        private bool IsMitred(Member m) => m.Part.Role == PartRole.EdgeStrip && set.Machinings.Any(c => c.Part == m.Part.Key && c.Words.StartsWith("mitre", StringComparison.Ordinal));

        private static bool Between(Joint joint, Member a, Member b) => (joint.Part == a.Part.Key && joint.Against == b.Part.Key) || (joint.Part == b.Part.Key && joint.Against == a.Part.Key);

        // The open side of a rabbet is the nearer end of what it is cut in.
        private static int Open(Placement inner, Placement outer, int axis) => End(outer, axis) - End(inner, axis) < From(inner, axis) - From(outer, axis) ? 1 : -1;

        private static int Away(Placement a, Placement b, int axis) => (From(a, axis) + End(a, axis) - From(b, axis) - End(b, axis)).Sign >= 0 ? 1 : -1;

        private static ExactLength From(Placement p, int axis) => axis switch { 0 => p.X, 1 => p.Y, _ => p.Z };

        private static ExactLength Size(Placement p, int axis) => axis switch { 0 => p.SizeX, 1 => p.SizeY, _ => p.SizeZ };

        private static ExactLength End(Placement p, int axis) => From(p, axis) + Size(p, axis);

        private static Placement Moved(Placement p, int axis, ExactLength by) => axis switch { 0 => p with { X = p.X + by }, 1 => p with { Y = p.Y + by }, _ => p with { Z = p.Z + by } };

        private static ExactLength Shared(Placement a, Placement b, int axis) =>
            ExactLength.Min(End(a, axis), End(b, axis)) - ExactLength.Max(From(a, axis), From(b, axis));
    }
}
