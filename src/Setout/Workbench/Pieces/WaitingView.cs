using System.Collections.Immutable;
using Setout.Workbench.Changing;
using Setout.Workbench.Shell;

namespace Setout.Workbench.Pieces;

/// <summary>Layouts that are being worked out.</summary>
/// <param name="Name">By which news of them come.</param>
/// <param name="Found">How far they have come, in words.</param>
/// <param name="Enough">What goes along when the best so far is taken.</param>
/// <param name="Page">The page that waits.</param>
public sealed record WaitingView(string Name, string Found, FormHead Enough, string Page)
{
    internal static WaitingView Of(PlanDesk desk, OpenPiece piece, string page)
    {
        ImmutableDictionary<string, string> all = desk.LayingOut;
        string begun = PlanDesk.InHand(piece.Name), name = !all.ContainsKey(piece.Name) && all.ContainsKey(begun) ? begun : piece.Name;
        return new(name, all.GetValueOrDefault(name, "") is { Length: > 0 } found ? found : "just begun",
            new(Links.Stage(piece.Name, "enough"), ChangeForm.NewId(), piece.File.Document.Revision, page), page);
    }
}
