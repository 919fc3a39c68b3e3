using System.Collections.Immutable;
using Setout.Core.Fit.Mending;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Plans;

/// <summary>A sample with facts added one after the other, as the commands add them.</summary>
internal sealed class AtTheBench
{
    public AtTheBench(string sample) => Source = Read(File.ReadAllText(Repository.PathOf($"samples/{sample}")));

    private AtTheBench(PieceSource source) => Source = source;

    public PieceSource Source { get; private set; }

    public SetPiece Set => Source.SetOut();

    public static AtTheBench OfText(string piece) => new(Read(piece));

    /// <summary>Records a reading; lengths as typed, apart by commas.</summary>
    public AtTheBench Record(string key, string values, string with = "", string spot = "") =>
        Add(new ReadingEntry(NextId, At, new(key), [.. values.Split(',').Select(v => Described.Of(v.Trim()))], with, spot));

    public AtTheBench Record(string key, ExactLength value, string with = "") => Add(new ReadingEntry(NextId, At, new(key), [value], with, ""));

    /// <summary>Marks what a word stands for.</summary>
    public AtTheBench Mark(Progress progress, string words, string from = "", bool again = false)
    {
        SetPiece set = Set;
        ImmutableArray<string> keys = [.. words.Split(' ').SelectMany(w => Marking.Parts(set, progress, w) is { Length: > 0 } parts ? parts : [w])];
        return Add(new MarkEntry(NextId, At, progress, keys, Marking.Figures(set, progress, keys, again)) { Chosen = Marking.Chosen(set, progress, keys), From = from });
    }

    public AtTheBench Void(string id) => Add(new VoidEntry(NextId, At, id));

    /// <summary>The id of the entry added last.</summary>
    public string LastId => Source.Log.Entries[^1].Id;

    public ExactLength this[string key] => Set.Worked[new QuantityKey(key)];

    public ImmutableArray<MendingAdvice> Advice => Remedies.For(Set, Source.Shop.Shims, Blanks.Of(Set, Source.Shop));

    private string NextId => $"e{Source.Log.Entries.Length}";

    private string At => $"2026-05-04T09:{Source.Log.Entries.Length:00}:00Z";

    private AtTheBench Add(LogEntry entry)
    {
        // As it would come back from the file.
        Assert.Null(LogText.Fault(entry));
        Source = Source with { Log = new(Source.Log.Entries.Add(entry)) };
        return this;
    }

    private static PieceSource Read(string piece)
    {
        (PieceSource? source, var findings) = PieceSource.Read(piece, null, File.ReadAllText(Repository.PathOf("samples/shop.yaml")));
        Assert.True(source is not null, string.Join("; ", findings.Select(f => f.Finding.Words)));
        return source;
    }
}
