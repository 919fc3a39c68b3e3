using System.Collections.Immutable;
using Setout.Core.Fit;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Fits;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Workbench.Noting;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Fitting;

/// <summary>How many gaps of a bank, or of the piece, come right.</summary>
/// <param name="Name">Which.</param>
/// <param name="Now">As it stands.</param>
/// <param name="Then">Once what is to be measured first has been; empty where that changes nothing.</param>
/// <param name="All">The chance that all do at once.</param>
public sealed record ChanceLine(Phrase Name, string Now, string Then, string All);

/// <summary>Something to measure first.</summary>
/// <param name="Name">What.</param>
/// <param name="Href">Its working.</param>
/// <param name="With">The instrument, in words.</param>
/// <param name="Brings">What it brings, in words.</param>
public sealed record MeasureLine(Phrase Name, string Href, string With, string Brings)
{
    /// <summary>To type it right there; null where it cannot be read.</summary>
    public ReadForm? Form { get; init; }
}

/// <summary>A gap among those alike.</summary>
/// <param name="Key">Its key, as on the drawing.</param>
/// <param name="Name">Its name.</param>
/// <param name="Href">Its working.</param>
public sealed record GapLink(string Key, string Name, string Href);

/// <summary>Gaps that weigh on the chance of the whole.</summary>
/// <param name="Name">Which.</param>
/// <param name="Href">The working of the first.</param>
/// <param name="Words">How much they weigh, and what moves them most.</param>
/// <param name="Then">The chance of each once what is to be measured first has been; empty where that changes nothing.</param>
public sealed record WeightLine(string Name, string Href, Phrase Words, string Then);

/// <summary>A row of the drawing in words.</summary>
/// <param name="Name">The gaps.</param>
/// <param name="Chances">The chance now and then.</param>
/// <param name="Words">Its figures.</param>
/// <param name="Cause">What moves it most; empty where nothing does.</param>
/// <param name="Source">Where the window comes from.</param>
/// <param name="IsOut">Whether it stands outside its window: in red pencil, and the words say so.</param>
/// <param name="Links">Each gap with its working.</param>
public sealed record GapLine(string Name, string Chances, Phrase Words, Phrase Cause, Phrase Source, bool IsOut, ImmutableArray<GapLink> Links);

/// <summary>The stage of fitting: what will fit, before it is cut.</summary>
/// <param name="Head">The head of the piece.</param>
/// <param name="Notes">What stops the plan.</param>
/// <param name="Whole">The whole piece; null when there is no gap.</param>
/// <param name="Banks">Each bank.</param>
/// <param name="Measure">What to measure first, the most useful first.</param>
/// <param name="Allowances">What is kept and what would be best, a line each.</param>
/// <param name="Desk">Drawings for a desk.</param>
/// <param name="Phone">The same for a phone.</param>
/// <param name="Gaps">The drawing as text.</param>
public sealed record FittingView(
    PieceHead Head, ImmutableArray<Note> Notes, ChanceLine? Whole, ImmutableArray<ChanceLine> Banks, ImmutableArray<MeasureLine> Measure,
    ImmutableArray<Phrase> Allowances, ImmutableArray<string> Desk, ImmutableArray<string> Phone, ImmutableArray<GapLine> Gaps)
{
    /// <summary>What the last change moved.</summary>
    public MovedView? Moved { get; init; }

    /// <summary>What weighs most on the chance of the whole, the most first.</summary>
    public ImmutableArray<WeightLine> Weights { get; init; } = [];

    /// <summary>Whether another allowance would suit this shop better.</summary>
    public bool HasBetterAllowance { get; init; }

    private const int MostWeights = 3;

    // As high as it takes: a page on a screen has no foot.
    private static readonly GapPaper s_wide = new(180, 4000), s_narrow = new(92, 4000);

    /// <summary>Makes the page.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="report">What will fit; null for a piece that is stopped.</param>
    internal static FittingView Of(OpenPiece piece, FitReport? report)
    {
        SetPiece set = piece.Set;
        var head = PieceHead.Of(piece, "fit");
        if (report is null) return new(head, Note.Of(set.Findings.Where(f => f.Severity == Severity.Stop), set, piece.Name, piece.File.FileName), null, [], [], [], [], [], []);
        if (report.Gaps.Length == 0) return new(head, [], null, [], [], [], [], [], []);
        ImmutableArray<AlikeGaps> alike = AlikeGaps.Of(report);
        ImmutableArray<string> Drawn(GapPaper paper) => [.. GapPictures.Of(set, alike, paper).Select(s => SvgWriter.Write(s, SvgOptions.Inline))];
        return new(head, [], Line(Phrase.Of("the whole piece"), report.Whole), [.. report.Groups.Select(g => Line(Figures.Phrase(FitLines.OpeningName(set, g.Key)), g))],
            [.. report.Measure.Select((m, i) => Line(piece, report, m) with { Form = ReadForm.Of(piece, [m.Key], Links.Stage(piece.Name, "fit"), $"measure-{i}", isShort: true, m.Instrument) })], [.. FitLines.Allowances(set, report, hasKeys: false).Select(Figures.Phrase)], Drawn(s_wide), Drawn(s_narrow), [.. alike.Select(a => Line(piece, a))])
        {
            Moved = MovedView.Of(piece, Links.Stage(piece.Name, "fit")),
            Weights = [.. WeightsOf(piece, alike)],
            HasBetterAllowance = report.Allowances.Any(a => a.Best != a.Kept),
        };
    }

    // By how many gaps come out wrong on the average: that adds up, whatever the gaps have to do with one another.
    private static IEnumerable<WeightLine> WeightsOf(OpenPiece piece, ImmutableArray<AlikeGaps> alike) =>
        alike.Select(a => (Alike: a, Wrong: a.Gaps.Sum(g => 1 - g.Chance.Share.Value))).Where(a => a.Wrong >= 0.01).OrderByDescending(a => a.Wrong).Take(MostWeights).Select(a =>
        {
            GapFit fit = a.Alike.First;
            string cause = fit.Largest.FirstOrDefault() is { Cause: { } most } ? $"; moved most by: {most.Words}" : "", then = FitLines.Percent(fit.ChanceMeasured);
            return new WeightLine(a.Alike.Name, Links.Size(piece.Name, fit.Gap.Key.Text), Figures.Phrase($"{Held(FitLines.Wrong(a.Alike.Gaps))}{cause}"),
                then == FitLines.Percent(fit.Chance) ? "" : Held($"{(a.Alike.Gaps.Length == 1 ? "" : "each ")}{FitLines.Percent(fit.Chance)} now, {then} then"));
        });

    private static ChanceLine Line(Phrase name, GroupFit group)
    {
        (string now, string then) = (Held(FitLines.Right(group.Right, group)), Held(FitLines.Right(group.RightMeasured, group)));
        return new(name, now, then == now ? "" : then, Held(FitLines.AllAtOnce(group)));
    }

    private static MeasureLine Line(OpenPiece piece, FitReport report, MeasureFirst reading)
    {
        string waits = reading.Kind == MeasureKind.Awaited ? " Parts wait for it." : "";
        return new(Figures.Phrase(reading.Name), Links.Size(piece.Name, reading.Key.Text), $"with a {reading.Instrument}",
            Held($"{FitLines.Brings(reading)}; {FitLines.RightThen(report, reading)} of the piece then.{waits}"));
    }

    /// <summary>The sign of a percentage goes to no line of its own.</summary>
    private static string Held(string words) => words.Replace(" %", "\u00A0%", StringComparison.Ordinal);

    private static GapLine Line(OpenPiece piece, AlikeGaps alike)
    {
        GapFit fit = alike.First;
        return new(alike.Name, Held(GapPictures.Chances(fit.Chance, fit.ChanceMeasured)), Figures.Phrase(GapPictures.Words(piece.Set, fit)),
            fit.Largest.FirstOrDefault() is { Cause: { } cause } ? Figures.Phrase(cause.Words) : Phrase.Empty, Figures.Phrase(fit.Gap.Source), GapPictures.OutBy(fit) is not null,
            [.. alike.Gaps.Select(g => new GapLink(g.Gap.Key.Text, g.Gap.Name, Links.Size(piece.Name, g.Gap.Key.Text)))]);
    }
}
