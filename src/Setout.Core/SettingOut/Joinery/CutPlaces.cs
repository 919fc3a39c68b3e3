using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut.Joinery;

/// <summary>
/// Into which members each cut and hole goes, and into which of their faces, once all stand: a row of pins where its holes are, a dado where what goes into it
/// meets the panel. So "the sides" become the left one, the right one or both.
/// </summary>
internal static class CutPlaces
{
    /// <summary>Fills in members and words of all machinings.</summary>
    public static void Write(Book book)
    {
        for (int i = 0; i < book.Machinings.Count; i++)
        {
            Machining cut = book.Machinings[i];
            if (book.Parts.Find(p => p.Key == cut.Part) is not { } part) continue;
            ImmutableArray<CutMember> members = [.. Cut(book, cut, part)];
            book.Machinings[i] = cut with { Members = members, Where = Say(part, members) };
        }
    }

    private static IEnumerable<CutMember> Cut(Book book, Machining cut, Part part)
    {
        string[] said = cut.On is { } on ? [cut.Edge is { } edge ? $"{on.InWords()}, {edge.InWords()}" : on.InWords()] : [];
        // What has no place is alike in all of it.
        if (part.Placements.Length == 0) return Enumerable.Range(1, part.Count).Select(n => new CutMember(n, "", [.. said]));
        IEnumerable<(int Number, string[] Faces)> met = cut.By.IsEmpty
            ? Enumerable.Range(1, part.Placements.Length).Select(n => (n, Array.Empty<string>()))
            : Enumerable.Range(1, part.Placements.Length).Select(n => (n, Faces(book, cut, part.Placements[n - 1], n))).Where(m => m.Item2.Length > 0);
        return met.Where(m => cut.Numbers.IsEmpty || cut.Numbers.Contains(m.Number)).Select(m => new CutMember(m.Number, Which(part, m.Number), [.. said.Length > 0 ? said : m.Faces]));
    }

    /// <summary>The faces of a member that holes begin in, or that something comes in through.</summary>
    private static string[] Faces(Book book, Machining cut, Placement box, int number)
    {
        var faces = new List<string>();
        foreach (string by in cut.By)
        {
            Bore[] bores = [.. book.Bores.Where(b => b.Key == by && b.Part == cut.Part && b.Number == number)];
            faces.AddRange(bores.Select(b => FaceOf(b.Along, At(b, b.Along) == Low(box, b.Along))));
            if (bores.Length > 0 || book.Bores.Any(b => b.Key == by && b.Part == cut.Part)) continue;
            faces.AddRange((book.Parts.Find(p => p.Key == by)?.Placements ?? []).Select(other => Through(book, box, other)).OfType<string>());
        }
        return [.. faces.Distinct()];
    }

    /// <summary>The face through which a box comes to another; null where they do not meet.</summary>
    private static string? Through(Book book, Placement box, Placement other)
    {
        (ExactLength x, ExactLength y, ExactLength z) = box.Shared(other);
        (Along Way, ExactLength Shared)[] ways = [(Along.X, x), (Along.Y, y), (Along.Z, z)];
        ExactLength near = book.Grid.Step.ToExact() * 2;
        if (ways.Any(w => w.Shared < -near) || ways.Count(w => w.Shared > near) < 2) return null;
        ExactLength Before(Along a) => Low(box, a) - Low(other, a);
        ExactLength After(Along a) => Low(other, a) + Size(other, a) - Low(box, a) - Size(box, a);
        Along way = ways.MinBy(w => w.Shared).Shared <= near ? ways.MinBy(w => w.Shared).Way : ways.MaxBy(w => ExactLength.Max(Before(w.Way), After(w.Way))).Way;
        return FaceOf(way, Before(way) > After(way));
    }

    private static string FaceOf(Along way, bool isLow) => way switch
    {
        Along.X => isLow ? "left face" : "right face",
        Along.Y => isLow ? "front" : "back",
        _ => isLow ? "lower face" : "upper face",
    };

    /// <summary>Where a member stands among its like.</summary>
    private static string Which(Part part, int number)
    {
        if (part.Placements.Length < 2) return "";
        Placement box = part.Placements[number - 1];
        var words = new List<string>();
        foreach ((Along way, string low, string high, string from) in new[] { (Along.X, "left", "right", "from the left"), (Along.Y, "front", "rear", "from the front"), (Along.Z, "lower", "upper", "from below") })
        {
            ExactLength Middle(Placement p) => Low(p, way) + (Size(p, way) / 2);
            ExactLength[] all = [.. part.Placements.Select(Middle).Distinct().Order()];
            if (all.Length == 1) continue;
            int at = Array.IndexOf(all, Middle(box));
            words.Add(at == 0 ? low : at == all.Length - 1 ? high : all.Length == 3 ? "middle" : $"no. {at + 1} {from},");
        }
        return string.Join(" ", words).TrimEnd(',');
    }

    private static string Say(Part part, ImmutableArray<CutMember> members)
    {
        if (members.IsEmpty) return "";
        string[] groups = [.. members.GroupBy(m => string.Join(" and ", m.Faces)).Select(g => (g.Key, Names: g.Count() == part.Count ? (part.Count == 1 ? "" : part.Count == 2 ? "both" : $"all {part.Count}") : string.Join(", ", g.Select(m => m.Which)))).Select(g => g.Names.Length == 0 ? g.Key : g.Key.Length == 0 ? g.Names : $"{g.Names}: {g.Key}")];
        return groups is ["left: right face", "right: left face"] ? "both: inside" : string.Join("; ", groups);
    }

    private static ExactLength At(Bore bore, Along axis) => axis switch { Along.X => bore.X, Along.Y => bore.Y, _ => bore.Z };

    private static ExactLength Low(Placement box, Along axis) => axis switch { Along.X => box.X, Along.Y => box.Y, _ => box.Z };

    private static ExactLength Size(Placement box, Along axis) => axis switch { Along.X => box.SizeX, Along.Y => box.SizeY, _ => box.SizeZ };
}
