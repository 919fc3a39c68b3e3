using System.Collections.Immutable;
using Setout.Core.Workings;
using Setout.Workbench.Changing;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;

namespace Setout.Workbench.PieceTexts;

/// <summary>The text of a piece, to be read and changed.</summary>
/// <param name="Name">The piece.</param>
/// <param name="Back">Its drawing.</param>
/// <param name="Text">The text as it stands.</param>
/// <param name="Form">Where it is sent.</param>
/// <param name="Notes">What is wrong with it, by line.</param>
public sealed record TextView(string Name, string Back, string Text, FormHead Form, ImmutableArray<Note> Notes)
{
    /// <summary>What leads back.</summary>
    public string BackWords { get; init; } = "Back to the drawing";

    /// <summary>How the text goes with its page.</summary>
    public string About { get; init; } = "The drawing and this text are two ways to one thing: whatever is changed here is changed there. Remarks after a # are kept.";

    /// <summary>What the text is.</summary>
    public string Label { get; init; } = "The piece file";

    private const int LeastRows = 12, MostRows = 60;

    /// <summary>How many lines are shown at once.</summary>
    public int Rows => Math.Clamp(Text.Count(c => c == '\n') + 2, LeastRows, MostRows);

    internal static TextView Of(PieceFile file)
    {
        string path = Links.Stage(file.Name, "");
        // What is wrong with the log or the shop is no matter of this text.
        IEnumerable<Finding> findings = file.Findings.Where(f => f.Text == Shop.Plans.SourceText.Piece).Select(f => f.Finding);
        return new(file.Name, path, file.Document.Text, new(Links.Text(file.Name), ChangeForm.NewId(), file.Document.Revision, Links.Text(file.Name)), [.. findings.Select(f => Note.Of(f, file.FileName))]);
    }
}
