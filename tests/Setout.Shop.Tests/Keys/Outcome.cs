using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Cutting;
using Setout.Cutting.Boards;
using Setout.Cutting.Sheets;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;

namespace Setout.Shop.Tests.Keys;

/// <summary>All that comes of a piece file, as one text in which nothing tells where a thing is written.</summary>
internal static partial class Outcome
{
    /// <summary>What the readers or the rules say of it: parts, places, quantities, joints, machining, hardware, steps, gaps, findings.</summary>
    /// <param name="text">The piece file.</param>
    /// <param name="isLaid">True to lay it out on stock as well.</param>
    public static string Of(string text, bool isLaid = false)
    {
        (PieceSource? source, ImmutableArray<SourceFinding> findings) = PieceSource.Read(text, null, null);
        if (source is null) return "refused: " + string.Join('\n', findings.Select(f => Words(f.Finding)));
        source = source with { Hash = "", TextHash = "" };
        SetPiece set = source.SetOut();
        var all = new StringBuilder();
        void Say(string line) => all.Append(line).Append('\n');
        Say(string.Create(CultureInfo.InvariantCulture, $"{set.Piece.Name} {set.Piece.About} {set.Piece.Unit} {set.Grid.Step}"));
        foreach (QuantityKey key in set.Worked.Order) Say($"{key} {set.Worked.Values[key].Quantity.Name} {set.Worked[key]}");
        foreach (Part p in set.Parts) Say($"{p.Key} {p.Mark} {p.Name} {p.Role} {p.Material} {p.Length.AsCut} {p.Width.AsCut} {p.Thickness} {p.Count} {p.Grain} {set.EdgesOf(p)} {string.Join(' ', p.Placements)}");
        foreach (Joint j in set.Joints) Say($"{j}");
        foreach (HardwareItem h in set.Hardware) Say($"{h}");
        foreach (Machining m in set.Machinings) Say($"{m.Part} {m.Words} {string.Join(' ', m.Figures)}");
        foreach (AssemblyStep s in set.Steps) Say($"{s.Stage} {s.Words} {string.Join(' ', s.Parts)} {s.Diagonal}");
        foreach (Gap g in set.Gaps) Say($"{g.Key} {g.Name} {g.Least} {g.Most}");
        foreach (CutOut c in set.CutOuts) Say($"{c}");
        foreach (Bore b in set.Bores) Say($"{b}");
        foreach (SetOpening o in set.Openings) Say($"{o}");
        if (!isLaid || set.IsStopped)
        {
            foreach (Finding f in set.Findings) Say(Words(f));
            return all.ToString();
        }
        Plan plan = new PlanMaker(SheetSolvers.Default, BoardSolvers.Default).Make(source, LayoutEffort.Steps(new(2000, 1)));
        return all.Append(PlaceInText().Replace(Encoding.UTF8.GetString(PlanJson.Write(plan)), "")).ToString();
    }

    private static string Words(Finding finding) => $"{finding.Code} {finding.Severity} {finding.Key} {finding.Words} {finding.Remedy}";

    [GeneratedRegex("\"(line|column)\": [0-9]+,?")]
    private static partial Regex PlaceInText();
}
