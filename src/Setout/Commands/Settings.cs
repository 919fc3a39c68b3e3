using System.ComponentModel;
using System.Collections.Immutable;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Files;
using Setout.Shop.Noting;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary>What several commands say of an option that they share.</summary>
internal static class OptionWords
{
    /// <summary>Of <c>--json</c>.</summary>
    public const string Json = "Answer with one JSON value on standard output and nothing else.";

    /// <summary>Of <c>--dry-run</c>, where no more is to be said of it.</summary>
    public const string DryRun = "Write nothing.";
}

/// <summary>What every command on a piece takes.</summary>
internal class PieceSettings : CommandSettings
{
    /// <summary>The piece file.</summary>
    [CommandArgument(0, "<FILE>")]
    [Description("The piece file; its log stands beside it as NAME.log.yaml. Or @NAME: a piece that the workbench keeps.")]
    public string File { get; set; } = "";

    /// <summary>The shop file.</summary>
    [CommandOption("--shop <FILE>")]
    [Description("The shop file; without it shop.yaml beside the piece, else a usual shop.")]
    public string? Shop { get; set; }

    /// <summary>The data folder.</summary>
    [CommandOption("--data <DIR>")]
    [Description("With @NAME: the data folder of the workbench; without it that of SETOUT_DATA, else the usual place of this system.")]
    public string? Data { get; set; }

    /// <summary>The texts.</summary>
    public PieceFiles Files => PieceFiles.Of(File, Shop, Data);
}

/// <summary>The same with JSON for an answer.</summary>
internal class JsonSettings : PieceSettings
{
    /// <summary>JSON instead of words.</summary>
    [CommandOption("--json")]
    [Description(OptionWords.Json)]
    public bool Json { get; set; }
}

/// <summary>What commands share.</summary>
internal static class Told
{
    /// <summary>Reads the texts; tells what is wrong with its place and gives null when they cannot be used.</summary>
    public static PieceSource? Source(Terminal terminal, PieceFiles files, bool asJson = false)
    {
        (PieceSource? source, ImmutableArray<SourceFinding> findings) = files.Read();
        if (asJson && source is null) Json(terminal, PlanJson.WriteFindings(findings.Select(f => f.Finding)));
        foreach (SourceFinding finding in findings) Finding(terminal.Error, files.FileOf(finding.Text), finding.Finding);
        return source;
    }

    /// <summary>Writes a finding as <c>file:line:column: stop code: words</c> with its remedy below.</summary>
    public static void Finding(TextWriter writer, string file, Finding finding)
    {
        string place = finding.Place.IsKnown ? $"{file}:{finding.Place.Line}:{finding.Place.Column}" : file;
        writer.WriteLine($"{place}: {finding.Severity.ToString().ToLowerInvariant()} {finding.Code}: {finding.Words}");
        if (finding.Remedy.Length > 0) writer.WriteLine($"    {finding.Remedy}");
        if (finding.LetStand.Length > 0) writer.WriteLine($"    let stand: {finding.LetStand}");
    }

    /// <summary>Tells what cannot be known of the wood of other pieces.</summary>
    public static void Unread(Terminal terminal, PieceFiles files, PieceSource source)
    {
        foreach (Finding finding in source.Unread) Finding(terminal.Error, files.Piece, finding);
    }

    /// <summary>Tells what a fact moved, what it upset and what can be done about that.</summary>
    public static void Moved(TextWriter writer, PieceFiles files, SetPiece before, SetPiece after, Shop.Texts.Shop shop)
    {
        var account = FactAccount.Of(before, after, shop);
        foreach (string line in RippleLines.Of(before, after, account.Ripple)) writer.WriteLine(line);
        foreach (string ended in OffersGone.Of(before, after, shop)) writer.WriteLine($"  {ended}");
        foreach (Finding finding in account.Told) Finding(writer, files.Piece, finding);
        foreach (string line in MendingLines.Of(account.Upset)) writer.WriteLine(line);
        if (account.MoreUpset > 0) writer.WriteLine($"  and {account.MoreUpset} more are upset: 'setout fit FILE' lists them");
        foreach (string line in account.Chances(shop.Accuracy)) writer.WriteLine(line);
    }

    /// <summary>Writes bytes of JSON to standard output.</summary>
    public static void Json(Terminal terminal, byte[] json) => terminal.Out.Write(System.Text.Encoding.UTF8.GetString(json));
}
