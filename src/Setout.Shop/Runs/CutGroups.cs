using System.Collections.Immutable;
using Setout.Core.Craft;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;

namespace Setout.Shop.Runs;

/// <summary>Something cut or bored into parts.</summary>
/// <param name="Words">What and where, and whether it went into long strips already.</param>
/// <param name="Figures">Its figures by name.</param>
/// <param name="Caution">What to mind at it; empty where it is a groove or the like, or stands at the cut above.</param>
public sealed record GroupedCut(string Words, ImmutableArray<(string Name, QuantityKey Key)> Figures, string Caution);

/// <summary>Parts with all their cuts alike: they are cut at the same settings.</summary>
/// <param name="Parts">The parts, one or more.</param>
/// <param name="Name">What they are, in words.</param>
/// <param name="Cuts">What is cut into each.</param>
public sealed record CutGroup(ImmutableArray<Part> Parts, string Name, ImmutableArray<GroupedCut> Cuts)
{
    /// <summary>What to mind where grooves are cut.</summary>
    public const string Caution = "Put the hood and the spreader back at once after grooving. Groove a scrap first and try in it what goes in.";

    /// <summary>How the drawings of faces with holes are read.</summary>
    public const string FacesWords = "Each face with its front or lower edge below and its lower or left end at the left; measure from there unless a figure runs from the other edge. Parts in pairs are bored as mirror images.";

    /// <summary>What to mind where holes are bored, those for hinges and slides too that no cut above tells of.</summary>
    public static string OfHoles => Cautions.Of("drill").Words;

    /// <summary>All that is cut and bored into parts after they have their sizes, what the work wants first in front.</summary>
    public static ImmutableArray<CutGroup> Of(Plan plan)
    {
        SetPiece set = plan.Set;
        ImmutableArray<StripGroove> strips = StripGrooves.Of(plan);
        string Written(Machining m) => $"{m.Words} ({m.Where}): {string.Join('|', m.Figures.Select(f => $"{f.Name} {set.Worked[f.Key]}"))}";
        // What went into long strips is not cut again.
        string InStrips(Machining cut, IEnumerable<string> parts) => parts.All(p => strips.Any(s => s.Parts.Any(c => c.Part == p && c.Words == cut.Words)))
            ? $"; in the strips already, before run {strips.First(s => s.Parts.Any(c => c.Words == cut.Words && parts.Contains(c.Part))).Before}" : "";
        return
        [
            .. set.Machinings.GroupBy(m => m.Part).Select(g => (Part: set.Parts.First(p => p.Key == g.Key), Cuts: g.ToList()))
                .GroupBy(p => string.Join('\n', p.Cuts.Select(Written))).OrderBy(g => g.Min(p => Turn(set, p.Part.Key)))
                .Select(g => new CutGroup([.. g.Select(p => p.Part)], Named([.. g.Select(p => p.Part)]),
                    [.. g.First().Cuts.Select((c, i) => new GroupedCut((c.Where.Length > 0 ? $"{Upper(c.Words)} ({c.Where})" : Upper(c.Words)) + InStrips(c, g.Select(p => p.Part.Key)), c.Figures, Mind(g.First().Cuts, i)))])),
        ];
    }

    // Where the passes of a slot stand one below the other, the first of them says it for all.
    private static string Mind(List<Machining> cuts, int at) =>
        cuts[at].Caution is { Length: > 0 } key && cuts.FindIndex(c => c.Caution == key) == at ? Cautions.Of(key).Words : "";

    /// <summary>The step that a part comes in: what is needed first is cut first.</summary>
    private static int Turn(SetPiece set, string part)
    {
        for (int i = 0; i < set.Steps.Length; i++)
            if (set.Steps[i].Stage != Stage.Edges && set.Steps[i].Parts.Contains(part)) return i;
        return set.Steps.Length;
    }

    private static string Named(ImmutableArray<Part> parts) => parts.Length == 1 ? parts[0].Name : $"{parts[0].Name} and {(parts.Length == 2 ? parts[1].Name : $"{parts.Length - 1} more alike")}";

    private static string Upper(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
