using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Noting;
using Setout.Shop.Texts;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;
using Stage = Setout.Workbench.Shell.Stage;

namespace Setout.Workbench.Noting;

/// <summary>A batch of a stage.</summary>
/// <param name="Name">Which.</param>
/// <param name="Words">What is settled, due and held, each a few words.</param>
/// <param name="Waits">What it waits for; empty for nothing.</param>
/// <param name="Read">To type what it waits for; null where it waits for nothing.</param>
/// <param name="Mark">To mark what is due; null where nothing is.</param>
public sealed record BatchLine(string Name, ImmutableArray<string> Words, Phrase Waits, ReadForm? Read, MarkForm? Mark)
{
    /// <summary>What it waited for and was read, to be read again.</summary>
    public ImmutableArray<ReadAgain> Again { get; init; } = [];
}

/// <summary>A reading that stands, to be read again.</summary>
/// <param name="Words">What was read, how and when.</param>
/// <param name="Form">To type it anew.</param>
public sealed record ReadAgain(Phrase Words, ReadForm Form);

/// <summary>How a stage stands, at the head of its page.</summary>
/// <param name="Title">In a sentence.</param>
/// <param name="Batches">What is settled, due and held, by batch; empty where all is settled.</param>
/// <param name="Upsets">What is upset there.</param>
public sealed record StageStrip(string Title, ImmutableArray<BatchLine> Batches, ImmutableArray<UpsetView> Upsets)
{
    private static readonly ImmutableDictionary<string, (WorkStage Stage, string Progress, string Done)> s_stages = ImmutableDictionary.CreateRange<string, (WorkStage, string, string)>(
    [
        new("buy", (WorkStage.Buy, "bought", "bought")), new("break-down", (WorkStage.BreakDown, "cut", "cut")),
        new("assemble", (WorkStage.Assemble, "assembled", "assembled")), new("fit", (WorkStage.Fit, "fitted", "fitted")), new("finish", (WorkStage.Finish, "finished", "finished")),
    ]);

    /// <summary>The strip of a stage; null for a page that is none of those that are marked, and for a piece that is stopped.</summary>
    internal static StageStrip? Of(OpenPiece piece, string word)
    {
        if (piece.Bench is null || piece.Set.IsStopped || !s_stages.TryGetValue(word, out var stage)) return null;
        StageStand stand = StandOf(piece, stage.Stage);
        // Nothing is to be finished while nobody has said with what.
        if (stage.Stage == WorkStage.Finish && stand.Batches.IsEmpty) return null;
        string back = Links.Stage(piece.Name, word), all = $"{stand.Settled} of {stand.Batches.Sum(b => b.All)} {stage.Done}";
        string title = string.Join(", ", new[] { all, stand.Due > 0 ? $"{stand.Due} due" : "", stand.Held > 0 ? $"{stand.Held} held until {(stage.Stage == WorkStage.Finish ? "it is cut or built" : "something is read")}" : "", stand.Upset.Length > 0 ? $"{stand.Upset.Length} upset" : "" }.Where(w => w.Length > 0));
        return new(title, [.. stand.Batches.Where(b => b.Settled < b.All).Select((b, i) => Line(piece, b, stage.Stage, stage.Progress, back, i))], stand.Upset.Length > 0 ? UpsetView.Of(piece, back) : []);
    }

    // Wood that is marked bought, and of which the layouts ask for more, is due again.
    private static StageStand StandOf(OpenPiece piece, WorkStage stage)
    {
        StageStand stand = piece.Bench!.Stand[stage];
        if (stage != WorkStage.Buy || piece.Plan is not { } plan) return stand;
        int again = plan.Buying.Where(l => l.More.Length > 0).SelectMany(l => l.Of).Where(piece.Set.Facts.Bought.Contains).Distinct().Count();
        return again == 0 ? stand : stand with { Batches = [.. stand.Batches.Select(b => b.Name == BenchStand.Wood ? b with { Settled = b.Settled - again, Due = b.Due + again } : b)] };
    }

    /// <summary>A stage of the row with how it stands.</summary>
    internal static Stage Marked(Stage stage, OpenPiece piece, string word)
    {
        if (piece.Bench is null || piece.Set.IsStopped || !s_stages.TryGetValue(word, out var known)) return stage;
        StageStand stand = StandOf(piece, known.Stage);
        bool isDone = stand.Batches.Length > 0 && stand.Batches.All(b => b.Settled == b.All);
        return stage with { Stand = isDone ? "done" : stand.Due > 0 ? $"{stand.Due} due" : stand.Held > 0 ? $"{stand.Held} held" : "", Upset = stand.Upset.Length };
    }

    private static BatchLine Line(OpenPiece piece, WorkBatch batch, WorkStage stage, string progress, string back, int index)
    {
        string[] words = [batch.Settled > 0 ? $"{batch.Settled} {progress}" : "", batch.Due > 0 ? $"{batch.Due} due" : "", batch.Held > 0 ? $"{batch.Held} held" : "",
            batch.All - batch.Settled - batch.Due - batch.Held is > 0 and int later ? $"{later} not {Before(stage)} yet" : ""];
        ReadForm? read = batch.Until is { } until && stage == WorkStage.BreakDown ? ReadForm.Of(piece, [until], back, $"held-{index}", isShort: true) : null;
        Phrase waits = read is null ? Phrase.Empty : Figures.Phrase($"They wait for a reading of {FactSentences.NameOf(piece.Set, batch.Until!.Value)}.");
        return new(batch.Name, [.. words.Where(w => w.Length > 0)], waits, read, batch.Keys.Length > 0 ? Mark(piece, batch, stage, progress, back, index) : null)
        {
            Again = [.. batch.Read.Select((k, i) => Again(piece, k, back, $"again-{index}-{i}")).OfType<ReadAgain>()],
        };
    }

    private static ReadAgain? Again(OpenPiece piece, QuantityKey key, string back, string id)
    {
        if (piece.Source.Log.Standing.OfType<ReadingEntry>().LastOrDefault(r => r.Key == key) is not { } last || ReadForm.Of(piece, [key], back, id, isShort: true, with: last.With.Length > 0 ? last.With : null) is not { } form) return null;
        Worked worked = piece.Set.Worked.Values[key];
        int spots = worked.Pin!.Values.Length;
        string figure = LengthFormat.For(piece.Set.Piece.Shown).Text(worked.Value), of = spots > 1 ? $", of {spots} spots" : "", with = last.With.Length > 0 ? $", {last.With}" : "";
        return new(Figures.Phrase($"{char.ToUpperInvariant(worked.Quantity.Name[0])}{worked.Quantity.Name[1..]} reads {figure}{of}{with}, {When.Of(last.At, TimeProvider.System)}."), form with { IsRead = true });
    }

    private static string Before(WorkStage stage) => stage switch { WorkStage.Assemble => "cut", WorkStage.Fit => "assembled", _ => "there" };

    private static MarkForm Mark(OpenPiece piece, WorkBatch batch, WorkStage stage, string progress, string back, int index)
    {
        bool isItem = stage == WorkStage.Buy;
        string Name(string key) => isItem ? key : $"{NameOf(piece.Set, key)}";
        ImmutableArray<Markable> each = [.. batch.Keys.Select(k => new Markable(k, Name(k)))];
        // Names of things bought have blanks: they are marked one by one.
        ImmutableArray<Markable> what = isItem || each.Length == 1 ? each : [new(string.Join(' ', batch.Keys), $"all {batch.Due} of it"), .. Wholes(piece.Set, batch.Keys), .. each];
        return new(FormHead.Of(piece, "mark", back), $"due-{index}", $"Mark {progress}", progress, what, isItem, [], false, "") { About = batch.Name, Chosen = NextOfItsSort.In(what, piece.Source.Log, progress) };
    }

    // A drawer, a door, a frame is cut and put together as one thing.
    private static IEnumerable<Markable> Wholes(SetPiece set, ImmutableArray<string> keys)
    {
        (string Key, string Owner)[] all = [.. keys.Select(k => (k, new QuantityKey(k.Split('#')[0]).Owner))];
        var owners = all.GroupBy(k => k.Owner, k => k.Key, StringComparer.Ordinal).ToArray();
        if (owners.Length == 1) yield break;
        foreach (var owner in owners.Where(o => o.Count() > 1))
        {
            bool isDrawer = set.Parts.Any(p => p.Role is PartRole.BoxSide or PartRole.BoxEnd && new QuantityKey(p.Key).Owner == owner.Key);
            yield return new(string.Join(' ', owner), $"all of {(isDrawer ? "drawer " : "")}{owner.Key}, {string.Join(", ", owner.Select(k => set.Parts.FirstOrDefault(p => p.Key == k.Split('#')[0])?.Mark ?? k).Distinct())}");
        }
    }

    private static string NameOf(SetPiece set, string key)
    {
        string[] halves = key.Split('#');
        return set.Parts.FirstOrDefault(p => p.Key == halves[0]) is { } part ? $"{part.Mark}, {part.Name}{(halves.Length == 2 ? $" #{halves[1]}" : part.Count > 1 ? $" ({part.Count})" : "")}" : key;
    }
}
