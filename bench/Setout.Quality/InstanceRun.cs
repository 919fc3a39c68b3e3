namespace Setout.Quality;

/// <summary>Solves the instances of a file one by one and writes a line for each.</summary>
internal static class InstanceRun
{
    public static int Run(Options options)
    {
        string path = options.Needed("instances"), variant = options.Needed("variant");
        if (variant is not ("RG" or "OG" or "1D")) throw new UsageException($"There is no variant '{variant}'. Variants: RG, OG, 1D.");
        BenchSolver solver = BenchSolvers.Named(options.Text("solver") ?? "library");
        string best = options.Text("best") ?? Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, "best_known.csv");
        BestKnown known = File.Exists(best) ? BestKnown.Read(best, options.Text("cost") == "area") : BestKnown.None;
        int apart = variant == "1D" ? 0 : MostValue.Run(InstanceFile.Read(path), variant, known);
        IReadOnlyList<BenchInstance> chosen = Chosen(path, options), instances = [.. chosen.Where(solver.CanLay)];
        if (instances.Count < chosen.Count) Console.WriteLine($"{chosen.Count - instances.Count} instances are beyond the solver {solver.Name} and are not run.");
        var file = new ResultFile(options.Text("out"), options.Has("resume"));
        List<Result> results = [.. file.Done.Where(r => r.Variant == variant)];
        HashSet<string> done = [.. results.Select(r => r.Id)];
        foreach (BenchInstance instance in instances.Where(i => !done.Contains(i.Id)))
        {
            Result result = Solve(instance, variant, solver, options);
            file.Add(result);
            results.Add(result);
            Console.WriteLine(result.Line);
        }
        return Math.Max(Summary.Print(instances, results, known, variant), apart > 0 ? 1 : 0);
    }

    /// <summary>The instances of a file that <c>--ids</c> names, or all; problems of greatest value are left to <see cref="MostValue"/>.</summary>
    public static IReadOnlyList<BenchInstance> Chosen(string path, Options options)
    {
        IReadOnlyList<BenchInstance> all = InstanceFile.Read(path);
        if (options.Text("ids") is { } ids)
        {
            HashSet<string> wanted = [.. File.ReadLines(ids).Select(l => l.Trim()).Where(l => l.Length > 0 && !l.StartsWith('#'))];
            if (wanted.Except(all.Select(i => i.Id)).FirstOrDefault() is { } missing) throw new UsageException($"{ids} names {missing}, which {path} does not hold.");
            all = [.. all.Where(i => wanted.Contains(i.Id))];
        }
        bool byArea = options.Text("cost") switch
        {
            null or "given" => false,
            "area" => true,
            { } other => throw new UsageException($"--cost is given or area, not '{other}'."),
        };
        return [.. all.Where(i => !MostValue.Asks(i)).Select(i => byArea ? i.CostByArea() : i)];
    }

    private static Result Solve(BenchInstance instance, string variant, BenchSolver solver, Options options)
    {
        if (instance.IsBoards != (variant == "1D")) throw new UsageException($"{instance.Id} is a problem of {(instance.IsBoards ? "boards: use --variant 1D" : "sheets: use --variant RG or OG")}.");
        using var time = new SolveTime(options.Whole("budget"), options.Number("seconds", 10), options.Seed);
        Answer answer = instance.IsBoards
            ? solver.Boards!(instance.Boards(), time)
            : solver.Sheets(instance.Sheets(variant == "RG").With(options), time);
        foreach (string wrong in answer.Violations.Take(5)) Console.Error.WriteLine($"{instance.Id}: {wrong}");
        return new(instance.Id, variant, answer.StockUsed, answer.Cost, answer.Bound, answer.Proven, answer.Seconds, answer.Violations.Length, answer.LeftOut);
    }
}
