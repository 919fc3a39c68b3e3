using Setout.Commands;
using Setout.Shop.Outputs;
using Setout.Shop.Plans;
using Setout.Shop.Texts;

namespace Setout.Files;

/// <summary>The plan.json of an earlier plan on disk.</summary>
internal static class EarlierPlanFile
{
    /// <summary>Where it lies in the folder of a plan.</summary>
    public static string PathIn(string folder) => Path.Combine(folder, "plan.json");

    /// <summary>Reads its layouts.</summary>
    /// <exception cref="UsageException">There is no such folder, or no plan in it.</exception>
    public static TextRead<EarlierLayouts> Read(string folder)
    {
        TextRead<string> text = Text(folder, "--before");
        return text.Value is { } json ? EarlierPlan.Read(json) : new(null, text.Findings);
    }

    /// <summary>The text of it.</summary>
    /// <param name="folder">Of the plan.</param>
    /// <param name="option">Which option named it.</param>
    /// <exception cref="UsageException">There is no such folder, or no plan in it.</exception>
    public static TextRead<string> Text(string folder, string option)
    {
        if (OptionValue.IsMissing(folder)) throw new UsageException($"'{option}' wants a folder.", "Name the folder of a plan.");
        string path = PathIn(folder);
        if (!File.Exists(path)) throw new UsageException($"There is no plan in '{folder}'.", "Name the folder of a plan; it holds plan.json.");
        using FileStream stream = LogFile.OpenRead(path);
        return TextBytes.Read(stream, EarlierPlan.Limits);
    }
}
