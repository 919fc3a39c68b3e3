using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Cutting.Runs;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Texts;

/// <content>The wood that a run took and left.</content>
public static partial class LogText
{
    private const int MostRun = 100_000;

    private static readonly (string Word, WoodSource Source)[] s_sources = [("bought", WoodSource.Bought), ("rack", WoodSource.Rack), ("piece", WoodSource.Piece)];

    private static readonly (string Word, BlankUse Use)[] s_uses = [("keep", BlankUse.Keep), ("work", BlankUse.Work), ("waiting", BlankUse.Waiting)];

    private static readonly (string Word, Func<EdgeTrim, Length> Of)[] s_sides =
        [("near edge", t => t.AcrossStart), ("far edge", t => t.AcrossEnd), ("near end", t => t.AlongStart), ("far end", t => t.AlongEnd)];

    private static MarkEntry Wood(TextContext context, MapReader map, MarkEntry entry)
    {
        int run = map.Whole("run", 0, 1, MostRun);
        string plan = map.Text("plan")?.Text ?? "";
        ImmutableArray<string> with = [.. map.Words("with").Select(w => w.Text)];
        // All are read before anything is missed, so that their keys are known.
        ImmutableArray<TakenWood> took = [.. map.Maps("took", "took", "of: carcase, stock: bought, size: 96 in x 48 in").Select(m => Took(context, m)).OfType<TakenWood>()];
        ImmutableArray<LeftWood> left = [.. map.Maps("left", "left", "of: carcase, name: carcase-4, size: 96 in x 11 1/4 in").Select(m => Left(context, m)).OfType<LeftWood>()];
        if (map.IsThere("run") && !map.IsThere("plan")) map.Missing("plan", "1a2b3c4d");
        if (map.IsThere("plan") && !map.IsThere("run")) map.Missing("run", "1");
        if (map.IsThere("with") && !map.IsThere("run")) map.Missing("run", "1");
        if ((map.IsThere("run") || map.IsThere("left")) && !map.IsThere("took")) map.Missing("took", "[{of: carcase, stock: bought, size: 96 in x 48 in}]");
        return entry with { Run = run == 0 ? null : run, Plan = plan, With = with, Took = took, Left = left };
    }

    private static TakenWood? Took(TextContext context, MapReader map)
    {
        map.Expect("of");
        string? word = map.Which("This does not say what was taken.", "Write for example '{of: carcase, stock: bought, size: 96 in x 48 in}' or '{of: carcase, blank: carcase-4}'.", ("stock", "took-stock"), ("blank", "took-blank"));
        if (word is null) return null;
        if (word == "blank") return new(map.Required("of", "carcase").Text, WoodSource.Blank, map.Required("blank", "carcase-4").Text, null);
        map.Expect("stock", "name");
        LoggedSize? size = Size(context, map, "took");
        WoodSource source = map.OneOf("stock", WoodSource.Bought, s_sources);
        string of = map.Required("of", "carcase").Text, name = map.Text("name")?.Text ?? "";
        return size is null ? null : new(of, source, name, size);
    }

    private static LeftWood? Left(TextContext context, MapReader map)
    {
        map.Expect("of", "name");
        LoggedSize? size = Size(context, map, "left");
        string of = map.Required("of", "carcase").Text, name = map.Required("name", "carcase-4").Text;
        BlankUse use = map.OneOf("use", BlankUse.Keep, s_uses);
        return size is null ? null : new(of, name, size, use);
    }

    // A sheet by its size, a board by its length.
    private static LoggedSize? Size(TextContext context, MapReader map, string kind)
    {
        if (map.Which("This does not say how large it is.", "Write 'size: 24 in x 12 in' for a sheet, 'length: 40 in' for a board.", ("size", kind + "-sheet"), ("length", kind + "-board")) is not { } word) return null;
        EdgeTrim trim = map.Map("trim", "sides") is { } sides ? Sides(sides) : EdgeTrim.None;
        if (word == "size") return map.Size("size") is { } given ? new(Tick(given.First), Tick(given.Second)) { Trim = trim } : null;
        Given? length = map.Length("length");
        StickSection? section = map.Size("section", "in either order", "3/4 in x 1 1/2 in") is { } two ? StickSection.Of(two.First.Value, two.Second.Value) : null;
        ImmutableArray<Flaw> flaws = BoardText.Flaws(context, map, length);
        return length is { } along ? new(Tick(along), null) { Trim = trim, Section = section, Flaws = flaws } : null;
    }

    private static EdgeTrim Sides(MapReader map)
    {
        Length[] off = [.. s_sides.Select(s => map.Length(s.Word, mayBeZero: true) is { } given ? Tick(given) : Length.Zero)];
        return new(off[2], off[3], off[0], off[1]);
    }

    private static Length Tick(Given given) => Length.FromTicks((long)given.Value.Ticks.Floor());

    private static void WriteWood(StringBuilder text, MarkEntry mark)
    {
        if (mark.Run is { } run) text.Append("    run: ").Append(run.ToString(CultureInfo.InvariantCulture)).Append('\n');
        if (mark.Plan.Length > 0) text.Append("    plan: ").Append(Word(mark.Plan)).Append('\n');
        if (mark.With.Length > 0) text.Append("    with: [").AppendJoin(", ", mark.With.Select(Word)).Append("]\n");
        // Of several pieces together the wood stands in the log of one.
        if (mark.Took.Length > 0) text.Append("    took:\n");
        else if (mark.Run is not null) text.Append("    took: []\n");
        foreach (TakenWood taken in mark.Took)
        {
            text.Append("      - {of: ").Append(Word(taken.Of));
            if (taken.Size is not { } size) text.Append(", blank: ").Append(Word(taken.Name));
            else
            {
                text.Append(", stock: ").Append(s_sources.First(s => s.Source == taken.Source).Word);
                if (taken.Name.Length > 0) text.Append(", name: ").Append(Word(taken.Name));
                WriteSize(text, size);
            }
            text.Append("}\n");
        }
        if (mark.Left.Length > 0) text.Append("    left:\n");
        foreach (LeftWood left in mark.Left)
        {
            text.Append("      - {of: ").Append(Word(left.Of)).Append(", name: ").Append(Word(left.Name));
            WriteSize(text, left.Size);
            text.Append(", use: ").Append(s_uses.First(u => u.Use == left.Use).Word).Append("}\n");
        }
    }

    private static void WriteSize(StringBuilder text, LoggedSize size)
    {
        if (size.Across is { } across) text.Append(", size: ").Append(NamedLength.Exactly(size.Along)).Append(" x ").Append(NamedLength.Exactly(across));
        else text.Append(", length: ").Append(NamedLength.Exactly(size.Along));
        if (size.Section is { } section) text.Append(", section: ").Append(NamedLength.Exactly(section.Thickness)).Append(" x ").Append(NamedLength.Exactly(section.Width));
        if (size.Trim != EdgeTrim.None) text.Append(", trim: {").AppendJoin(", ", s_sides.Where(s => s.Of(size.Trim).Sign > 0).Select(s => $"{s.Word}: {NamedLength.Exactly(s.Of(size.Trim))}")).Append('}');
        if (!size.Flaws.IsEmpty) text.Append(", flaws: [").AppendJoin(", ", size.Flaws.Select(f => $"{{from: {NamedLength.Exactly(f.From)}, to: {NamedLength.Exactly(f.To)}}}")).Append(']');
    }
}
