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
        if (OptionValue.IsMissing(folder)) throw new UsageException("'--before' wants a folder.", "Name the folder of an earlier plan.");
        string path = PathIn(folder);
        if (!File.Exists(path)) throw new UsageException($"There is no plan in '{folder}'.", "Name the folder of an earlier plan; it holds plan.json.");
        using FileStream stream = LogFile.OpenRead(path);
        TextRead<string> text = TextBytes.Read(stream, EarlierPlan.Limits);
        return text.Value is { } json ? EarlierPlan.Read(json) : new(null, text.Findings);
    }
}
