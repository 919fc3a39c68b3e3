using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Noting;

/// <summary>What came of something noted down at the bench: an entry for the log, or why there is none.</summary>
/// <param name="Entry">The entry; null where it is refused.</param>
/// <param name="Fault">What was understood and what to do instead; null where there is an entry.</param>
public sealed record Noted<T>(T? Entry, Finding? Fault) where T : LogEntry
{
    /// <summary>The codes of refusals that whoever wrote it may overrule: the value looks like a slip, or lies far off.</summary>
    public const string Slip = "note.slip", Far = "note.far";

    /// <summary>The code where a part is cut already: it may be said to be cut anew.</summary>
    public const string Already = "note.cut-already";

    /// <summary>Worth knowing beside the entry; null for nothing.</summary>
    public Finding? Aside { get; init; }

    /// <summary>What else is wrong with what was typed, each with its field.</summary>
    public ImmutableArray<Finding> More { get; init; } = [];

    /// <summary>All that is wrong with it; none where there is an entry.</summary>
    public ImmutableArray<Finding> Faults => Fault is null ? [] : [Fault, .. More];

    internal static Noted<T> Refuse(string code, string words, string remedy, string key = "") => new(null, new(code, Severity.Stop, key, words, remedy));

    internal static Noted<T> Refuse(Finding fault, params ReadOnlySpan<Finding> more) => new(null, fault) { More = [.. more] };
}

/// <summary>Ways to say how a person does what a refusal advises: on the command line by options, on a page by boxes to tick.</summary>
internal static class NoteHands
{
    extension(Hand hand)
    {
        /// <summary>Begins a sentence that says to give another value.</summary>
        public string Record => hand.Say("Record", "Type");

        /// <summary>To take a value all the same.</summary>
        public string Force => hand.Say("add --force", "tick “take it all the same”");

        /// <summary>Begins a sentence that says a part was cut anew.</summary>
        public string Again => hand.Say("Add --again", "Tick “cut anew”");

        /// <summary>A sentence: where the parts are listed.</summary>
        public string Parts => hand.Say("'setout parts FILE' lists the parts.", "Choose it on the drawing or in the list of parts.");

        /// <summary>The same after another half of the sentence.</summary>
        public string PartsToo => hand.Say("'setout parts FILE' lists them.", "choose it in the list of parts.");

        /// <summary>To name no sheet.</summary>
        public string NoSheet => hand.Say("leave --sheet out", "leave the sheet empty");

        /// <summary>A sentence: to name no other figures.</summary>
        public string NoFigure => hand.Say("Leave --to out.", "Leave the figures out.");

        /// <summary>Begins a sentence that says to read a sheet of a material first.</summary>
        public string ToReadSheet(string material, string sheet) => hand.Say($"Read it first: setout record FILE {material}.thickness READING --sheet {sheet}", $"Read the thickness of sheet {sheet} of {material} first");
    }
}
