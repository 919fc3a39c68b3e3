using System.Collections.Immutable;
using Setout.Core.Fit.Mending;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Shop.Noting;

/// <summary>Makes an entry that lets something stand. Pure.</summary>
public static class NotedAllow
{
    /// <summary>The entry, or why it is none: there is no such finding, it stops the plan, no reason is given.</summary>
    /// <param name="set">The piece as it stands.</param>
    /// <param name="findings">All that is found, layouts included.</param>
    /// <param name="code">The code of the finding; for something upset that of <see cref="LettingStand.CodeOf"/>.</param>
    /// <param name="key">What it is about; empty for the whole piece.</param>
    /// <param name="because">The reason: 1 to 500 letters.</param>
    /// <param name="id">The id of the entry.</param>
    /// <param name="at">Its time.</param>
    public static Noted<AllowEntry> Of(SetPiece set, IEnumerable<Finding> findings, string code, string key, string because, string id, string at)
    {
        if (string.IsNullOrWhiteSpace(because)) return Noted<AllowEntry>.Refuse(new("note.because", Severity.Stop, "", "There is no reason.", "Say why it may stand; whoever reads it later will ask.") { Field = "because" });
        AllowEntry? entry = code.StartsWith("upset.", StringComparison.Ordinal) ? Upset(set, code, key, because, id, at) : null;
        if (entry is null)
        {
            Finding[] all = [.. findings];
            Finding[] same = [.. all.Where(f => f.Code == code && f.Key == key)];
            if (same.FirstOrDefault(f => f.Severity == Severity.Stop) is { } stops) return Noted<AllowEntry>.Refuse("note.stops", $"{stops.Code} stops the plan, and is not let stand: {stops.Words}", stops.Remedy, stops.Key);
            if (same.Length == 0) return Noted<AllowEntry>.Refuse("note.finding", $"Nothing is found now under the code '{TextContext.Shown(code)}'{(key.Length > 0 ? $" about '{TextContext.Shown(key)}'" : "")}.", Near(set, all, code));
            entry = new(id, at, code, key, because) { Said = LettingStand.Kept(same[0].Words) };
        }
        return LogText.Fault(entry) is { } fault ? Noted<AllowEntry>.Refuse(fault) : new(entry, null);
    }

    private static AllowEntry? Upset(SetPiece set, string code, string key, string because, string id, string at) =>
        Remedies.UpsetsOf(set).FirstOrDefault(u => LettingStand.CodeOf(u) == code && u.Key.Text == key) is { } upset
            ? new(id, at, code, key, because) { Said = LettingStand.Kept(upset.Words), Off = LettingStand.OffOf(upset) } : null;

    private static string Near(SetPiece set, Finding[] all, string code)
    {
        string[] keys = [.. all.Where(f => f.Code == code).Select(f => f.Key).Concat(Remedies.UpsetsOf(set).Where(u => LettingStand.CodeOf(u) == code).Select(u => u.Key.Text)).Where(k => k.Length > 0).Distinct().Order(StringComparer.Ordinal)];
        if (keys.Length > 0) return $"It is found about {string.Join(", ", keys.Take(8))}{(keys.Length > 8 ? " and others" : "")}.";
        return NearestWord.Of(code, all.Select(f => f.Code)) is { } guess ? $"Did you mean '{guess}'?" : "'setout check FILE' lists what is found.";
    }
}
