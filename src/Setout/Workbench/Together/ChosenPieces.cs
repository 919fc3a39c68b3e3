using System.Collections.Immutable;
using Setout.Core.Measures.Text;
using Setout.Core.Workings;
using Setout.Drawing.Documents;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Together;

/// <summary>Several pieces that an address names, read as one.</summary>
/// <param name="Names">By their documents, in the order named.</param>
/// <param name="Files">Their texts.</param>
/// <param name="Source">All of them as one.</param>
internal sealed record ChosenPieces(ImmutableArray<string> Names, ImmutableArray<PieceFile> Files, PieceSource Source)
{
    // Several plans at once are several searches; more pieces than this are no winter's work.
    internal const int MostPieces = 12;

    // In signs: with rule set and hash it is one line of a sheet.
    private const int MostOfAFoot = 45;

    /// <summary>Under which name their plan lies on the desk.</summary>
    public string DeskName => NameOf(Names);

    /// <summary>What a plan of them stands on: the revision of each, or of none where that would fill the foot of a sheet, and when the last of them was changed, by its text or at the bench.</summary>
    public string Stand
    {
        get
        {
            string each = string.Join(", ", Files.Select(f => $"{f.Document.Revision} of {f.Source!.Piece.Name}")), last = EntryTime.Say(Files.Max(f => f.ChangedAt).ToLocalTime().DateTime);
            return each.Length > MostOfAFoot ? $"from the pieces as they stood at {last}" : $"from revision {each}, as they stood at {last}";
        }
    }

    /// <summary>The paper that sheets of them are printed on where nobody names one.</summary>
    public Paper Paper => Source.Piece.Unit == LengthUnit.Inch ? Paper.Letter : Paper.A4;

    // No piece has a slash in its name.
    internal static string NameOf(IEnumerable<string> names) => "/" + string.Join('/', names);

    /// <summary>Reads them; else the page that says why they cannot be broken down together, or asks for more of them.</summary>
    public static (ChosenPieces? Chosen, IResult? Instead) Of(string[]? asked, KeptPieces pieces, PlanDesk desk)
    {
        ImmutableArray<string> names = [.. (asked ?? []).Where(n => n.Length > 0).Distinct(StringComparer.Ordinal).Take(MostPieces)];
        if (names.FirstOrDefault(n => pieces.Read(n) is null) is { } unknown) return (null, Pages.Show<UnknownPage>(UnknownView.Piece(unknown, pieces.Names()), StatusCodes.Status404NotFound));
        ImmutableArray<PieceFile> files = [.. names.Select(pieces.Read).OfType<PieceFile>()];
        IResult Refused(ImmutableArray<Note> notes) => Pages.Show<TogetherPage>(TogetherView.Refused(pieces, names, notes));
        if (files.Length < 2) return (null, Pages.Show<TogetherPage>(TogetherView.Choosing(pieces, names)));
        if (files.FirstOrDefault(f => f.Source is null) is { } unread) return (null, Refused([.. unread.Findings.Select(f => Note.Of(f.Finding, unread.FileOf(f.Text)))]));
        foreach (PieceFile file in files)
        {
            ImmutableArray<Finding> stops = [.. desk.SetOut(file.Name, file.Source!).Findings.Where(f => f.Severity == Severity.Stop)];
            if (!stops.IsEmpty) return (null, Refused([.. stops.Select(f => Note.Of(f, file.FileName)).Select(n => n.Place == NotePlace.None ? n with { Place = new(file.Name, Links.Stage(file.Name, "")) } : n)]));
        }
        (PieceSource? source, Finding? refusal) = PiecesTogether.Of(files.Select(f => (f.FileName, f.Source!)));
        return source is null ? (null, Refused([Note.Of(refusal!, "")])) : (new(names, files, source), null);
    }

    /// <summary>Those that a form names; null where they cannot be broken down together any more.</summary>
    public static ChosenPieces? Sent(IEnumerable<string?> named, KeptPieces pieces)
    {
        PieceFile?[] files = [.. named.OfType<string>().Take(MostPieces).Select(pieces.Read)];
        return files.Length > 1 && files.All(f => f?.Source is not null) && PiecesTogether.Of(files.Select(f => (f!.FileName, f.Source!))).Source is { } source
            ? new([.. files.Select(f => f!.Name)], [.. files.OfType<PieceFile>()], source) : null;
    }
}
