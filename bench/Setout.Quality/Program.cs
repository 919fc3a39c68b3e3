// Measures the quality of layouts on published instances and on everyday jobs. How to run it and what it prints: README.md beside this file.
using Setout.Quality;
using Setout.Quality.Everyday;

try
{
    var options = new Options(args);
    if (options.Has("kerf-check")) return KerfCheck.Run(options);
    if (options.Has("everyday")) return EverydayRun.Run(options);
    if (options.Has("runs")) return RunsOfJobs.Run(options);
    if (options.Has("many")) return ManyParts.Run(options);
    if (options.Text("subset") is { } subset)
    {
        IEnumerable<string> ids = subset switch
        {
            "A" => SubsetRule.A,
            "pisinger" => SubsetRule.Pisinger,
            _ => throw new UsageException($"There is no subset '{subset}'. Subsets: A, pisinger."),
        };
        foreach (string id in ids) Console.WriteLine(id);
        return 0;
    }
    return InstanceRun.Run(options);
}
catch (UsageException wrong)
{
    Console.Error.WriteLine(wrong.Message);
    return 2;
}
