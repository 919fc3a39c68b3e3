using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Soak;

/// <summary>Spoilt texts, and edits with anything typed into their fields: each outcome is a result or a finding.</summary>
internal static class TextCases
{
    private const string Log =
        "setout-log: 1\nentries:\n  - id: a1\n    at: \"2026-05-04T09:40:00Z\"\n    read: C.width\n    values: [23/32 in, 18.2 mm]\n    with: \"tape\"\n  - {id: a2, at: 2026-05-04T09:41:00Z, cut: [C.side], figures: [{of: C.side.length, is: 30 in}]}\n  - {id: a3, at: 2026-05-04T09:42:00Z, void: a1}\n";

    /// <summary>Runs a case.</summary>
    /// <param name="random">What happens.</param>
    /// <param name="pieces">Sound piece files.</param>
    /// <param name="shop">A sound shop file.</param>
    /// <returns>The kind of case and what came of it; for counting.</returns>
    /// <exception cref="SoakException">Neither a result nor a finding came of it. Any other exception is a fault too.</exception>
    public static string Run(Random random, ImmutableArray<string> pieces, string shop, Action<string> input)
    {
        string piece = pieces[random.Next(pieces.Length)], other = pieces[random.Next(pieces.Length)];
        switch (random.Next(10))
        {
            case < 4:
                return SetOut("piece", Noted(input, Spoiling.Text(random, piece, other)), null, null);
            case < 6:
                string spoilt = Noted(input, Spoiling.Text(random, shop, other));
                Told(ShopText.Read(spoilt), "shop");
                return SetOut("shop", piece, null, spoilt);
            case < 8:
                string log = Noted(input, Spoiling.Text(random, Log, other));
                Told(LogText.Read(log), "log");
                return SetOut("log", piece, log, shop);
            default:
                return Edits(random, random.Next(3) == 0 ? Spoiling.Text(random, piece, other) : piece, input);
        }
    }

    private static string SetOut(string kind, string piece, string? log, string? shop)
    {
        (PieceSource? source, ImmutableArray<SourceFinding> findings) = PieceSource.Read(piece, log, shop);
        if (source is null)
            return findings.IsEmpty ? throw new SoakException("A text that cannot be used has no finding.") : $"{kind}: told";
        SetPiece set = source.SetOut();
        return set.IsStopped && !set.Findings.Any(f => f.Severity == Severity.Stop) ? throw new SoakException("A piece is stopped without a finding.") : $"{kind}: set out";
    }

    private static string Edits(Random random, string text, Action<string> input)
    {
        string outcome = "edit: not offered";
        for (int i = random.Next(1, 5); i > 0; i--)
        {
            if (PieceSource.Read(text, null, null).Source is not { } source) return "edit: unread";
            SetPiece set = source.SetOut();
            string[] keys = ["", .. set.Piece.Keys.Keys, .. set.Piece.Materials.Keys, .. set.Worked.Order.Select(k => k.Text)];
            string key = keys[random.Next(keys.Length)];
            ImmutableArray<EditChoice> choices = Choices.For(set, key, source.Shop);
            if (choices.IsEmpty) continue;
            EditChoice choice = choices[random.Next(choices.Length)];
            Dictionary<string, string> typed = choice.Fields.ToDictionary(f => f.Name, f => random.Next(3) == 0 ? f.Default : f.Options.Length > 0 && random.Next(2) == 0 ? f.Options[random.Next(f.Options.Length)] : Spoiling.Typed(random));
            input($"{text}\n# {key}: {choice.Id}: {string.Join(" | ", typed.Select(t => $"{t.Key} = {t.Value}"))}\n");
            TextRead<Edit> made = choice.Make(typed);
            Told(made, choice.Id);
            if (made.Value is not { } edit) return "edit: told";
            Edited edited = edit.ApplyTo(text, new EditBench(source.Log, source.Shop, []));
            if (edited.Text is not { } after) return edited.Findings.IsEmpty ? throw new SoakException($"The edit {choice.Id} of {key} was refused without a finding.") : "edit: told";
            if (!PieceText.Read(after).IsSound) throw new SoakException($"The edit {choice.Id} of {key} made a text that cannot be read.");
            (text, outcome) = (after, "edit: done");
        }
        return outcome;
    }

    private static string Noted(Action<string> input, string text)
    {
        input(text);
        return text;
    }

    private static void Told<T>(TextRead<T> read, string what) where T : class
    {
        if (read.Value is null && read.Findings.IsEmpty) throw new SoakException($"Neither a value nor a finding: {what}.");
    }
}

/// <summary>A promise was broken.</summary>
internal sealed class SoakException(string words) : Exception(words);
