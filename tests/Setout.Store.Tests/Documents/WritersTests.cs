using System.Collections.Concurrent;
using CsCheck;
using Setout.Shop.Documents;
using Setout.Testing;

namespace Setout.Store.Tests.Documents;

/// <summary>Random edits, undoings and redoings, by one and by four at once, compared with a simple model.</summary>
public sealed class WritersTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("setout-store-").FullName;
    private int _stores;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string NewStore() => Path.Combine(_folder, $"setout{Interlocked.Increment(ref _stores)}.db");

    private enum Kind { Edit, Undo, Redo }

    private sealed record Step(Kind Kind, int Document, int At, string Text);

    // Mostly small changes of a text of some lines; now and then letters of two signs beside one another that begin alike.
    private static readonly Gen<string> s_piece = Gen.OneOf([Gen.Const(""), Gen.Const("a"), Gen.Const("width: 23 1/4\n"), Gen.Const("# note\n"), Gen.Const("\U0001FAB5"), Gen.Const("\U0001FAB6"), Gen.Const("é"), Gen.Const("\r\n"), Gen.Const("- {key: L, open}\n")]);

    private static readonly Gen<Step> s_step = Gen.Select(Gen.Int[0, 9], Gen.Int[0, 1], Gen.Int[0, 200], s_piece)
        .Select((kind, document, at, text) => new Step(kind < 5 ? Kind.Edit : kind < 8 ? Kind.Undo : Kind.Redo, document, at, text));

    [Fact]
    public void Steps_OfOneWriter_DoWhatTheModelDoes() => s_step.Array[1, 90].Holds(steps =>
    {
        using var store = ShopDatabase.Open(NewStore());
        Document[] seen = [store.New("a", Begin), store.New("b", Begin)];
        TreeModel[] models = [new(Begin), new(Begin)];
        foreach (Step step in steps)
        {
            (Document now, TreeModel model) = (seen[step.Document], models[step.Document]);
            ChangeAnswer answer = store.Try(ChangeOf(step, now));
            if (step.Kind == Kind.Undo && !model.CanUndo) Changes.Refused("document.nothing-to-undo", answer);
            else if (step.Kind == Kind.Redo && !model.CanRedo) Changes.Refused("document.nothing-to-redo", answer);
            else
            {
                seen[step.Document] = Assert.Single(Assert.IsType<ChangeTaken>(answer).Documents);
                Replay(model, step.Kind, TextOf(step, now));
            }
            Same(model, store.Find(now.Id)!);
        }
        for (int i = 0; i < 2; i++) Assert.Equal(models[i].Texts, store.History(seen[i].Id).Select(h => store.TextOf(seen[i].Id, h.State.Number)));
    }, iter: 40, threads: 1);

    [Fact]
    public void Steps_OfFourWritersAtOnce_AreThoseOfOneOrder() => s_step.Array[12].Array[4].Holds(writers =>
    {
        string path = NewStore();
        using var store = ShopDatabase.Open(path);
        Document[] first = [store.New("a", Begin), store.New("b", Begin)];
        // What was taken, by document and revision; who is refused looks again and tries once more on what stands.
        var taken = new ConcurrentDictionary<(DocumentId, int), (Kind Kind, string Text, Document Answer)>();
        using var start = new Barrier(writers.Length);
        void Write(Step[] steps)
        {
            using var own = ShopDatabase.Open(path);
            Document[] seen = [.. first];
            start.SignalAndWait();
            foreach (Step step in steps)
            {
                for (int tries = 0; tries < 3; tries++)
                {
                    Document on = seen[step.Document];
                    Change change = Change.Of(Changes.NewId(), Changes.At, ChangeOf(step, on));
                    ChangeAnswer answer = own.Make(change);
                    if (answer is ChangeTaken { Documents: [var made] })
                    {
                        // Unless it changed nothing, nobody else has this revision.
                        if (made.Revision != on.Revision) Assert.True(taken.TryAdd((made.Id, made.Revision), (step.Kind, TextOf(step, on), made)));
                        // The answer was lost, and others may have gone on.
                        Assert.Equal(Changes.Words(made), Changes.Words(Assert.Single(Assert.IsType<ChangeTaken>(own.Make(change)).Documents)));
                        seen[step.Document] = made;
                        break;
                    }
                    ChangeRefused refused = Assert.IsType<ChangeRefused>(answer);
                    seen[step.Document] = refused.Theirs!;
                    if (!refused.IsConflict) break;
                    Assert.True(refused.Theirs!.Revision > on.Revision);
                }
            }
        }
        Task.WaitAll([.. writers.Select(steps => Task.Factory.StartNew(() => Write(steps), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default))]);
        foreach (Document begun in first)
        {
            Document last = store.Find(begun.Id)!;
            Assert.Equal(Enumerable.Range(2, last.Revision - 1), taken.Keys.Where(k => k.Item1 == begun.Id).Select(k => k.Item2).Order());
            var model = new TreeModel(Begin);
            for (int revision = 2; revision <= last.Revision; revision++)
            {
                (Kind kind, string text, Document answer) = taken[(begun.Id, revision)];
                Assert.True(kind switch { Kind.Undo => model.CanUndo, Kind.Redo => model.CanRedo, _ => true });
                Replay(model, kind, text);
                Same(model, answer);
                Assert.Equal(Changes.Words(answer), Changes.Words(store.Find(begun.Id, revision)!));
            }
            Same(model, last);
            Assert.Equal(model.Count, store.History(begun.Id).Length);
        }
        Assert.Null(store.With(Health.Fault));
    }, iter: 12, threads: 1);

    private const string Begin = "setout: 1\nname: chest\nwidth: 30\n# \U0001FAB5\n";

    private static DocumentChange ChangeOf(Step step, Document on) => step.Kind switch
    {
        Kind.Undo => new UndoStep(on.Id, on.Revision),
        Kind.Redo => new RedoStep(on.Id, on.Revision),
        _ => new EditText(on.Id, on.Revision, "edit", TextOf(step, on)),
    };

    // Puts something in, or something in the place of something, never between the two signs of a letter.
    private static string TextOf(Step step, Document on)
    {
        if (step.Kind != Kind.Edit) return "";
        int at = Math.Min(step.At % 50, on.Text.Length), end = Math.Min(at + (step.At / 50), on.Text.Length);
        if (at > 0 && at < on.Text.Length && char.IsLowSurrogate(on.Text[at])) at--;
        if (end < on.Text.Length && char.IsLowSurrogate(on.Text[end])) end++;
        return on.Text[..at] + step.Text + on.Text[end..];
    }

    private static void Replay(TreeModel model, Kind kind, string text)
    {
        if (kind == Kind.Undo) model.Undo();
        else if (kind == Kind.Redo) model.Redo();
        else model.Edit(text);
    }

    private static void Same(TreeModel model, Document document) =>
        Assert.Equal((model.Text, model.CanUndo, model.CanRedo), (document.Text, document.Undo is not null, document.Redo is not null));
}
