using System.ComponentModel;
using Setout.Shop.Documents;
using Setout.Shop.Facts;
using Setout.Store;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary>What commands on the workbench's data take.</summary>
internal class DataSettings : CommandSettings
{
    /// <summary>The data folder.</summary>
    [CommandOption("--data <DIR>")]
    [Description("The data folder; without it that of SETOUT_DATA, else the usual place of this system.")]
    public string? Data { get; set; }

    /// <summary>The database in it.</summary>
    public string Database => Path.Combine(DataPlace.Find(Data), DataFolder.DatabaseName);
}

/// <summary>What a store refuses, as the command line tells it.</summary>
internal static class StoreRefusal
{
    /// <summary>The data folder, for this program alone.</summary>
    /// <param name="named">By whoever started the program; null where nobody did.</param>
    /// <exception cref="UsageException">It cannot be used, or another program has it open.</exception>
    public static DataFolder Open(string? named) => Of(() =>
    {
        string place = DataPlace.Find(named);
        (DataFolder? folder, FolderUser? user) = DataFolder.Open(place, TimeProvider.System);
        return folder ?? throw user!.Refusal(place);
    });

    /// <summary>Does something with a store.</summary>
    /// <exception cref="UsageException">The store cannot be used.</exception>
    public static T Of<T>(Func<T> use)
    {
        try
        {
            return use();
        }
        catch (FactStoreException refused)
        {
            throw new UsageException(refused.Fault.Words, refused.Fault.Remedy);
        }
    }
}

/// <summary><c>setout import PATH...</c>: texts into the workbench.</summary>
internal sealed class ImportCommand : Command<ImportCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : DataSettings
    {
        /// <summary>Where the texts are.</summary>
        [CommandArgument(0, "<PATH>")]
        [Description("A folder of piece files, logs and a shop file, or one such file; several may be named.")]
        public string[] Paths { get; set; } = [];

        /// <summary>Only say what it would do.</summary>
        [CommandOption("--dry-run")]
        [Description("Say what would be added, changed and left, and change nothing.")]
        public bool DryRun { get; set; }
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken) => StoreRefusal.Of(() =>
    {
        var terminal = (Terminal)context.Data!;
        using (DataFolder folder = StoreRefusal.Open(settings.Data))
        {
            ImportPlan plan = ImportPlan.Of(folder.Database, [.. settings.Paths.SelectMany(p => TextFolder.Read(p))]);
            foreach (ImportLine line in plan.Lines)
            {
                (line.Fault is null ? terminal.Out : terminal.Error).WriteLine($"  {line.Act.ToString().ToLowerInvariant()}: {line.File}: {line.Words}");
                if (line.Fault is { Remedy.Length: > 0 } fault) terminal.Error.WriteLine($"    {fault.Remedy}");
            }
            if (!settings.DryRun && !plan.IsEmpty && folder.Database.Make(plan.ToChange(Entry.NewId(), Entry.At(terminal), string.Join(", ", settings.Paths))) is ChangeRefused refused)
                throw new UsageException(refused.Fault.Words, refused.Fault.Remedy);
            terminal.Out.WriteLine($"{plan}{(settings.DryRun ? "; nothing was changed" : $" in {folder.Path}")}");
            return plan.Lines.Any(l => l.Fault is not null) ? ExitCode.Findings : ExitCode.Fine;
        }
    });
}

/// <summary><c>setout export DIR</c>: all texts of the workbench as files.</summary>
internal sealed class ExportCommand : Command<ExportCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : DataSettings
    {
        /// <summary>Where to.</summary>
        [CommandArgument(0, "<DIR>")]
        [Description("A folder that is new or empty.")]
        public string Folder { get; set; } = "";
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken) => StoreRefusal.Of(() =>
    {
        var terminal = (Terminal)context.Data!;
        using ShopDatabase database = ShopDatabase.OpenToRead(settings.Database);
        ShopTexts texts = ShopTexts.Of(database);
        TextFolder.Write(texts, settings.Folder);
        terminal.Out.WriteLine($"{texts} in {Path.GetFullPath(settings.Folder)}");
        return ExitCode.Fine;
    });
}

/// <summary><c>setout backup</c>: everything in one file.</summary>
internal sealed class BackupCommand : Command<DataSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, DataSettings settings, CancellationToken cancellationToken) => StoreRefusal.Of(() =>
    {
        var terminal = (Terminal)context.Data!;
        if (!File.Exists(settings.Database)) throw new UsageException($"Nothing is kept in '{Path.GetDirectoryName(settings.Database)}' yet.", "Name the data folder with --data.");
        (BackupFile file, StoreCounts counts) = new Backups(settings.Database, TimeProvider.System).Make(BackupReason.Asked);
        terminal.Out.WriteLine($"{file.Path}\n{counts}");
        return ExitCode.Fine;
    });
}

/// <summary><c>setout restore FILE</c>: a backup in the place of what is there.</summary>
internal sealed class RestoreCommand : Command<RestoreCommand.Settings>
{
    /// <summary>What it takes.</summary>
    internal sealed class Settings : DataSettings
    {
        /// <summary>The backup.</summary>
        [CommandArgument(0, "<FILE>")]
        [Description("A backup; what is there now is backed up first.")]
        public string Backup { get; set; } = "";
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken) => StoreRefusal.Of(() =>
    {
        var terminal = (Terminal)context.Data!;
        Restored restored = DataFolder.Restore(DataPlace.Find(settings.Data), settings.Backup, TimeProvider.System);
        terminal.Out.WriteLine($"restored: {restored.Counts}{(restored.Kept is { } kept ? $"; what was there is kept in {kept}" : "")}");
        return ExitCode.Fine;
    });
}
