using System.Reflection;
using Setout.Core.SettingOut.Whole;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary>What a command answers to the shell.</summary>
internal static class ExitCode
{
    /// <summary>All is well.</summary>
    public const int Fine = 0;

    /// <summary>Findings stop the plan.</summary>
    public const int Findings = 1;

    /// <summary>Bad usage or an unreadable file.</summary>
    public const int Usage = 2;

    /// <summary>Our fault.</summary>
    public const int Fault = 4;

    /// <summary>Cancelled.</summary>
    public const int Cancelled = 130;
}

/// <summary>A usage error or a file that cannot be used, told to the person in one message.</summary>
internal sealed class UsageException(string words, string remedy) : Exception(words)
{
    /// <summary>What to do instead.</summary>
    public string Remedy { get; } = remedy;

    /// <summary>The refusal that a finding is.</summary>
    public static UsageException Of(Core.Workings.Finding fault) => new(fault.Words, fault.Remedy);
}

/// <summary>The command line: which words there are, and what each failure answers.</summary>
public static class SetoutProgram
{
    /// <summary>The commands, for looking up a mistyped word.</summary>
    private static readonly string[] s_commands = ["plan", "check", "parts", "why", "record", "mark", "void", "allow", "fit", "square", "serve", "import", "export", "backup", "restore", "doctor"];

    /// <summary>Version of the program, the rule set and the texts.</summary>
    public static string Version
    {
        get
        {
            string program = typeof(SetoutProgram).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "0";
            return $"setout {program}, rule set {PieceSetOut.RuleSet}, piece file {PieceText.Version}, log {LogText.Version}, shop file {ShopText.Version}, plan.json {Plan.Version}";
        }
    }

    /// <summary>Runs one command.</summary>
    public static async Task<int> RunAsync(string[] words, Terminal terminal)
    {
        if (words is ["--version" or "-v"])
        {
            await terminal.Out.WriteLineAsync(Version);
            return ExitCode.Fine;
        }
        if (words[0] is not ("--help" or "-h") && !s_commands.Contains(words[0]))
        {
            string near = NearestWord.Of(words[0], s_commands) is { } guess ? $" Did you mean '{guess}'?" : "";
            await terminal.Error.WriteLineAsync($"setout: '{words[0]}' is not a command.{near} See 'setout --help'.");
            return ExitCode.Usage;
        }
        try
        {
            return await App(terminal).RunAsync(words[0] == "square" ? SquareCommand.Joined(words) : words, terminal.Cancel);
        }
        catch (UsageException usage)
        {
            await terminal.Error.WriteLineAsync($"setout: {usage.Message} {usage.Remedy}".TrimEnd());
            return ExitCode.Usage;
        }
        catch (CommandAppException wrong)
        {
            await terminal.Error.WriteLineAsync($"setout: {wrong.Message.TrimEnd('.')}. See 'setout {(s_commands.Contains(words[0]) ? words[0] + " " : "")}--help'.");
            return ExitCode.Usage;
        }
        catch (OperationCanceledException)
        {
            await terminal.Error.WriteLineAsync("setout: cancelled; nothing was written.");
            return ExitCode.Cancelled;
        }
        catch (Exception broken) when (broken is IOException or UnauthorizedAccessException)
        {
            await terminal.Error.WriteLineAsync($"setout: {broken.Message}");
            return ExitCode.Usage;
        }
#pragma warning disable CA1031 // the last line of defence: whatever is left is our fault and says so
        catch (Exception ours)
#pragma warning restore CA1031
        {
            await terminal.Error.WriteLineAsync($"setout: this is our fault, not yours: {ours.Message}\n{ours}");
            return ExitCode.Fault;
        }
    }

    private static CommandApp App(Terminal terminal)
    {
        var app = new CommandApp();
        app.Configure(config =>
        {
            config.SetApplicationName("setout");
            config.PropagateExceptions();
            config.UseStrictParsing();
            config.ConfigureConsole(AnsiConsole.Create(new AnsiConsoleSettings
            {
                Ansi = AnsiSupport.No,
                ColorSystem = ColorSystemSupport.NoColors,
                Out = new AnsiConsoleOutput(terminal.Out),
            }));
            config.AddCommand<PlanCommand>("plan").WithData(terminal).WithDescription("Make the whole plan of a piece: sizes, layouts, buying list, bench sheets.").WithExample("plan", "samples/jar-cabinet.yaml", "--out", "plan");
            config.AddCommand<CheckCommand>("check").WithData(terminal).WithDescription("List what is wrong or worth knowing.").WithExample("check", "samples/jar-cabinet.yaml");
            config.AddCommand<PartsCommand>("parts").WithData(terminal).WithDescription("List the parts with their figures to cut.").WithExample("parts", "samples/jar-cabinet.yaml", "--json");
            config.AddCommand<WhyCommand>("why").WithData(terminal).WithDescription("Show the working of a size.").WithExample("why", "samples/jar-cabinet.yaml", "G1.box.width");
            config.AddCommand<RecordCommand>("record").WithData(terminal).WithDescription("Record a reading taken at the bench, and say what it moves.").WithExample("record", "my-cabinet.yaml", "birch.thickness", "45/64in", "--with", "calliper");
            config.AddCommand<MarkCommand>("mark").WithData(terminal).WithDescription("Mark parts cut, assembled, fitted or finished, or things bought.").WithExample("mark", "my-cabinet.yaml", "cut", "G1.side").WithExample("mark", "my-cabinet.yaml", "cut", "--run", "3", "--plan", "plan");
            config.AddCommand<VoidCommand>("void").WithData(terminal).WithDescription("Take an entry of the log back.").WithExample("void", "my-cabinet.yaml", "3f9a01c2");
            config.AddCommand<AllowCommand>("allow").WithData(terminal).WithDescription("Let a finding stand, with a reason; it is told again when it gets worse.").WithExample("allow", "my-cabinet.yaml", "material.not-read", "back", "--because", "it only lies in a groove");
            config.AddCommand<FitCommand>("fit").WithData(terminal).WithDescription("Say what will fit before it is cut, and what to measure first.").WithExample("fit", "samples/luthiers-bench.yaml");
            config.AddCommand<SquareCommand>("square").WithData(terminal).WithDescription("Say how square a frame is from its sides and diagonals, and what to pull.").WithExample("square", "--sides", "36", "24", "36", "24", "--diagonals", "43 1/4", "43 5/16");
            config.AddCommand<ServeCommand>("serve").WithData(terminal).WithDescription("Open the workbench in the browser (also: setout alone).").WithExample("serve", "--port", "5280");
            config.AddCommand<ImportCommand>("import").WithData(terminal).WithDescription("Take piece files, logs and a shop file into the workbench.").WithExample("import", "samples");
            config.AddCommand<ExportCommand>("export").WithData(terminal).WithDescription("Write all texts of the workbench into a new folder.").WithExample("export", "my-texts");
            config.AddCommand<BackupCommand>("backup").WithData(terminal).WithDescription("Put everything that the workbench keeps into one dated file.").WithExample("backup");
            config.AddCommand<RestoreCommand>("restore").WithData(terminal).WithDescription("Put a backup in the place of what the workbench keeps.").WithExample("restore", "setout-2026-11-27-080000-asked.db");
            config.AddCommand<DoctorCommand>("doctor").WithData(terminal).WithDescription("Say what the program stands on: versions, fonts, folders.").WithExample("doctor");
        });
        return app;
    }
}
