using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Testing;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>The samples that come with the program, set out in their shop, as they are or changed.</summary>
internal static class Sample
{
    public const string Bench = "luthiers-bench.yaml", Chest = "plan-chest.yaml", Cabinet = "jar-cabinet.yaml";

    public static string Text(string name) => File.ReadAllText(Repository.PathOf($"samples/{name}"));

    /// <summary>Sets a text out with the readings of a log written by hand, such as <c>L.width: 19 9/16 in, 19 17/32 in</c>.</summary>
    public static SetPiece SetOut(string text, params string[] readings)
    {
        string? log = readings.Length == 0 ? null : "setout-log: 1\nentries:\n" + string.Concat(readings.Select((r, i) =>
            $"  - {{id: e{i}, at: \"2026-05-04T09:40:00Z\", read: {r[..r.IndexOf(':', StringComparison.Ordinal)]}, values: [{r[(r.IndexOf(':', StringComparison.Ordinal) + 1)..]}]}}\n"));
        (PieceSource? source, var findings) = PieceSource.Read(text, log, Text("shop.yaml"));
        Assert.True(source is not null, string.Join("; ", findings.Select(f => f.Finding.Words)));
        return source.SetOut();
    }

    public static SetPiece Of(string name, params string[] readings) => SetOut(Text(name), readings);

    /// <summary>A sample with one passage of its text changed.</summary>
    public static string Changed(string name, string from, string to)
    {
        string text = Text(name);
        Assert.Contains(from, text, StringComparison.Ordinal);
        return text.Replace(from, to, StringComparison.Ordinal);
    }

    public static ExactLength Value(this SetPiece set, string key) => set.Worked[new QuantityKey(key)];

    public static void AssertValues(SetPiece set, params (string Key, string Length)[] expected) => Assert.All(expected, e =>
        Assert.True(set.Value(e.Key) == Described.Of(e.Length), $"{e.Key} is {set.Value(e.Key).Inches} in = {set.Value(e.Key)}, expected {e.Length}"));

    /// <summary>What moved between two settings out, by how much; new and lost quantities are told apart by their absence.</summary>
    public static Dictionary<string, ExactLength> Moved(SetPiece before, SetPiece after)
    {
        Assert.Equal(before.Worked.Order, after.Worked.Order);
        return before.Worked.Order.Where(k => before.Worked[k] != after.Worked[k]).ToDictionary(k => k.Text, k => after.Worked[k] - before.Worked[k]);
    }
}
