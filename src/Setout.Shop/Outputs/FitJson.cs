using System.Collections.Immutable;
using System.Text.Json;
using Setout.Core.Fit;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;

namespace Setout.Shop.Outputs;

/// <summary>Writes what will fit as JSON. Lengths as in all our JSON; a chance is 0 to 1 with the bound of its error and how it was found. The schema is docs/schemas/fit.schema.json.</summary>
public static class FitJson
{
    /// <summary>The version of this JSON.</summary>
    public const int Version = 1;

    // Causes beyond these move a gap by next to nothing.
    private const int MostCauses = 6;

    /// <summary>Writes a report.</summary>
    /// <param name="set">The piece.</param>
    /// <param name="report">Its report.</param>
    public static byte[] Write(SetPiece set, FitReport report) => PlanJson.Write(json =>
    {
        LengthUnit unit = set.Piece.Unit;
        json.WriteStartObject();
        json.WriteNumber("setout_fit", Version);
        json.WriteString("rule_set", PieceSetOut.RuleSet);
        Group(json, "whole", report.Whole);
        SetOutJson.List(json, "groups", report.Groups, group => GroupBody(json, group));
        SetOutJson.List(json, "gaps", report.Gaps, gap => Gap(json, gap, unit));
        SetOutJson.List(json, "measure_first", report.Measure, reading =>
        {
            json.WriteString("key", reading.Key.Text);
            json.WriteString("name", reading.Name);
            json.WriteString("with", reading.Instrument);
            json.WriteNumber("gaps", reading.Gaps);
            json.WriteNumber("more_fit", Rounded(reading.MoreFit.Value));
            Chance(json, "chance_then", reading.ChanceThen);
            json.WriteNumber("right_then", Rounded(reading.RightThen.Value));
            json.WriteString("kind", reading.Kind switch { MeasureKind.FirstCut => "first-cut", var k => k.ToString().ToLowerInvariant() });
        });
        SetOutJson.List(json, "allowances", report.Allowances, allowance =>
        {
            json.WriteString("key", allowance.Key.Text);
            json.WriteString("name", allowance.Name);
            PlanJson.Length(json, "kept", allowance.Kept, unit);
            PlanJson.Length(json, "best", allowance.Best, unit);
            json.WriteNumber("gaps", allowance.Gaps);
            json.WriteNumber("fit_kept", Rounded(allowance.FitKept.Value));
            json.WriteNumber("fit_best", Rounded(allowance.FitBest.Value));
        });
        json.WriteEndObject();
    });

    private static void Gap(Utf8JsonWriter json, GapFit fit, LengthUnit unit)
    {
        json.WriteString("key", fit.Gap.Key.Text);
        json.WriteString("name", fit.Gap.Name);
        if (fit.Gap.Group.Length > 0) json.WriteString("group", fit.Gap.Group);
        PlanJson.Length(json, "least", fit.Gap.Least, unit);
        PlanJson.Length(json, "most", fit.Gap.Most, unit);
        json.WriteString("source", fit.Gap.Source);
        json.WriteStartObject("now");
        State(json, fit.Now, fit.Chance, unit);
        SetOutJson.List(json, "causes", fit.Largest.Take(MostCauses), effect =>
        {
            json.WriteString("words", effect.Cause.Words);
            json.WriteString("kind", effect.Cause.Kind.ToString().ToLowerInvariant());
            json.WriteString("times", effect.Times.ToString());
            PlanJson.Length(json, "low", effect.Least, unit);
            PlanJson.Length(json, "high", effect.Most, unit);
        });
        json.WriteEndObject();
        json.WriteStartObject("measured");
        State(json, fit.Measured, fit.ChanceMeasured, unit);
        json.WriteEndObject();
    }

    private static void State(Utf8JsonWriter json, Spread spread, Chance chance, LengthUnit unit)
    {
        PlanJson.Length(json, "value", spread.Value, unit);
        PlanJson.Length(json, "worst_low", spread.WorstLow, unit);
        PlanJson.Length(json, "worst_high", spread.WorstHigh, unit);
        json.WriteNumber("root_sum_square_mm", Rounded(spread.RootSumSquare.Millimetres.Value));
        json.WriteNumber("standard_deviation_mm", Rounded(spread.StandardDeviation.Millimetres.Value));
        Chance(json, "chance", chance);
    }

    private static void Group(Utf8JsonWriter json, string name, GroupFit group)
    {
        json.WriteStartObject(name);
        GroupBody(json, group);
        json.WriteEndObject();
    }

    private static void GroupBody(Utf8JsonWriter json, GroupFit group)
    {
        if (group.Key.Length > 0) json.WriteString("key", group.Key);
        json.WriteNumber("gaps", group.Gaps);
        Chance(json, "chance", group.Chance);
        Chance(json, "chance_measured", group.ChanceMeasured);
        json.WriteNumber("right", Rounded(group.Right.Value));
        json.WriteNumber("right_measured", Rounded(group.RightMeasured.Value));
    }

    private static void Chance(Utf8JsonWriter json, string name, Chance chance)
    {
        json.WriteStartObject(name);
        json.WriteNumber("share", Rounded(chance.Share.Value));
        json.WriteNumber("error", Math.Ceiling(chance.Share.Error * 1e6) / 1e6);
        json.WriteString("by", chance.Method.ToString().ToLowerInvariant());
        json.WriteEndObject();
    }

    // Six places: beyond them the bounds speak.
    private static double Rounded(double value) => Math.Round(value, 6);
}
