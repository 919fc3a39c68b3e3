using System.Text.RegularExpressions;
using Setout.Testing;

namespace Setout.Tests.Architecture;

/// <summary>Remedies of the rules name keys of the piece file for the hand that reads them: in the quotes of the text for commands, by what they are called on its pages for the workbench.</summary>
public sealed partial class RemedyWordsTests
{
    [GeneratedRegex("""\"(Leave|Make|Write|Say|Cover|Name|Let|Give|Take)\b[^"]* '[a-z][a-z -]*(: [a-z]+)?'""")]
    private static partial Regex KeyInARemedy();

    [Fact]
    public void Remedies_NameKeysThroughTheHand()
    {
        string folder = Path.Combine(Repository.Root, "src", "Setout.Core", "SettingOut");
        string[] found = [.. Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).SelectMany(f => File.ReadAllLines(f).Index().Where(l => KeyInARemedy().IsMatch(l.Item)).Select(l => $"{Path.GetFileName(f)}:{l.Index + 1}"))];
        Assert.Empty(found);
    }
}
