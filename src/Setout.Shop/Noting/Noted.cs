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

    internal static Noted<T> Refuse(string code, string words, string remedy, string key = "") => new(null, new(code, Severity.Stop, key, words, remedy));

    internal static Noted<T> Refuse(Finding fault) => new(null, fault);
}

/// <summary>How a person does what a refusal advises: on the command line by options, on a page by boxes to tick.</summary>
/// <param name="Record">Begins a sentence that says to give another value.</param>
/// <param name="Force">To take a value all the same.</param>
/// <param name="Again">Begins a sentence that says a part was cut anew.</param>
/// <param name="Parts">A sentence: where the parts are listed.</param>
/// <param name="PartsToo">The same after another half of the sentence.</param>
/// <param name="ReadSheet">To read a sheet of a material first: the material and the sheet are put in.</param>
/// <param name="NoSheet">To name no sheet.</param>
/// <param name="NoFigure">To name no other figures.</param>
public sealed record NoteWords(string Record, string Force, string Again, string Parts, string PartsToo, string ReadSheet, string NoSheet, string NoFigure)
{
    /// <summary>For the command line.</summary>
    public static NoteWords Commands { get; } = new("Record", "add --force", "Add --again", "'setout parts FILE' lists the parts.", "'setout parts FILE' lists them.",
        "Read it first: setout record FILE {0}.thickness READING --sheet {1}", "leave --sheet out", "Leave --to out.");

    /// <summary>For a page.</summary>
    public static NoteWords Page { get; } = new("Type", "tick “take it all the same”", "Tick “cut anew”", "Choose it on the drawing or in the list of parts.", "choose it in the list of parts.",
        "Read the thickness of sheet {1} of {0} first", "leave the sheet empty", "Leave the figures out.");

    internal string ToReadSheet(string material, string sheet) => string.Format(System.Globalization.CultureInfo.InvariantCulture, ReadSheet, material, sheet);
}
