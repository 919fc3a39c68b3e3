// Over 200 lines: all that an edit may ask and do while it is at work, and how it comes out.
using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Finishes;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Shop.Rack;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>A text while an edit is at work on it. Lives as long as one edit.</summary>
internal sealed class EditDraft
{
    private readonly string _before;
    private readonly TextRead<Piece> _read;
    private readonly EditBench _bench;
    private readonly List<Finding> _notes = [];
    private readonly List<RefusedException> _slips = [];
    private readonly Lazy<SetPiece?> _set;
    private readonly HashSet<string> _used;
    private Draft _draft;

    public EditDraft(string text, YamlNode root, TextRead<Piece> read, EditBench bench)
    {
        (_before, _read, _bench, _draft) = (text, read, bench, new(text, root));
        _set = new(() => bench.Set ?? (_read.Value is { } piece && _read.IsSound ? PieceSetOut.Of(StockInHand.Of(piece, bench.Log), Grid, bench.Log.Facts()) : null));
        _used = new(FreshKeys.Taken(root, read.Value, bench), StringComparer.Ordinal);
    }

    /// <summary>The outermost map as it stands.</summary>
    public YamlMap Root => _draft.Root as YamlMap ?? throw Refused("edit.no-piece", "", "This is not a piece file.", "Begin it with 'setout: 1'.");

    /// <summary>The piece as it was read before; null where it has mistakes.</summary>
    public Piece? Piece => _read.Value;

    /// <summary>The shop.</summary>
    public Texts.Shop Shop => _bench.Shop;

    /// <summary>The piece as it was set out before; null where it could not be read.</summary>
    public SetPiece? Set => _set.Value;

    /// <summary>The unit of bare numbers.</summary>
    public LengthUnit Unit => Piece?.Unit ?? LengthUnit.Inch;

    /// <summary>What was done, for people; null for the words of the edit.</summary>
    public string? Name { get; set; }

    /// <summary>The key of what was made or changed.</summary>
    public string Chosen { get; set; } = "";

    /// <summary>The text as it stands.</summary>
    public string Text => _draft.Text;

    /// <summary>All things of the text as it stands.</summary>
    public IEnumerable<Thing> Things => Thing.In(_draft.Root);

    /// <summary>Does a splice.</summary>
    public void Do(Splice splice)
    {
        (Draft? next, Finding? finding) = _draft.Do(splice);
        _draft = next ?? throw new RefusedException(finding!);
    }

    /// <summary>What stands at a place; null for nothing.</summary>
    public YamlNode? At(TextPath path) => path.From(Root) is { } steps ? TextPath.At(Root, steps.AsSpan()) : null;

    /// <summary>A value for people, by what its owner is called.</summary>
    public string WordsOf(TextPath at) => at.Words(Things.FirstOrDefault(t => t.Key == at.Owner)?.Words);

    /// <summary>Something by its key.</summary>
    public Thing Find(string key)
    {
        // The name of a kind of drawer may also be the key of something.
        if (Things.Where(t => t.Key == key).OrderBy(t => t.Word == Thing.DrawerKind).FirstOrDefault() is { } thing) return thing;
        if (Piece?.Keys.ContainsKey(key) == true)
            throw Refused("edit.counted", key, $"{key} is one of several that are counted, not listed.", "Choose what they stand in and list them one by one first, or edit what they are counted by.");
        throw Refused("edit.no-such-key", key, $"There is nothing called '{TextContext.Shown(key)}' in this piece.", "Choose something that is there; it may have been taken out meanwhile.");
    }

    /// <summary>Something by its key, of some kinds.</summary>
    public Thing Find(string key, params ReadOnlySpan<string> words)
    {
        Thing thing = Find(key);
        return words.Contains(thing.Word) ? thing : throw Refused("edit.other-kind", key, $"{key} is {A(thing.Word)}.", $"Choose {string.Join(" or ", words.ToArray().Select(A))}.");
    }

    private static string A(string word) => $"{(word[0] is 'o' ? "an" : "a")} {word}";

    /// <summary>An opening, or a case that may itself be filled.</summary>
    public Thing FindOpening(string key) => Find(key, "opening", "case");

    /// <summary>What something stands in: the nearest thing around it; null for what stands by itself.</summary>
    public Thing? Around(Thing thing) => Things.LastOrDefault(t => t.Steps.Length < thing.Steps.Length && thing.Steps.AsSpan().StartsWith(t.Steps.AsSpan()));

    /// <summary>The frame or case something is in; itself for one of them.</summary>
    public Thing? StructureOf(Thing thing) => Things.FirstOrDefault(t => t.Word is "frame" or "case" && thing.Steps.AsSpan().StartsWith(t.Steps.AsSpan()));

    /// <summary>The bay of a frame something is in; itself for a bay; null in a case.</summary>
    public Thing? BayOf(Thing thing) => StructureOf(thing) is { Word: "frame" } frame
        ? Things.FirstOrDefault(t => t.Word == "opening" && t.Steps.Length == frame.Steps.Length + 2 && thing.Steps.AsSpan().StartsWith(t.Steps.AsSpan()))
        : null;

    /// <summary>Keys that are free, and taken from now on.</summary>
    /// <param name="stem">What they begin with.</param>
    /// <param name="count">How many.</param>
    /// <param name="mayBeBare">True where one alone may be the stem without a number.</param>
    public string[] Fresh(string stem, int count, bool mayBeBare = false) => FreshKeys.Next(_used, stem, count, mayBeBare);

    /// <summary>What the keys of things within another begin with: its own key where that ends in a letter, else a letter that is free.</summary>
    public string StemOf(string owner) => FreshKeys.Stem(_used, owner);

    /// <summary>A size as it was set out; null where it is not known.</summary>
    public ExactLength? Worked(string key, params ReadOnlySpan<string> whats)
    {
        foreach (string what in whats)
            if (Set is { } set && set.Worked.Values.ContainsKey(QuantityKey.Of(key, what))) return set.Worked[QuantityKey.Of(key, what)];
        return null;
    }

    /// <summary>A length that was typed.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="key">Of what it is about.</param>
    /// <param name="what">What it is to be, where not every length can be that; null for any.</param>
    public ExactLength Length(string text, string key, string? what = null)
    {
        ParseResult<ExactLength> read = what is null ? LengthText.Parse(text, Unit) : BelievedLength.Read(text, Unit, what);
        if (read.IsRead) return read.Value;
        throw Refused(read.Fault!.Code, key, read.Fault.Words, read.Fault.Remedy, text);
    }

    /// <summary>A length as it is written in this text: a bare figure where that is exact.</summary>
    public string Written(ExactLength length)
    {
        Figure figure = LengthFormat.For(Unit).Bare.Format(length);
        return figure.IsExact ? figure.ToString() : NamedLength.Exactly(length);
    }

    /// <summary>The grid of the piece, or of the shop.</summary>
    private Grid Grid => Piece?.Grid ?? (Unit == LengthUnit.Inch ? Shop.InchGrid : Shop.MetricGrid);

    /// <summary>The nearest length on the grid, one step at least.</summary>
    public ExactLength Rounded(ExactLength length) => ExactLength.Max(Grid.Step, length.RoundTo(Grid, Rounding.Nearest).Value);

    /// <summary>A usual figure in the unit of the text.</summary>
    public string Usual(string inches, string millimetres) => Unit == LengthUnit.Inch ? inches : millimetres;

    /// <summary>Something worth knowing about what was done.</summary>
    public void Note(string code, Severity severity, string key, string words, string remedy) => _notes.Add(new(code, severity, key, words, remedy));

    /// <summary>Why an edit cannot be done; to be thrown.</summary>
    /// <param name="code">Of the finding.</param>
    /// <param name="key">Of what it is about.</param>
    /// <param name="words">What was understood.</param>
    /// <param name="remedy">What to do.</param>
    /// <param name="typed">What was typed that it is about, word for word; empty where it is about nothing that stands alone.</param>
    public RefusedException Refused(string code, string key, string words, string remedy, string typed = "") =>
        new(new(code, Severity.Stop, key, words, remedy, Piece?.Keys.GetValueOrDefault(key) ?? default)) { Typed = typed };

    /// <summary>The same of an edit that goes on, so that what else is wrong with it comes out too: it is refused in the end.</summary>
    public void Slip(RefusedException refused) => _slips.Add(refused);

    /// <summary>The edit as it came out, held against what could be read before and against the log.</summary>
    public Edited Finish(string words)
    {
        string name = Name ?? words;
        if (_draft.Text == _before && _slips.Count == 0) return new(null, name, [new("edit.nothing", Severity.Stop, Chosen, "This changes nothing.", "Choose another figure or another word.")]);
        TextRead<Piece> after = PieceText.Read(_draft.Text, null, new(null) { IsTyped = true });
        bool isBroken = _read.IsSound && !after.IsSound;
        if (!isBroken && _read.Value is { } before && after.Value is { } now && Gone(before, now) is { IsDefaultOrEmpty: false } held) return new(null, name, held);
        RefusedException[] slips = [.. _slips, .. after.Value is { } finished && Unfinished(finished) is { } word ? new[] { word } : []];
        // The places are those of a text that nobody will see.
        if (isBroken || slips.Length > 0)
            return new(null, name, [.. slips.Select(s => s.Finding), .. isBroken ? after.Findings.Select(f => f with { Place = Place.None }) : []]) { Typed = [.. slips.Select(s => new TypedAt(s.Typed, "")), .. isBroken ? TypedWords.At(_draft.Text, after.Findings) : []] };
        return new(_draft.Text, name, [.. _notes]) { Chosen = Chosen };
    }

    // What a finish is newly said to go on must be there: a word that means nothing would leave it with nothing to go on. What stood in the text before is told there.
    private RefusedException? Unfinished(Piece now)
    {
        string[] before = [.. (Piece?.Finishes ?? []).SelectMany(f => f.On).Select(w => w.Text)];
        if (now.Finishes.SelectMany(f => f.On).Select(w => w.Text).FirstOrDefault(w => !before.Contains(w) && Set is { IsStopped: false } set && !FinishWork.IsKnown(set, w)) is not { } word) return null;
        const int most = 16;
        ImmutableArray<string> all = FinishWork.Nameable(Set!);
        return Refused("edit.finish-on", "", $"No part or material is '{TextContext.Shown(word)}'.",
            $"Name some of {string.Join(", ", all.Take(most))}{(all.Length > most ? ", and so on" : "")}, or the mark of a part; left empty it goes on all that no other finish names.", word);
    }

    // What is taken out may not be cut; what was read of it counts no more.
    private ImmutableArray<Finding> Gone(Piece before, Piece now)
    {
        var gone = before.Keys.Keys.Where(k => !now.Keys.ContainsKey(k)).ToHashSet(StringComparer.Ordinal);
        if (gone.Count == 0) return [];
        bool IsOf(string key) => gone.Contains(new QuantityKey(key.Split('#')[0]).Owner);
        MarkEntry[] marks = [.. _bench.Log.Standing.OfType<MarkEntry>().Where(m => m.Progress != Progress.Bought && m.Keys.Any(IsOf))];
        if (marks.Length > 0)
        {
            return [.. marks.Select(m => new Finding("edit.cut", Severity.Stop, m.Keys.First(IsOf), $"{string.Join(", ", m.Keys.Where(IsOf))} {(m.Keys.Count(IsOf) > 1 ? "are" : "is")} marked {m.Progress.ToString().ToLowerInvariant()}: it cannot be taken out.",
                $"If that was a slip, void that mark first, under {Hands.FactsPage}; else leave it in, or make a copy of the piece and change that."))];
        }
        foreach (ReadingEntry reading in _bench.Log.Standing.OfType<ReadingEntry>().Where(r => gone.Contains(r.Key.Owner)))
            Note("edit.reading-idle", Severity.Warn, reading.Key.Owner, $"What was read of {reading.Key} counts no more: {reading.Key.Owner} is not there.", $"Void that reading under {Hands.FactsPage}, or undo this.");
        return [];
    }
}
