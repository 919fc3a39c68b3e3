namespace Setout.Tests;

/// <summary>A folder of its own for one test, gone afterwards.</summary>
internal sealed class TestFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("setout-").FullName;

    public string Of(params string[] names) => System.IO.Path.Combine([Path, .. names]);

    /// <summary>Puts a text into the folder and gives its path.</summary>
    public string Write(string name, string text)
    {
        File.WriteAllText(Of(name), text);
        return Of(name);
    }

    /// <summary>Copies the samples into the folder.</summary>
    public TestFolder WithSamples()
    {
        foreach (string file in Directory.EnumerateFiles(Samples.Folder)) File.Copy(file, Of(System.IO.Path.GetFileName(file)));
        return this;
    }

    /// <summary>The relative paths of all files, in order.</summary>
    public string[] Files() =>
        [.. Directory.EnumerateFiles(Path, "*", SearchOption.AllDirectories).Select(f => System.IO.Path.GetRelativePath(Path, f).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(Path, recursive: true);
}

/// <summary>The sample pieces of the checkout.</summary>
internal static class Samples
{
    public static string Folder { get; } = Setout.Workbench.SampleFolder.Find() ?? throw new InvalidOperationException("The samples are not found from the tests.");

    public static readonly string[] Names = ["jar-cabinet", "luthiers-bench", "plan-chest"];

    public static string File(string name) => System.IO.Path.Combine(Folder, name + ".yaml");
}
