using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Shop.Documents;
using Setout.Shop.Drawings;
using Setout.Shop.Plans;
using Setout.Workbench.Changing;
using Setout.Workbench.Keeping;
using Setout.Workbench.Pieces;
using Setout.Workbench.Shell;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.States;

/// <summary>A state that is looked at; nothing can be changed on it.</summary>
/// <param name="Number">Its own.</param>
/// <param name="Title">What made it and when.</param>
/// <param name="Place">Where it stands, in words.</param>
/// <param name="Wide">Its front, for a desk; empty where there is nothing to draw.</param>
/// <param name="Narrow">The same for a phone.</param>
/// <param name="Notes">What is wrong with its text.</param>
/// <param name="Against">What going back would change, in lines; empty where that cannot be said.</param>
/// <param name="Text">Its text.</param>
/// <param name="GoBack">The form that goes back to it; null where the piece stands there, or was put away.</param>
public sealed record ShownState(long Number, string Title, string Place, string Wide, string Narrow, ImmutableArray<Note> Notes, ImmutableArray<Phrase> Against, string Text, FormHead? GoBack)
{
    private const int MostLines = 24;
    private static readonly PaperBox s_wide = new(200, 116);

    internal static ShownState Of(PlacedState placed, Document document, IDocumentStore store, KeptPieces pieces, SetPiece? now, FormHead goBack, TimeProvider time)
    {
        DocumentState state = placed.Line.State;
        string text = store.TextOf(document.Id, state.Number) ?? "";
        PieceFile? file = pieces.With(document.Name, text);
        SetPiece? then = file?.Source?.SetOut();
        bool isNow = placed.Place == StatePlace.Now;
        string Drawn(Func<SetPiece, ElevationDrawing> draw) => then is { IsStopped: false } set && PieceView.Has(set) ? SvgWriter.Write(draw(set).Scene, SvgOptions.Inline) : "";
        return new(state.Number, $"{state.Step}, {When.Of(state.At, time)}", StatesView.Words(placed), Drawn(p => PieceView.Draw(p, Views.Front, s_wide)), Drawn(p => PieceView.DrawFew(p, Views.Front, SetOut.DrawingView.Phone, "")),
            file is null ? [] : [.. file.Findings.Select(f => Note.Of(f.Finding, file.FileOf(f.Text)))],
            isNow || then is null || now is null ? [] : Lines(now, then), text, isNow || document.Line.IsPutAway ? null : goBack);
    }

    private static ImmutableArray<Phrase> Lines(SetPiece now, SetPiece then)
    {
        List<string> lines = [.. RippleLines.Of(now, then, Ripple.Of(now, then)).Where(l => !l.StartsWith("      through", StringComparison.Ordinal)).Select(l => l.Trim())];
        if (lines.Count > MostLines) lines = [.. lines.Take(MostLines), $"and {lines.Count - MostLines} more"];
        return [.. lines.Select(Figures.Phrase)];
    }
}
