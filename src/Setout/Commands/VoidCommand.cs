using System.Collections.Immutable;
using System.ComponentModel;
using Setout.Core.Measures;
using Setout.Core.Workings;
using Setout.Files;
using Setout.Shop.Plans;
using Setout.Shop.Rack;
using Setout.Shop.Texts;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary><c>setout void FILE ENTRY</c>: takes an entry back by a later one.</summary>
internal sealed class VoidCommand : Command<VoidCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : PieceSettings
    {
        /// <summary>The entry.</summary>
        [CommandArgument(1, "<ENTRY>")]
        [Description("The id of the entry, as the command that made it said.")]
        public string Entry { get; set; } = "";
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        PieceFiles files = settings.Files;
        if (Told.Source(terminal, files) is not { } source) return ExitCode.Findings;
        LogEntry? voided = source.Log.Entries.FirstOrDefault(e => e.Id == settings.Entry);
        if (voided is null)
            throw new UsageException($"There is no entry '{settings.Entry}' in '{files.Log}'.", NearestWord.Of(settings.Entry, source.Log.Entries.Select(e => e.Id)) is { } guess ? $"Did you mean '{guess}'?" : "");
        if (voided is not VoidEntry && !source.Log.Standing.Contains(voided)) throw new UsageException($"Entry '{settings.Entry}' is void already.", "");
        if (voided is MarkEntry { Left.IsEmpty: false }) Told.Unread(terminal, files, source);
        // A run of several pieces together is taken back in each of their logs.
        (PieceFiles Files, ShopPiece? Piece)[] with = [.. Act(source.Log, voided).With.Select(n => (PieceFiles.Of(files.Beside(n), settings.Shop), source.Others.FirstOrDefault(o => o.Name == n)))];
        foreach (ShopPiece piece in with.Select(w => w.Piece).OfType<ShopPiece>().Prepend(source.InShop))
        {
            if (piece.Log.Standing.OfType<MarkEntry>().FirstOrDefault(e => e.Id == settings.Entry) is not { } mark || source.Ledger.Built(piece, mark).FirstOrDefault(b => b.Entry.Id != settings.Entry) is not { } built) continue;
            throw First(files, source, built, $"goes on with wood that '{settings.Entry}' left{(built.Entry.Run is { } number ? $": it marks run {number}" : "")}");
        }
        var entry = new VoidEntry(Commands.Entry.NewId(), Commands.Entry.At(terminal), settings.Entry);
        PieceSource mended = source with { Log = new(source.Log.Entries.Add(entry)) };
        // An entry that counts again wants the wood that it took.
        if (voided is VoidEntry && mended.Ledger.TakenTwice.FirstOrDefault(t => t.By.Length > source.Ledger.TakersOf(t.Blank.Name).Count()) is { Blank: { } blank, By: var takers })
        {
            TakenByPiece other = takers.First(t => t.By.Name != source.FileName || source.Log.Standing.Contains(t.Entry));
            throw First(files, source, new(other.By, other.Entry), $"has taken '{blank.Name}' since, which would be taken twice");
        }
        string[] logs = [files.Log, .. with.Select(w => w.Files.Log).Where(l => new LogFile(l).Read().Entries.Any(e => e.Id == settings.Entry))];
        foreach (string log in logs) LogFile.Append(log, entry);
        terminal.Out.WriteLine($"void: {settings.Entry}{(logs.Length > 1 ? $" in {string.Join(" and ", logs.Select(l => Path.GetFileName(l)))}" : "")}; entry {entry.Id}");
        Told.Moved(terminal.Out, files, source.SetOut(), mended.SetOut(), mended.ShopInHand);
        return ExitCode.Fine;
    }

    // What was done, also where a voiding of it is voided; where nothing was, an empty act.
    private static MarkEntry Act(Log log, LogEntry voided)
    {
        LogEntry? at = voided;
        // Entries of a log that a hand wrote may name each other in a ring.
        for (int i = 0; at is VoidEntry of && i < log.Entries.Length; i++) at = log.Entries.FirstOrDefault(e => e.Id == of.Entry);
        return at as MarkEntry ?? new("", "", Progress.Cut, [], ImmutableDictionary<QuantityKey, ExactLength>.Empty);
    }

    // Of whichever piece: an entry that stands in the way is voided in its own log.
    private static UsageException First(PieceFiles files, PieceSource source, LoggedMark other, string why)
    {
        bool isOwn = other.By.Name == source.FileName;
        return new($"Entry '{other.Entry.Id}'{(isOwn ? "" : $" of {other.By.Spoken(source.Piece)}")} {why}; nothing was written.", $"Void that one first: setout void {(isOwn ? files.Piece : files.Beside(other.By.Name))} {other.Entry.Id}.");
    }
}
