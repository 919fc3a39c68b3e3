using Setout.Core.Workings;
using Setout.Shop.Documents;
using Setout.Shop.Facts;

namespace Setout.Workbench.Changing;

/// <summary>Makes changes in the store, of whatever documents and logs, and tells open windows.</summary>
/// <param name="store">Where the texts and facts are kept.</param>
/// <param name="watch">Told of what was changed.</param>
/// <param name="time">The clock.</param>
internal sealed class ChangeMaker(IDocumentStore store, ChangeWatch watch, TimeProvider time)
{
    /// <summary>A change that was made, or was made already.</summary>
    public static ChangeOutcome Done { get; } = new(null, false);

    /// <summary>The time now, as changes and entries carry it.</summary>
    public string At => time.GetUtcNow().ToString("yyyy-MM-ddTHH:mm:ss.fffZ", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The time here with its offset, as facts are dated: to the thousandth, so that two of one second are told apart.</summary>
    public string Here => time.GetLocalNow().ToString("yyyy-MM-ddTHH:mm:ss.fffzzz", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>True when the change of a form was made already: the form was sent twice.</summary>
    public bool IsMade(ChangeForm form) => store.Made(form.Id) is not null;

    /// <summary>Makes a change of one document.</summary>
    /// <param name="about">What a fault is about: the name of a piece, or <c>shop</c>.</param>
    /// <param name="form">What every form sends along.</param>
    /// <param name="change">The change.</param>
    public ChangeOutcome Make(string about, ChangeForm form, DocumentChange change) => Make(about, Change.Of(form.Id, At, change));

    /// <summary>Makes a change, whole or not at all.</summary>
    /// <param name="about">What a fault is about: the name of a piece, or <c>shop</c>.</param>
    /// <param name="change">The change.</param>
    public ChangeOutcome Make(string about, Change change) => Taken(about, change).Outcome;

    /// <summary>Makes a change and gives the last of its documents as it left it; null where it has none or was not made.</summary>
    /// <param name="about">What a fault is about: the name of a piece, or <c>shop</c>.</param>
    /// <param name="change">The change.</param>
    public (Document? Document, ChangeOutcome Outcome) Taken(string about, Change change)
    {
        try
        {
            ChangeAnswer answer = store.Make(change);
            watch.Tell();
            return answer is ChangeTaken taken ? (taken.Documents.LastOrDefault(), Done) : (null, new(((ChangeRefused)answer).Fault, ((ChangeRefused)answer).IsConflict));
        }
        catch (FactStoreException failed)
        {
            // A full disk, a folder that cannot be written to: told on the page, with what was typed still in its field.
            return (null, new(failed.Fault with { Key = about }, false));
        }
    }

    /// <summary>A change that is not made.</summary>
    public static ChangeOutcome Refuse(string code, string words, string remedy) => new(new(code, Severity.Stop, "", words, remedy), false);
}
