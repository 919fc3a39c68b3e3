using System.ComponentModel;
using Setout.Files;
using Setout.Shop.Noting;
using Setout.Shop.Plans;
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
        if (source.Log.Entries.FirstOrDefault(e => e.Id == settings.Entry) is MarkEntry { Left.IsEmpty: false }) Told.Unread(terminal, files, source);
        var made = NotedVoid.Of(source, settings.Entry, $"'{files.LogName}'", Commands.Entry.NewId(), Commands.Entry.At(terminal));
        if (made.Fault is { } fault)
            throw new UsageException(fault.Words, made.First is { } first ? $"Void that one first: setout void {(first.By.Name == source.FileName ? files.Piece : files.Beside(first.By.Name))} {first.Entry.Id}." : fault.Remedy);
        (VoidEntry entry, PieceSource mended) = (made.Entry!, made.After!);
        // A run of several pieces together is taken back in each of their logs.
        PieceFiles[] logs = [files, .. made.With.Select(n => files.Other(n, settings.Shop)).Where(f => f.ReadLog().Entries.Any(e => e.Id == settings.Entry))];
        PieceFiles.Append([.. logs.Select(l => (l, (LogEntry)entry))]);
        terminal.Out.WriteLine($"void: {FactSentences.Named(source.Log.Entries.First(e => e.Id == settings.Entry), source.Log, source.SetOut())}{(logs.Length > 1 ? $" in {string.Join(" and ", logs.Select(l => Path.GetFileName(l.LogName)))}" : "")}; entry {entry.Id}");
        Told.Moved(terminal.Out, files, source.SetOut(), mended.SetOut(), mended.ShopInHand);
        return ExitCode.Fine;
    }
}
