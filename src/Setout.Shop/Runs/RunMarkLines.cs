using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Cutting.Runs;
using Setout.Shop.Texts;

namespace Setout.Shop.Runs;

/// <summary>Says in lines what the entry of a run made a fact of, and what comes next.</summary>
public static class RunMarkLines
{
    /// <summary>The lines.</summary>
    /// <param name="after">The piece with the entry in its log.</param>
    /// <param name="entry">The entry.</param>
    /// <param name="next">The run to be cut next; null when there is none.</param>
    /// <param name="runs">How many runs the plan has.</param>
    public static IEnumerable<string> Of(SetPiece after, MarkEntry entry, Run? next, int runs)
    {
        LengthFormat format = LengthFormat.For(after.Piece.Shown);
        if (!entry.Keys.IsEmpty) yield return $"  parts: {string.Join(", ", entry.Keys)}";
        yield return $"  taken: {string.Join(", ", entry.Took.Select(t => Taken(t, format)))}";
        foreach (IGrouping<BlankUse, LeftWood> use in entry.Left.GroupBy(l => l.Use).OrderBy(g => g.Key))
            yield return $"  {(use.Key switch { BlankUse.Work => "to be cut on", BlankUse.Waiting => "left whole until a reading", _ => "kept" })}: {string.Join(", ", use.Select(l => $"{l.Name} ({Size(l.Size, format)})"))}";
        bool isDone = after.Parts.All(p => after.Facts.CutOf(p) == p.Count);
        yield return next is not null ? $"  next: run {next.Number} of {runs}" : isDone ? "  that was the last run: all parts are cut" : "  that was the last run of this plan: make the next one, its runs are numbered from 1";
    }

    private static string Taken(TakenWood wood, LengthFormat format) => wood.Size is not { } size ? wood.Name
        : $"{(wood.Name.Length > 0 ? wood.Name : wood.Of)} ({Size(size, format)}{(wood.Source == WoodSource.Bought ? ", bought" : ", from the rack")})";

    private static string Size(LoggedSize size, LengthFormat format) => size.Across is { } across ? $"{format.Bare.Text(size.Along)} x {format.Text(across)}" : format.Text(size.Along);
}
