namespace Setout.Workbench;

/// <summary>Finds the sample pieces: beside the program, or in the checkout it was built from.</summary>
internal static class SampleFolder
{
    /// <summary>The folder, or null when there is none.</summary>
    public static string? Find()
    {
        foreach (string start in new[] { AppContext.BaseDirectory, Directory.GetCurrentDirectory() })
        {
            for (DirectoryInfo? folder = new(start); folder is not null; folder = folder.Parent)
            {
                string samples = Path.Combine(folder.FullName, "samples");
                if (File.Exists(Path.Combine(samples, "shop.yaml"))) return samples;
            }
        }
        return null;
    }
}
