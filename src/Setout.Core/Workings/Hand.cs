namespace Setout.Core.Workings;

/// <summary>
/// By what a person enters what is read and done, and looks up what is worked out. Sentences that ask for it are made for one or the other, whether they are read on a page, on paper or at a terminal. It changes words
/// alone, never a size.
/// </summary>
public enum Hand
{
    /// <summary>Commands, with FILE for the piece.</summary>
    Commands,

    /// <summary>The pages of the workbench; what stands in curly quotes is called so there.</summary>
    Pages,
}

/// <summary>Ways to say where something is entered or looked up.</summary>
public static class Hands
{
    /// <summary>The stage of fitting, as a page calls it.</summary>
    public const string FitStage = "“Fit”";

    /// <summary>The page of a piece where entries are voided, as pages call it.</summary>
    public const string FactsPage = "“What was read and marked”";

    extension(Hand hand)
    {
        /// <summary>One of two ways to say it.</summary>
        public string Say(string command, string page) => hand == Hand.Commands ? command : page;

        /// <summary>Goes on from what is to be read, before the full stop: where the reading is entered.</summary>
        /// <param name="key">What is read.</param>
        /// <param name="name">Its name for people.</param>
        /// <param name="values">What stands for the values in a command, such as <c>WIDTH, WIDTH</c>.</param>
        public string Enter(QuantityKey key, string name, string values = "READING") => hand.Say($": setout record FILE {key} {values}", $", and enter it at {Place(name)}");

        /// <summary>Goes on from an entry that is to be voided, before the full stop: where that is done.</summary>
        public string Void(string entry) => hand.Say($": setout void FILE {entry}", $", under {FactsPage}");

        /// <summary>Within a sentence: a reading that is to be voided.</summary>
        public string VoidReading(string entry) => hand.Say($"void entry {entry}", $"void that reading under {FactsPage}");

        /// <summary>Begins a sentence: a key of the piece file that is to say something else, written into the text or set on the page of all that can be said of its thing.</summary>
        public string Write(string key, string value) => $"{hand.Say("Write", "Set")} {hand.Key(key, value)}";

        /// <summary>The same as the last of several things that can be done.</summary>
        public string OrWrite(string key, string value) => $"or {hand.Say("write", "set")} {hand.Key(key, value)}";

        /// <summary>Another value, or another key, behind one of those.</summary>
        public string Key(string key, string value) => hand.Say($"'{key}: {value}'", $"“{key}” to {value}");

        /// <summary>A key by its name alone, as in a sentence that says to leave it out.</summary>
        public string Key(string key) => hand.Say($"'{key}'", $"“{key}”");

        /// <summary>Begins with what lists the gaps, what is upset and the remedies.</summary>
        public string Fit => hand.Say("'setout fit FILE'", $"the stage {FitStage}");

        /// <summary>What shows the working of a size.</summary>
        public string Working(QuantityKey key, string name) => hand.Say($"setout why FILE {key}", $"the working of {Place(name)}");

        /// <summary>Something that can be read, with what to type where that is a command.</summary>
        public string Named(QuantityKey key, string name) => hand.Say($"{name} (setout record FILE {key} READING)", Place(name));
    }

    /// <summary>A size as pages call it: by its name, for its key is for who types it.</summary>
    public static string Place(string name) => $"“{name}”";
}
