using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>
/// Edits a text by splicing at the places where the parser found things, so that comments, blank lines and the order of everything else survive. What comes out
/// has been read again and held against the tree it should have: nothing but what the splice names differs.
/// </summary>
public static class TextSplice
{
    /// <summary>Sets a word or a figure, or adds its key behind the first of its map.</summary>
    /// <param name="text">A piece file or a shop file that can be read as YAML.</param>
    /// <param name="path">Which value.</param>
    /// <param name="value">On one line, not empty, as a reader would see it: quotes are added where they are needed.</param>
    public static TextRead<string> Set(string text, TextPath path, string value) =>
        YamlTree.Read(text) is { IsSound: true, Value: { } root } && path.From(root) is { } steps && TextPath.At(root, steps.AsSpan()) is { } old and not YamlScalar
            ? new(null, [new("splice.no-room", Severity.Stop, "", $"{TextContext.Shown(path.ToString())} cannot be set here: it is a list or a map.", "Set what stands in it, or take it out first.", old.Place)])
            : Apply(text, Splice.Set(path, value));

    /// <summary>Does one splice after the other. The new text, or null with the finding that says why not.</summary>
    /// <param name="text">A piece file or a shop file that can be read as YAML.</param>
    /// <param name="splices">In order; each goes by what the one before has left.</param>
    public static TextRead<string> Apply(string text, params IEnumerable<Splice> splices)
    {
        TextRead<YamlNode> read = YamlTree.Read(text);
        if (read.Value is null || !read.IsSound) return new(null, read.Findings);
        var draft = new Draft(text, read.Value);
        foreach (Splice splice in splices)
        {
            (Draft? next, Finding? finding) = draft.Do(splice);
            if (next is null) return new(null, [finding!]);
            draft = next;
        }
        return new(draft.Text, []);
    }
}

/// <summary>A text with its tree.</summary>
internal sealed record Draft(string Text, YamlNode Root)
{
    /// <summary>The text with a splice done; or why it cannot be.</summary>
    public (Draft? Next, Finding? Finding) Do(Splice splice)
    {
        bool isOfValue = splice is SetValue or Removal;
        if (isOfValue && splice.At.Steps.IsEmpty) return Refuse("splice.no-such-place", default, "No key is named.", "Name one.");
        if ((splice is SetValue { Value: var set } && Fault(set) is { } fault) || (splice is Addition { Value: var item } && (fault = Fault(item)) is not null)) return (null, fault);
        if (splice.At.From(Root) is not { } steps || Expected.Of(Root, steps.AsSpan(), splice) is not { } expected)
            return Refuse("splice.no-such-place", Root.Place, $"There is no {TextContext.Shown(splice.At.Words())} here.", "Look at what is said of it now; it may have been taken out meanwhile.");
        try
        {
            string spliced = TextLines.EndedAs(Text, Done(steps, splice));
            if (YamlTree.Read(spliced) is { IsSound: true, Value: { } changed } && Expected.IsSame(expected, changed)) return (new Draft(spliced, changed).Shortened(steps, Text), null);
        }
        catch (NoRoomException)
        {
            // Said below.
        }
        return Refuse("splice.no-room", TextPath.At(Root, steps.AsSpan())?.Place ?? Root.Place, $"{Fillings.Capital(TextContext.Shown(splice.At.Words()))} cannot be changed here without changing something else.",
            "Edit the text by hand: it is written here in a way of its own.");
    }

    private string Done(ImmutableArray<PathStep> steps, Splice splice)
    {
        string text = TextLines.Ended(Text);
        YamlNode? node = TextPath.At(Root, steps.AsSpan());
        if (splice is Addition add)
        {
            if (node is YamlList { IsFlow: true } or YamlMap { IsFlow: true }) return BraceSplice.Insert(Text, node, add.Index, Written.OnOneLine(add.Value));
            if (node is YamlList list) return LineSplice.Add(text, list, add.Index, add.Value);
            return Value(text, steps, Written.List(add.Value), set: null);
        }
        if (splice is Moving move)
        {
            var list = (YamlList)node!;
            return list.IsFlow ? BraceSplice.Move(Text, list, move.From, move.To) : LineSplice.Move(text, list, move.From, move.To);
        }
        if (splice is SetValue set) return Value(node is YamlScalar ? Text : text, steps, set.Value, set);
        YamlNode parent = TextPath.At(Root, steps.AsSpan()[..^1])!;
        int index = IndexOf(parent, steps[^1]);
        return parent switch
        {
            YamlMap { IsFlow: false } map => LineSplice.TakeOut(text, map, index),
            YamlList { IsFlow: false } list => LineSplice.TakeOut(text, list, index),
            _ => BraceSplice.TakeOut(Text, parent, index),
        };
    }

    private string Value(string text, ImmutableArray<PathStep> steps, YamlNode value, SetValue? set)
    {
        YamlNode parent = TextPath.At(Root, steps.AsSpan()[..^1])!;
        int index = IndexOf(parent, steps[^1]);
        if (parent is YamlMap map && index < 0)
        {
            string key = steps[^1].Key!;
            int behind = set!.Behind(map);
            if (map.IsFlow) return BraceSplice.Insert(Text, map, behind + 1, $"{Written.Scalar(Written.Word(key))}: {Written.OnOneLine(value)}");
            return map.Entries.IsEmpty ? throw new NoRoomException() : LineSplice.Insert(TextLines.Ended(Text), map, behind, key, value);
        }
        YamlNode old = TextPath.At(Root, steps.AsSpan())!;
        return parent switch
        {
            // What stays on one line is the same in lines and in braces.
            _ when value is YamlScalar && old is YamlScalar { Raw.IsEmpty: false } => string.Concat(text.AsSpan(0, old.Start), Written.OnOneLine(value), text.AsSpan(old.End)),
            YamlMap { IsFlow: false } entries => LineSplice.Replace(text, entries, index, value),
            YamlList { IsFlow: false } items => LineSplice.Replace(text, items, index, value),
            _ => string.Concat(text.AsSpan(0, old.Start), old.Start == old.End ? " " : "", Written.OnOneLine(value), text.AsSpan(old.End)),
        };
    }

    // What has grown too long for a line is written in lines, where that changes nothing.
    private Draft Shortened(ImmutableArray<PathStep> steps, string before)
    {
        for (int i = 0; i < steps.Length; i++)
        {
            YamlNode parent = TextPath.At(Root, steps.AsSpan()[..i])!;
            if (parent is YamlMap { IsFlow: true } or YamlList { IsFlow: true }) return this;
            if (TextPath.At(Root, steps.AsSpan()[..(i + 1)]) is not { } node) return this;
            if (node is not (YamlMap { IsFlow: true, Entries.Length: > 0 } or YamlList { IsFlow: true, Items.Length: > 0 })) continue;
            int start = TextLines.Start(Text, node.Start), end = TextLines.End(Text, node.Start);
            if (node.End > end || node.End - start <= Written.Longest || Text.Length <= before.Length) return this;
            try
            {
                string broken = TextLines.EndedAs(Text, LineSplice.Broken(TextLines.Ended(Text), parent, IndexOf(parent, steps[i])));
                return YamlTree.Read(broken) is { IsSound: true, Value: { } root } && Expected.IsSame(Root, root) ? new(broken, root) : this;
            }
            catch (NoRoomException)
            {
                return this;
            }
        }
        return this;
    }

    private static int IndexOf(YamlNode parent, PathStep step) => parent is YamlMap map ? map.Entries.Select(e => e.Key.Text).ToList().IndexOf(step.Key!) : step.Index;

    private static Finding? Fault(YamlNode value)
    {
        switch (value)
        {
            case YamlScalar { Text: var word } when word.Length == 0 || word.Trim() != word || word.AsSpan().IndexOfAny('\n', '\r', '\t') >= 0:
                return new("splice.bad-value", Severity.Stop, "", $"'{TextContext.Shown(word)}' is not a value on one line.", "Give words or figures, without blanks at the ends.");
            case YamlList list: return list.Items.Select(Fault).FirstOrDefault(f => f is not null);
            case YamlMap map: return map.Entries.Select(e => Fault(e.Key) ?? Fault(e.Value)).FirstOrDefault(f => f is not null);
            default: return null;
        }
    }

    private static (Draft?, Finding?) Refuse(string code, Place place, string words, string remedy) => (null, new(code, Severity.Stop, "", words, remedy, place));
}
