using System.Collections.Immutable;
using System.Globalization;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Cutting.Sheets;

namespace Setout.Shop.Plans;

/// <summary>What a plan comes to, in a few numbers that two plans can be compared by.</summary>
/// <param name="Sheets">Sheets used, those of the rack too.</param>
/// <param name="Boards">Boards and sticks used, those of the rack too.</param>
/// <param name="Settings">Settings of the saws.</param>
/// <param name="Cost">What is bought, as far as prices are known.</param>
/// <param name="Unpriced">Lines to buy without a price.</param>
/// <param name="Parts">Parts to make, cut ones too.</param>
/// <param name="Held">Parts that wait for a reading.</param>
/// <param name="Stops">Findings that stop the plan.</param>
/// <param name="Findings">Findings that want a look, those that stop too.</param>
public sealed record PlanTally(int Sheets, int Boards, int Settings, Money Cost, int Unpriced, int Parts, int Held, int Stops, int Findings)
{
    /// <summary>Counts a plan.</summary>
    public static PlanTally Of(Plan plan) => new(
        plan.Sheets.Sum(s => s.Outcome.Layout.Sheets.Length), plan.Boards.Sum(b => b.Outcome.Layout.Boards.Length), plan.Runs.Settings, plan.Cost, plan.Unpriced,
        plan.Set.Parts.Sum(p => p.Count), plan.Set.Parts.Where(plan.Set.IsHeld).Sum(p => p.Count),
        plan.Findings.Count(f => f.Severity == Severity.Stop), plan.Findings.Count(f => f.Severity > Severity.Note));

    /// <summary>What has changed since another plan, in one line: <c>+1 sheet, −2 settings, +14.20, 2 more parts held, one finding more</c>; and that nothing has, where that is so.</summary>
    /// <param name="before">The plan it is held against.</param>
    public string Against(PlanTally before)
    {
        // Where one of the two has no layouts, their difference would say nothing.
        if (Stops > 0 || before.Stops > 0)
        {
            return (Stops > 0, before.Stops > 0) switch
            {
                (true, false) => $"it cannot be made so: {Counted(Stops, "finding", "findings")} to mend first",
                (false, true) => "it can be made now; what it is compared with could not",
                _ => "neither this nor what it is compared with can be made as it is",
            };
        }
        List<string> said = [];
        void Say(int by, string one, string many)
        {
            if (by != 0) said.Add($"{Signed(by)} {(Math.Abs(by) == 1 ? one : many)}");
        }
        Say(Sheets - before.Sheets, "sheet", "sheets");
        Say(Boards - before.Boards, "board", "boards");
        Say(Settings - before.Settings, "setting", "settings");
        Money money = Cost - before.Cost;
        if (money != Money.Zero) said.Add($"{(money < Money.Zero ? "−" : "+")}{(money < Money.Zero ? Money.Zero - money : money)}{(Unpriced > 0 ? $" without {Counted(Unpriced, "thing", "things")} that {(Unpriced == 1 ? "has" : "have")} no price" : "")}");
        Say(Parts - before.Parts, "part", "parts");
        if (Held != before.Held) said.Add($"{Counted(Math.Abs(Held - before.Held), "part", "parts")} {(Held > before.Held ? "more held for a reading" : "held no longer")}");
        if (Findings != before.Findings) said.Add($"{Counted(Math.Abs(Findings - before.Findings), "finding", "findings")} {(Findings > before.Findings ? "more" : "fewer")}");
        return said.Count > 0 ? string.Join(", ", said) : "the same sheets, boards, settings, money and findings";
    }

    private static string Signed(int by) => (by < 0 ? "−" : "+") + Math.Abs(by).ToString(CultureInfo.InvariantCulture);

    private static string Counted(int count, string one, string many) => count == 1 ? $"one {one}" : $"{count.ToString(CultureInfo.InvariantCulture)} {many}";
}
