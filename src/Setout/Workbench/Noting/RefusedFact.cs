using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Shop.Noting;
using Setout.Shop.Texts;

namespace Setout.Workbench.Noting;

/// <summary>A fact that was not taken, with the form filled in as it was.</summary>
/// <param name="Words">What was understood.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="Overrule">The box that takes it all the same: its name; empty where it cannot be taken.</param>
/// <param name="OverruleWords">What stands beside that box.</param>
/// <param name="Action">Where the form goes.</param>
/// <param name="Hidden">What goes along unseen.</param>
/// <param name="Typed">What was typed, to be mended; null where nothing is typed in such a form.</param>
/// <param name="Back">The page it was typed on.</param>
public sealed record RefusedFactView(string Words, string Remedy, string Overrule, string OverruleWords, string Action, ImmutableArray<(string Name, string Value)> Hidden, string? Typed, string Back)
{
    /// <summary>The field that is to blame, as the form names it; empty for none alone.</summary>
    public string Field { get; init; } = "";

    /// <summary>True where the same may be sent again as it is: nothing is wrong with it.</summary>
    public bool IsGood { get; init; }

    internal static RefusedFactView Of(Finding fault, string action, IFormCollection fields, string back)
    {
        string overrule = fault.Code switch { Noted<LogEntry>.Slip or Noted<LogEntry>.Far => "force", Noted<LogEntry>.Already => "again", _ => "" };
        bool isReading = action.EndsWith("/read", StringComparison.Ordinal);
        return new(fault.Words, fault.Remedy, overrule, overrule == "again" ? "cut anew" : "take it all the same", action,
            [.. from field in fields where field.Key != overrule && !(isReading && field.Key == "value") from value in field.Value select (field.Key, value ?? "")],
            isReading ? fields["value"].ToString() : null, back)
        { IsGood = Changing.RefusedView.IsOfTheStore(fault), Field = fault.Field };
    }
}
