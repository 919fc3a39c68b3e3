using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.SettingOut;

/// <summary>Short ways to write entries of a log and set a sample out with them, in the shop of the samples.</summary>
internal static class BenchLog
{
    public static readonly string[] Samples = [Sample.Bench, Sample.Chest, Sample.Cabinet, "cedar-chest.yaml", "amateur-workbench.yaml"];

    public static PieceSource Source(string text)
    {
        (PieceSource? source, var findings) = PieceSource.Read(text, null, Sample.Text("shop.yaml"));
        Assert.True(source is not null, string.Join("; ", findings.Select(f => f.Finding.Words)));
        return source;
    }

    /// <summary>Entries get their ids from their places: e0, e1 and so on.</summary>
    public static SetPiece SetOut(this PieceSource source, params IEnumerable<LogEntry> entries) =>
        (source with { Log = new([.. entries.Select((e, i) => e with { Id = $"e{i}" })]) }).SetOut();

    public static SetPiece After(string sample, params IEnumerable<LogEntry> entries) => Source(Sample.Text(sample)).SetOut(entries);

    /// <summary>A reading such as <c>19 9/16, 19 17/32</c>; bare numbers are inches.</summary>
    public static ReadingEntry Read(string key, string values, string with = "", string spot = "") =>
        new("", "2026-05-04T09:40:00Z", new(key), [.. values.Split(',').Select(v => LengthText.Parse(v.Trim(), LengthUnit.Inch).Value)], with, spot);

    public static VoidEntry Void(int entry) => new("", "2026-05-04T09:50:00Z", $"e{entry}");

    /// <summary>Parts cut to figures, such as <c>("L3.end.length", "17 1/2")</c>.</summary>
    public static MarkEntry Cut(string part, params (string Size, string Figure)[] figures) =>
        new("", "2026-05-04T09:45:00Z", Progress.Cut, [part], figures.ToImmutableDictionary(f => new Core.Workings.QuantityKey(f.Size), f => Described.Of(f.Figure)));
}
