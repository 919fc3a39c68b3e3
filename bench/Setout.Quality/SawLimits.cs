using Setout.Cutting.Sheets;

namespace Setout.Quality;

/// <summary>What the command line says about the saw, put into an instance: the one place for <c>--stages</c>.</summary>
internal static class SawLimits
{
    /// <exception cref="UsageException">A limit of stages is asked for, which instances cannot hold yet.</exception>
    public static SheetInstance With(this SheetInstance instance, Options options) => options.Whole("stages") is null
        ? instance
        : throw new UsageException("--stages: an instance cannot hold a limit of stages yet.");
}
