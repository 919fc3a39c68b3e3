using System.Collections.Immutable;
using Setout.Workbench.Changing;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Pieces;

/// <summary>Layouts that are being worked out.</summary>
/// <param name="Name">By which news of them come.</param>
/// <param name="Found">How far they have come, in words.</param>
/// <param name="Enough">What goes along when the best so far is taken; null where that would be another plan than the one that is cut by.</param>
/// <param name="Page">The page that waits.</param>
/// <param name="Anew">The page of what is left, planned anew, for whoever does not wait for the plan that was begun.</param>
public sealed record WaitingView(string Name, string Found, FormHead? Enough, string Page, string Anew)
{
    internal static WaitingView Of(PlanDesk desk, OpenPiece piece, string page) =>
        Of(desk, piece.Name, new(Links.Stage(piece.Name, "enough"), ChangeForm.NewId(), piece.File.Document.Revision, page), page, Links.Stage(piece.Name, "break-down") + "?plan=anew");

    /// <summary>What is waited for by the name it lies on the desk under.</summary>
    internal static WaitingView Of(PlanDesk desk, string name, FormHead enough, string page, string anew)
    {
        ImmutableDictionary<string, string> all = desk.LayingOut;
        bool isBegun = !all.ContainsKey(name) && all.ContainsKey(PlanDesk.InHand(name));
        string waited = isBegun ? PlanDesk.InHand(name) : name;
        return new(waited, all.GetValueOrDefault(waited, "") is { Length: > 0 } found ? found : "just begun", isBegun ? null : enough, page, anew);
    }
}
