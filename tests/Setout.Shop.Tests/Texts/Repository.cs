using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Texts;

/// <summary>Files of the repository, and texts with a mark where a finding is expected.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static IEnumerable<string> PieceSamples => Directory.GetFiles(Path.Combine(Root, "samples"), "*.yaml")
        .Where(f => !f.EndsWith(".log.yaml", StringComparison.Ordinal) && File.ReadAllText(f).Contains("\nsetout:", StringComparison.Ordinal)).Order(StringComparer.Ordinal);

    public static string Read(params string[] path) => File.ReadAllText(Path.Combine([Root, .. path]));

    /// <summary>Takes the mark ¦ out of a text and says where it stood.</summary>
    public static (string Text, Place Place) Marked(string text)
    {
        int at = text.IndexOf('¦', StringComparison.Ordinal);
        Assert.True(at >= 0, "There is no mark in the text.");
        string before = text[..at];
        int line = before.Count(c => c == '\n') + 1, column = at - (before.LastIndexOf('\n') + 1) + 1;
        return (text.Remove(at, 1), new(line, column));
    }

    /// <summary>Exactly one finding, of this code, at the mark.</summary>
    public static Finding OnlyFinding<T>(string code, string marked, Func<string, TextRead<T>> read) where T : class
    {
        (string text, Place place) = Marked(marked);
        Finding finding = Assert.Single(read(text).Findings);
        Assert.Equal((code, place), (finding.Code, finding.Place));
        Assert.NotEmpty(finding.Words);
        Assert.NotEmpty(finding.Remedy);
        return finding;
    }

    private static string Find()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Setout.slnx"))) folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
