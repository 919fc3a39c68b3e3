using System.Text.RegularExpressions;
using Setout.Testing;

namespace Setout.Tests.Architecture;

/// <summary>What source files may hold: not too many lines, no paths of one machine, no hosts of package registries.</summary>
public sealed partial class SourceTextTests
{
    private const int MostLines = 400;

    private static readonly string[] s_text = ["*.cs", "*.razor", "*.css", "*.js", "*.csproj", "*.props", "*.targets", "*.slnx", "*.json", "*.yaml", "*.yml", "*.md", "*.csv", "*.sh", "*.txt"];

    // Spelled in two halves so that this file does not find itself.
    private static readonly string[] s_hosts = ["api.nuget" + ".org", "registry.npmjs" + ".org", "proxy.golang" + ".org", "pypi" + ".org", "files.pythonhosted" + ".org", "deb.debian" + ".org"];

    [Fact]
    public void Sources_LongerThanTheMost_GiveAReasonInTheirFirstLine()
    {
        IReadOnlyList<string> files = [.. Repository.FilesIn("src", "*.cs"), .. Repository.FilesIn("src", "*.razor")];
        Assert.NotEmpty(files);
        Assert.DoesNotContain(files, file => IsTooLong(File.ReadAllLines(Repository.PathOf(file))));
    }

    [Fact]
    public void Texts_PathsOfOneMachineAndHostsOfRegistries_AreNowhere()
    {
        string[] folders = ["src", "tests", "bench", "docs", "samples", ".ci", ".github"];
        IEnumerable<string> files = folders.SelectMany(folder => s_text.SelectMany(pattern => Repository.FilesIn(folder, pattern)))
            .Concat(Directory.EnumerateFiles(Repository.Root).Select(Path.GetFileName).OfType<string>().Where(name => name != ".git"))
            .Concat(Repository.FilesIn(".ci", "*")).Distinct();
        Assert.Empty(files.SelectMany(file => Forbidden(File.ReadAllText(Repository.PathOf(file))).Select(word => $"{file}: {word}")));
    }

    /// <summary>A random test that answers otherwise the next time is no help to who reads a red one; <see cref="Seeds"/> fixes the seeds.</summary>
    [Fact]
    public void Tests_OfWhatAGeneratorGives_RunOnFixedSeeds() =>
        Assert.Equal(["tests/Setout.Testing/Seeds.cs"], Repository.FilesIn("tests", "*.cs").Where(file => Sampled().IsMatch(File.ReadAllText(Repository.PathOf(file)))));

    [Theory]
    [InlineData(400, "namespace X;", false)]
    [InlineData(401, "namespace X;", true)]
    [InlineData(401, "//", true)]
    [InlineData(401, "// Over 400 lines: a number type and its operators are one idea.", false)]
    [InlineData(401, "@* Over 400 lines: one drawing, read from top to bottom. *@", false)]
    public void IsTooLong_LinesAndFirstLine_DecideIt(int lines, string first, bool tooLong) =>
        Assert.Equal(tooLong, IsTooLong([first, .. Enumerable.Repeat("", lines - 1)]));

    [Fact]
    public void Forbidden_TextThatHoldsThem_NamesThem()
    {
        string path = "/wo" + "rk/a.txt", windows = "C:" + @"\Users\me", home = "/ho" + "me/me/b";
        Assert.Equal(["/wo" + "rk/"], Forbidden($"open(\"{path}\")"));
        Assert.Equal(["C:" + @"\Users\"], Forbidden(windows));
        Assert.Equal(["/ho" + "me/"], Forbidden(home));
        Assert.Equal([s_hosts[0]], Forbidden($"https://{s_hosts[0]}/v3"));
        Assert.Empty(Forbidden("framework/wo" + "rk/x and docs/ho" + "me/page"));
    }

    private static bool IsTooLong(string[] lines) => lines.Length > MostLines && !Reason().IsMatch(lines[0]);

    private static IEnumerable<string> Forbidden(string text) =>
        s_hosts.Where(host => text.Contains(host, StringComparison.OrdinalIgnoreCase)).Concat(MachinePath().Matches(text).Select(m => m.Value));

    // A comment with some words in it.
    [GeneratedRegex(@"^\s*(//|@\*|/\*)\s*\w+(\W+\w+){2,}")]
    private static partial Regex Reason();

    [GeneratedRegex(@"\.Sample\(")]
    private static partial Regex Sampled();

    [GeneratedRegex(@"(?<![\w.*-])/(work|tmp|home|root|Users)/|[A-Za-z]:\\Users\\")]
    private static partial Regex MachinePath();
}
