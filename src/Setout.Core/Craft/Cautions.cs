using System.Collections.Immutable;

namespace Setout.Core.Craft;

/// <summary>A short caution for the step it belongs to. Never a safety programme: local codes and licensed practice come first.</summary>
/// <param name="Key">The step it belongs to.</param>
/// <param name="Words">What to mind.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record Caution(string Key, string Words, string Source);

/// <summary>The usual cautions, in our own words.</summary>
public static class Cautions
{
    /// <summary>Said wherever cautions stand.</summary>
    public const string Deference = "Local codes and licensed practice take precedence, as do the manual of the machine and the label on the can.";

    private const string Habit = "common practice, no source";

    /// <summary>All of them.</summary>
    public static ImmutableArray<Caution> All { get; } =
    [
        new("saw", "Hood, riving knife or spreader, and push stick in place; stand out of the line of the cut; let the blade stop before you reach for anything.", "29 CFR 1910.213 (c), wording from memory; machine manuals"),
        new("crosscut", "Cut against the fence only where the edge on it is longer than the distance from fence to blade, and never a board to its length; for all else a sled or a guide, with a stop that the work has left before it meets the blade.", "a toolbox-talk page and a machine manual"),
        new("sheet", "Support the whole sheet before and behind the blade; break an awkward one down with a guided saw first.", Habit),
        new("narrow", "A narrow strip goes past the blade under a carrier that holds it down to the end, never under fingers or a push stick alone.", Habit),
        new("rip", "Rip only a board that lies flat with a straight edge on the fence: a bowed or twisted one closes on the blade and is thrown back. Riving knife in; a push stick brings the end past, a carrier where the strip is narrow; for ripping, the saw's manual, local codes and licensed practice come first.", "29 CFR 1910.213 (c) on kickback, from memory; common practice"),
        new("fence", "The edge on the fence is longer than the distance from fence to blade, or the work goes to another saw; a push stick brings the end past, a carrier a narrow strip, two push blocks a short piece; nobody stands behind the blade, and nothing that came off is reached for while it turns.", "29 CFR 1910.213 (c) on kickback, from memory; machine manuals"),
        new("sled", "Both hands on the sled and out of the blade's path; the stop moves with the sled and never stands on the saw's fence; clamp down what is too short to hold.", Habit),
        new("guide", "Both pieces lie fully supported, so that neither drops nor closes on the blade; blade a tooth deeper than the wood; both hands on the saw, cable out of the way; let it stop before you lift it.", "29 CFR 1910.243 (a) on guards of portable saws, from memory; common practice"),
        new("board saw", "Board firm against the fence and flat on its rest; full speed before the cut, and let the blade stop before it comes up; hands well clear, and clamp what is short.", "29 CFR 1910.213 (h), from memory; common practice"),
        new("lift", "Two people, or a carrier: the NIOSH lifting guide begins at 51 lb (23 kg) under ideal conditions and only goes down.", "NIOSH lifting equation"),
        new("dust", "Collect dust at the saw and wear a fitted respirator for sanding and MDF. Wood dust is a carcinogen (IARC group 1).", "IARC Monographs vol. 62 and 100C; OSHA wood dust pages"),
        new("ears", "Saws and routers commonly pass 85 dBA: muffs or plugs, and eye protection.", "NIOSH noise page; 29 CFR 1910.133 from memory"),
        new("panels", "Buy labelled panels and air the shop: MDF, particleboard and hardwood plywood give off formaldehyde.", "EPA TSCA Title VI (40 CFR 770)"),
        new("tip", "Anchor a drawer bank to the wall, or keep it from tipping: several loaded drawers open at once can pull it over.", "ASTM F2057-23 names the hazard for clothing storage; statics"),
        new("hang", "Fixings into studs or solid masonry, sized for the load with what it will hold; which fixing suits which wall is for local codes and licensed practice.", Habit),
        new("plane", "Clamp the work, keep the iron sharp and both hands on the plane; with a power plane, wait until it has stopped before you set it down.", Habit),
        new("screws", "Drill pilots so that panels do not split, and clamp before you drive: a driver that slips finds the hand.", Habit),
        new("cement", "Solvent contact cement gives off heavy vapour that can flash back to a far flame: a cross draught, no pilot light, no heater, no smoking, nothing that sparks until it has gone; gloves, a vapour cartridge and no mere dust mask; close the can.", "16 CFR 1500.133"),
        new("rags", "Rags, pads and paper wet with oil or an oil-based finish warm up by themselves and can burst into flame within hours where they lie in a heap: spread each flat outdoors or hang it alone until it is stiff, or sink it in water in a metal can with a lid. Take every oil-based finish for one that does. Local waste rules say where it goes then.", "a university workshop page and trade articles that point to NFPA advice; opinions differ on varnish and pure tung oil"),
        new("solvent", "Fumes of solvent are heavy, catch fire and can flash back from a far flame: open a cross draught, put out pilot lights and heaters, no smoking, nothing that sparks until they are gone; close the can. A dust mask does not hold them: the cartridge and the gloves that the safety data sheet names.", "16 CFR 1500.133 on contact adhesives lists these points; the label on the can for the finish in hand"),
        new("sanding", "Sanding between coats makes fine dust of wood and finish: fitted respirator, collect it or wipe it up, never blow it about; let the coat dry through first, and keep it from flames.", "OSHA wood dust pages; NFPA 664 by way of trade reports on fine dust that burns; common practice"),
        new("router", "Clamp the work, feed against the turn of the bit, both hands on the router, let it stop before you set it down; never a pass deeper than bit and machine take with ease.", Habit),
        new("cut-out", "Clamp the work and know what lies under it; hold up what falls out, so that it neither drops nor closes on the blade. The saw starts in a drilled hole, its foot flat, its cable out of the way; let it stop before you lift it. Then the router: against the turn of the bit, both hands on it, never a pass deeper than bit and machine take with ease. Eye and ear protection.", Habit),
        new("drill", "Clamp the work, or hold it against a stop, so that the bit cannot spin it; hands, sleeves and hair clear of the bit, no gloves, eye protection. A backing board under it where the bit comes through, or the far face breaks out; a stop on the bit where it must not. Let it stop before you clear chips. What the makers of drill, bit and fitting say comes first.", "29 CFR 1910.133 on eyes, from memory; the rest common practice, no source"),
    ];

    // What a caution comes down to, for those who have read it whole.
    private static readonly ImmutableDictionary<string, string> s_gists = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["narrow"] = "Carrier to the end",
        ["rip"] = "Only a board that lies flat",
        ["fence"] = "Nobody behind the blade; reach for nothing while it turns",
        ["sled"] = "Both hands on the sled, out of the blade's path",
        ["guide"] = "Both pieces supported; let the saw stop before you lift it",
        ["board saw"] = "Board firm at the fence; hands well clear",
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>A caution in few words, without a full stop, for where it stands again; of one without them, all its words.</summary>
    public static string GistOf(string key) => s_gists.TryGetValue(key, out string? gist) ? gist : Of(key).Words.TrimEnd('.');

    /// <summary>The caution of a step.</summary>
    /// <exception cref="KeyNotFoundException">There is none: a fault in the code.</exception>
    public static Caution Of(string key) => All.FirstOrDefault(c => c.Key == key) ?? throw new KeyNotFoundException($"No caution '{key}'.");
}
