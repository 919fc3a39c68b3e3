using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Setout.Core.Measures.Text;
using Setout.Shop.Documents;
using Setout.Shop.Texts;
using Setout.Store;

namespace Setout.Soak;

/// <summary>
/// Several windows that change the same pieces at once, over HTTP, against a real program that is killed on the way; another program appends facts beside it. Afterwards nothing that was acknowledged is missing.
/// </summary>
/// <param name="data">A data folder, with pieces in it.</param>
/// <param name="pieces">Their names.</param>
internal sealed partial class FourWindows(string data, ImmutableArray<string> pieces)
{
    /// <summary>How many windows there are.</summary>
    public const int Windows = 4;

    private readonly ConcurrentDictionary<string, string> _acknowledged = new();
    private readonly ConcurrentDictionary<string, string> _facts = new();
    // While it is started again, the one that comes.
    private Task<RealProgram> _program = Task.FromException<RealProgram>(new InvalidOperationException("It does not run yet."));
    private int _refused;

    /// <summary>Changes that were acknowledged.</summary>
    public int Acknowledged => _acknowledged.Count;

    /// <summary>Changes that were refused, because another window was first or there was nothing to undo.</summary>
    public int Refused => _refused;

    /// <summary>Facts that were acknowledged.</summary>
    public int Facts => _facts.Count;

    /// <summary>Runs.</summary>
    /// <param name="seed">What happens.</param>
    /// <param name="goesOn">Asked by each window before each change, with how many it has made.</param>
    /// <param name="isKilled">Whether the program is killed and started again in the middle.</param>
    public async Task RunAsync(int seed, Func<int, bool> goesOn, bool isKilled)
    {
        RealProgram program = await RealProgram.StartAsync(data);
        _program = Task.FromResult(program);
        try
        {
            var half = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            Task[] windows = [.. Enumerable.Range(0, Windows).Select(w => Task.Run(() => WindowAsync(w, new Random((seed * Windows) + w), goesOn, half)))];
            if (isKilled)
            {
                await Task.WhenAny(half.Task, Task.WhenAll(windows));
                var again = new TaskCompletionSource<RealProgram>(TaskCreationOptions.RunContinuationsAsynchronously);
                _program = again.Task;
                program.Dispose();
                try
                {
                    program = await RealProgram.StartAsync(data);
                    again.SetResult(program);
                }
                catch (Exception fault)
                {
                    again.SetException(fault);
                    throw;
                }
            }
            await Task.WhenAll(windows);
        }
        finally
        {
            program.Dispose();
        }
    }

    /// <summary>Looks at what is kept.</summary>
    /// <returns>What is wrong; none when all is well.</returns>
    public ImmutableArray<string> Missing()
    {
        var wrong = ImmutableArray.CreateBuilder<string>();
        (DataFolder? folder, _) = DataFolder.Open(data, TimeProvider.System);
        using (folder)
        {
            ShopDatabase store = folder!.Database;
            // A backup looks at the whole database and counts.
            folder.Backups.Make(BackupReason.Asked);
            var texts = new Dictionary<string, ImmutableArray<string>>();
            foreach (string piece in pieces)
            {
                Document document = store.Find(piece)!;
                ImmutableArray<HistoryLine> history = store.History(document.Id);
                texts[piece] = [.. history.Select(h => store.TextOf(document.Id, h.State.Number)!)];
                HashSet<long> seen = [];
                foreach (HistoryLine line in history)
                {
                    if (line.State.Parent is { } parent ? !seen.Contains(parent) : seen.Count > 0) wrong.Add($"{piece}: state {line.State.Number} has no parent");
                    seen.Add(line.State.Number);
                }
                if (history.Count(h => h.IsHead) != 1) wrong.Add($"{piece}: it points at {history.Count(h => h.IsHead)} states");
                for (int revision = 1; revision <= document.Revision; revision++) if (store.Find(document.Id, revision) is null) wrong.Add($"{piece}: revision {revision} is missing");
                HashSet<string> entries = [.. store.FactsOf(document.Id).Read().Entries.Select(e => e.Id)];
                wrong.AddRange(_facts.Where(f => f.Value == piece && !entries.Contains(f.Key)).Select(f => $"{piece}: the fact {f.Key} is missing"));
            }
            foreach ((string id, string mark) in _acknowledged)
            {
                if (store.Made(id) is not { } made) wrong.Add($"the change {id} is missing");
                else if (mark.Length > 0 && !texts[made.Documents[0].After.Name].Any(t => t.Contains(mark, StringComparison.Ordinal))) wrong.Add($"the text with '{mark}' is missing");
            }
        }
        return wrong.ToImmutable();
    }

    private async Task WindowAsync(int window, Random random, Func<int, bool> goesOn, TaskCompletionSource half)
    {
        for (int made = 0; goesOn(made); made++)
        {
            string piece = pieces[random.Next(pieces.Length)], id = $"w{window}-{made}";
            if (made == 8) half.TrySetResult();
            if (random.Next(6) == 0)
            {
                Fact(piece, id, made);
                continue;
            }
            (string text, string revision) = await AgainAsync(async program => Shown(await program.Client.GetStringAsync($"/piece/{piece}/text")));
            string word = random.Next(10) switch { < 5 => "text", < 7 => "undo", < 8 => "redo", < 9 => "save-point", _ => "edit" }, mark = word == "text" ? $"# mark {id} #" : "";
            var fields = new Dictionary<string, string>
            {
                ["change"] = id,
                ["revision"] = revision,
                ["back"] = $"/piece/{piece}",
                ["text"] = text.TrimEnd() + $"\n{mark}\n",
                ["point"] = $"point {id}",
                ["key"] = "C.width",
                ["choice"] = "width",
                ["field-size"] = $"{random.Next(30, 45)}",
            };
            // Where the answer is lost, the same form is sent again, as a browser would.
            HttpStatusCode status = await AgainAsync(async program =>
            {
                using HttpResponseMessage answer = await program.Client.PostAsync($"/piece/{piece}/{word}", new FormUrlEncodedContent(fields));
                return answer.StatusCode;
            });
            if (status == HttpStatusCode.Redirect) _acknowledged[id] = mark;
            else if (status is HttpStatusCode.Conflict or HttpStatusCode.UnprocessableEntity) Interlocked.Increment(ref _refused);
            else throw new SoakException($"{word} of {piece} was answered with {(int)status}.");
        }
    }

    // What another program does: through the store, beside the workbench that has it open. A length is at most 30 m, however long the soak.
    private void Fact(string piece, string id, int made)
    {
        var entry = new ReadingEntry(id, "2026-05-04T09:40:00Z", new("note." + id), [LengthText.Parse($"{(made % 1000) + 1}", LengthUnit.Inch).Value], "tape", "");
        int added = DataFolder.Share(data, TimeProvider.System, store => store.FactsOf(store.Find(piece)!.Id).Append(entry));
        if (added == 1) _facts[id] = piece;
    }

    private async Task<T> AgainAsync<T>(Func<RealProgram, Task<T>> ask)
    {
        RealProgram? asked = null;
        while (true)
        {
            RealProgram program = await _program;
            try
            {
                return await ask(program);
            }
            catch (Exception gone) when (program != asked && gone is HttpRequestException or IOException or ObjectDisposedException or TaskCanceledException)
            {
                // It was ended, and is started again: one asks the next once it answers.
                asked = program;
            }
        }
    }

    private static (string Text, string Revision) Shown(string page) =>
        (WebUtility.HtmlDecode(Area().Match(page).Groups[1].Value), Revision().Match(page).Groups[1].Value is { Length: > 0 } found ? found : 1.ToString(CultureInfo.InvariantCulture));

    [GeneratedRegex("<textarea[^>]*>(.*?)</textarea>", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex Area();

    [GeneratedRegex("name=\"revision\" value=\"([0-9]+)\"", RegexOptions.CultureInvariant)]
    private static partial Regex Revision();
}
