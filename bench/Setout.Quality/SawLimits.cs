using Setout.Cutting.Sheets;

namespace Setout.Quality;

/// <summary>What the command line says about the saw, put into an instance: the one place for <c>--stages</c>.</summary>
internal static class SawLimits
{
    /// <summary>The same instance with the limit of stages that is asked for, if any.</summary>
    public static SheetInstance With(this SheetInstance instance, Options options) => options.Whole("stages") is { } stages
        ? instance with { MostStages = (int)stages }
        : instance;
}
