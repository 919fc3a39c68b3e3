using System.Collections.Immutable;
using Setout.Core.SettingOut;

namespace Setout.Core.Craft;

/// <summary>The heaviest thing that is handled as one in a step.</summary>
/// <param name="What">For people: the name of a part, or of what was made by itself.</param>
/// <param name="Weight">What it weighs, hardware left out.</param>
public sealed record Lift(string What, Weight Weight)
{
    /// <summary>True where it may be more than one person lifts.</summary>
    public bool IsForTwo => Weight.Most > Lifting.OnePerson;

    /// <summary>True where it may be more than two lift.</summary>
    public bool IsForMore => Weight.Most > 2 * Lifting.OnePerson;

    /// <summary>What to do about it; empty where one person lifts it.</summary>
    public string Advice => IsForMore
        ? $"Do not lift it with two: bring more hands or a carrier, slide or roll it, or take off it what comes off. {Lifting.LimitWords}"
        : IsForTwo ? $"Two people, or a carrier. {Lifting.LimitWords}" : "";
}

/// <summary>What is to be lifted while a piece is put together.</summary>
public static class Lifting
{
    /// <summary>
    /// The most that one person lifts under ideal conditions, in kilograms: the load constant of the NIOSH lifting equation, 23 kg (51 lb). Close to the body, at knuckle
    /// height, straight, now and then; all else lowers it.
    /// </summary>
    public const double OnePerson = 23;

    /// <summary>Where the limit is from, and what it leaves out.</summary>
    public const string LimitWords = "One person lifts 23 kg (51 lb) at most, close to the body and straight; less from the floor, at arm's length or twisted (NIOSH lifting equation).";

    /// <summary>The heaviest thing handled in a step; null where it handles nothing that has a weight on record.</summary>
    public static Lift? Of(SetPiece set, AssemblyStep step)
    {
        int at = set.Steps.IndexOf(step);
        var lifts = new List<Lift>();
        Part[] own = [.. step.Parts.Select(k => set.Parts.FirstOrDefault(p => p.Key == k)).OfType<Part>()];
        if (step.IsMadeFirst) lifts.Add(new(string.Join(", ", own.Select(p => p.Name)), Weights.Of(set, WithLips(set, own))));
        else lifts.AddRange(own.Select(p => new Lift(p.Name, Weights.Of(set, Worked(set, p, at)))));
        foreach (string whole in step.Whole)
        {
            // A piece of one structure is lifted with all that is on it by then.
            bool isPiece = step.On == "" && set.Units.Count(u => u.Kind == UnitKind.Structure) == 1 && set.Units.Any(u => u.Key == whole && u.Kind == UnitKind.Structure);
            ImmutableArray<Part> parts = isPiece ? [.. Made(set, whole, at), .. Made(set, "", at)] : Made(set, whole, at);
            string base_ = $"{whole}.base";
            // What it stands on is there already.
            if (isPiece) parts = [.. parts.ExceptBy(Made(set, base_, at).Select(p => p.Key), p => p.Key)];
            lifts.Add(new(set.Units.FirstOrDefault(u => u.Key == whole)?.Name ?? whole, Weights.Of(set, WithLips(set, parts.DistinctBy(p => p.Key)))));
        }
        return lifts.Where(l => l.Weight.Known.Kilograms.Value > 0).MaxBy(l => l.Weight.Most);
    }

    /// <summary>
    /// The heaviest thing of all steps, and of the structures, which are carried to their place even where no step says so; null where nothing has a weight on record.
    /// </summary>
    public static Lift? Largest(SetPiece set) => set.Steps.Select(s => Of(set, s)).OfType<Lift>()
        .Concat(set.Units.Where(u => u.Kind == UnitKind.Structure).Select(u => new Lift(Empty(set, u), Weights.Of(set, PartsOf(set, u.Key)))))
        .Where(l => l.Weight.Known.Kilograms.Value > 0).MaxBy(l => l.Weight.Most);

    private static string Empty(SetPiece set, Unit structure) =>
        set.Parts.Any(p => p.Role is PartRole.BoxSide or PartRole.Door or PartRole.DoorStile) ? $"{structure.Name}, without drawers and doors" : structure.Name;

    /// <summary>The parts of what was made by itself, once all of it is made.</summary>
    public static ImmutableArray<Part> PartsOf(SetPiece set, string unit) => [.. WithLips(set, Made(set, unit, set.Steps.Length - 1))];

    /// <summary>The parts that have come into a unit up to a step, with what came in whole.</summary>
    private static ImmutableArray<Part> Made(SetPiece set, string unit, int upTo)
    {
        var keys = new HashSet<string>(StringComparer.Ordinal);
        Add(unit);
        if (set.Parts.Any(p => p.Key == unit)) keys.Add(unit);
        return [.. set.Parts.Where(p => keys.Contains(p.Key))];

        void Add(string on)
        {
            for (int i = 0; i <= upTo; i++)
            {
                AssemblyStep step = set.Steps[i];
                if (step.On != on || (on.Length == 0 && step.Stage == Stage.Edges)) continue;
                foreach (string key in step.Parts)
                    if (keys.Add(key) && key != on) Add(key);
                foreach (string whole in step.Whole)
                    if (whole != on && keys.Add(whole)) Add(whole);
            }
        }
    }

    /// <summary>One member of a part, with what was put on it before it comes in.</summary>
    private static IEnumerable<Part> Worked(SetPiece set, Part part, int upTo) =>
        WithLips(set, [part with { Count = 1 }, .. Made(set, part.Key, upTo).Where(p => p.Key != part.Key)]);

    private static IEnumerable<Part> WithLips(SetPiece set, IEnumerable<Part> parts)
    {
        foreach (Part part in parts)
        {
            yield return part;
            if (part.Seen == default) continue;
            foreach (Part lip in set.Parts.Where(p => p.Role == PartRole.Lip && p.Key[..p.Key.LastIndexOf('.')] == part.Key))
            {
                // Lips are counted for all members of their part.
                int all = set.Parts.First(p => p.Key == part.Key).Count;
                yield return lip with { Count = lip.Count * part.Count / all };
            }
        }
    }
}
