using System.Collections.Immutable;
using System.Text;

namespace Setout.Soak;

/// <summary>What forms of the workbench ask for, with the fields of each.</summary>
internal static class FormWords
{
    private static readonly string[] s_choices = ["width", "height", "depth", "shelves", "drawers", "doors", "divide", "empty", "take-out", "move", "top", "kind", "name"];
    private static readonly string[] s_fields = ["size", "count", "of", "at", "kind", "width", "name", "front", "way", "height"];
    private static readonly string[] s_shopChoices = ["add-stock-panel", "add-stock-board", "add-saw", "grid", "name", "kerf", "price", "take-out", "edit"];
    private static readonly string[] s_progress = ["cut", "assembled", "fitted", "finished", "bought"];

    // Those that change what is at the bench stand more than once: they need others before them to find anything to do.
    private static readonly string[] s_words =
    [
        "edit", "edit", "text", "undo", "redo", "rename", "put-away", "take-back", "save-point", "go-back", "begin-from", "nothing", "new", "trial", "trial",
        "read", "read", "read", "mark", "mark", "mark", "void", "void", "allow", "mend", "bought", "cut", "enough",
        "shop edit", "shop edit", "shop text", "shop undo", "shop redo", "shop gone", "shop begin",
        "import", "import", "do", "import take-back", "upload", "restore", "leave", "backup", "viewing", "together cut", "together enough",
    ];

    /// <summary>One of them; a backup of everything is asked for seldom.</summary>
    public static string Any(Random random)
    {
        string word = s_words[random.Next(s_words.Length)];
        return word is "backup" or "restore" && random.Next(6) > 0 ? "viewing" : word;
    }

    /// <summary>Where it is sent.</summary>
    public static string Address(string word, string piece, string other) => word switch
    {
        "new" or "viewing" => "/" + word,
        "import" or "upload" or "restore" or "leave" or "backup" => "/keeping/" + word,
        "do" => "/keeping/import/do",
        "import take-back" => "/keeping/import/take-back",
        "together cut" => "/together/cut",
        "together enough" => $"/together/enough?piece={Uri.EscapeDataString(piece)}&piece={Uri.EscapeDataString(other)}",
        _ when word.StartsWith("shop ", StringComparison.Ordinal) => "/shop/" + word["shop ".Length..],
        _ => $"/piece/{Uri.EscapeDataString(piece)}/{word}",
    };

    /// <summary>Fills in its own fields.</summary>
    public static void Fill(SpoiltForm form, string word, Random random, Func<Random, string> key, ImmutableArray<string> texts, ImmutableArray<string> pieces)
    {
        string Either() => random.Next(2) == 0 ? Spoiling.Typed(random) : Spoiling.Likely(random);
        void Field(string name) => form.Add("field-" + name, Either());
        switch (word)
        {
            case "edit" or "trial":
                form.Add("key", key(random));
                form.Add("choice", random.Next(10) == 0 ? Spoiling.Typed(random) : s_choices[random.Next(s_choices.Length)]);
                foreach (string field in s_fields) Field(field);
                if (word == "trial") form.Add("part", random.Next(3) switch { 0 => "page", 1 => "plan", _ => "" });
                break;
            case "text":
                form.Add("text", random.Next(4) == 0 ? Spoiling.Typed(random) : Spoiling.Text(random, texts[random.Next(texts.Length)], texts[random.Next(texts.Length)]));
                break;
            case "rename" or "begin-from":
                form.Add("to", random.Next(3) switch { 0 => "shop", 1 => "another one", _ => Spoiling.Typed(random) });
                break;
            case "save-point":
                form.Add("point", Either());
                break;
            case "go-back":
                form.Add("state", $"{random.Next(1, 60)}");
                break;
            case "new":
                form.Add("name", random.Next(2) == 0 ? "one more" : Spoiling.Typed(random));
                form.Add("kind", random.Next(2) == 0 ? "case" : "frame");
                form.Add("unit", random.Next(2) == 0 ? "in" : "mm");
                foreach (string field in (string[])["width", "height", "depth"]) form.Add(field, Either());
                break;
            case "read":
                form.Add("key", key(random));
                form.Add("value", Either());
                form.Add("with", random.Next(3) switch { 0 => "tape", 1 => "", _ => Spoiling.Typed(random) });
                form.Add("spot", random.Next(3) == 0 ? Spoiling.Typed(random) : "");
                if (random.Next(3) > 0) form.Add("force", "yes");
                break;
            case "mark":
                form.Add("progress", random.Next(12) == 0 ? Spoiling.Typed(random) : s_progress[random.Next(s_progress.Length)]);
                for (int i = random.Next(3); i >= 0; i--) form.Add("what", key(random));
                if (random.Next(4) == 0) form.Add("item", Either());
                if (random.Next(4) == 0) form.Add("sheet", Either());
                if (random.Next(3) == 0) form.Add("again", "yes");
                break;
            case "void":
                form.Add("entry", Either());
                if (random.Next(3) == 0) form.Add("whole", "yes");
                break;
            case "allow":
                form.Add("code", random.Next(2) == 0 ? "fit.low" : Spoiling.Typed(random));
                form.Add("on", key(random));
                form.Add("because", Either());
                break;
            case "mend":
                form.Add("upset", key(random));
                form.Add("remedy", Either());
                for (int i = random.Next(3); i > 0; i--) form.Add("value", Either());
                break;
            case "bought":
                form.Add("item", Either());
                foreach (string field in (string[])["count", "price", "thickness", "lot", "size"]) Field(field);
                break;
            case "cut" or "together cut":
                form.Add("plan", Either());
                form.Add("run", $"{random.Next(1, 9)}");
                if (word != "cut") for (int i = random.Next(1, 4); i > 0; i--) form.Add("piece", pieces[random.Next(pieces.Length)]);
                break;
            case "shop edit" or "shop begin":
                form.Add("key", random.Next(3) switch { 0 => "stock", 1 => $"stock.{random.Next(20)}", _ => Spoiling.Typed(random) });
                form.Add("choice", random.Next(10) == 0 ? Spoiling.Typed(random) : s_shopChoices[random.Next(s_shopChoices.Length)]);
                foreach (string field in (string[])["name", "unit", "grid", "kerf", "currency", "size", "count", "price"]) Field(field);
                break;
            case "shop text":
                form.Add("text", random.Next(4) == 0 ? Spoiling.Typed(random) : "setout-shop: 1\nunit: in\nname: " + Spoiling.Typed(random) + "\n");
                break;
            case "shop gone":
                form.Add("piece", pieces[random.Next(pieces.Length)]);
                form.Add("blank", Either());
                break;
            case "import" or "upload":
                form.IsMultipart = random.Next(20) > 0;
                for (int i = random.Next(3); i >= 0; i--) form.Add("file", Spoiling.FileName(random), Spoiling.FileOf(random, texts));
                break;
            case "do":
                form.Add("seen", Either());
                for (int i = random.Next(3); i >= 0; i--)
                {
                    form.Add("name", Spoiling.FileName(random));
                    form.Add("text", random.Next(5) == 0 ? Spoiling.Typed(random) : Convert.ToBase64String(Encoding.UTF8.GetBytes(Spoiling.Text(random, texts[random.Next(texts.Length)], ""))));
                }
                break;
            case "import take-back":
                form.Add("made", Either());
                break;
            case "restore":
                form.Add(random.Next(2) == 0 ? "backup" : "upload", Either());
                break;
            case "viewing":
                form.Add("unit", random.Next(3) switch { 0 => "in", 1 => "mm", _ => Spoiling.Typed(random) });
                form.Add("keys", Spoiling.Typed(random));
                break;
        }
    }
}
