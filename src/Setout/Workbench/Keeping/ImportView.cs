using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Workbench.Changing;

namespace Setout.Workbench.Keeping;

/// <summary>What an import would do. The texts go along in the form, byte for byte, so that nothing is kept of an import that is not made.</summary>
/// <param name="Lines">File by file.</param>
/// <param name="Sum">How many of each, in words.</param>
/// <param name="IsEmpty">Whether nothing would change.</param>
/// <param name="Seen">Tells this list from any other.</param>
/// <param name="Texts">Each text with the name of its file.</param>
/// <param name="IsOther">Whether something was changed since the list was seen.</param>
public sealed record ImportView(ImmutableArray<ImportLine> Lines, string Sum, bool IsEmpty, string Seen, ImmutableArray<(string File, string Text)> Texts, bool IsOther)
{
    /// <summary>An id for the change; a new one by default.</summary>
    public string Change { get; init; } = ChangeForm.NewId();

    /// <summary>Why it was not made just now; null where it was not tried.</summary>
    public Finding? Fault { get; init; }

    internal static ImportView Of(ImportPlan plan, ImmutableArray<IncomingText> texts, bool isOther) =>
        new(plan.Lines, plan.ToString(), plan.IsEmpty, SeenOf(plan), [.. texts.Where(t => t.Text is not null).Select(t => (t.File, Convert.ToBase64String(Encoding.UTF8.GetBytes(t.Text!))))], isOther);

    /// <summary>Tells one list from another.</summary>
    internal static string SeenOf(ImportPlan plan) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', plan.Lines.Where(l => l.Act != ImportAct.Refused).Select(l => $"{l.File}: {l.Act}: {l.Words}")))))[..16];
}
