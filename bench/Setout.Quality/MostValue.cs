namespace Setout.Quality;

/// <summary>
/// Problems of the greatest value of one sheet (gcut, cgcut, hifi2s): the one place to run them once there is a search for the best
/// pattern of a single sheet. Until then they are counted and left out, never answered.
/// </summary>
internal static class MostValue
{
    public static bool Asks(BenchInstance instance) => instance.Problem == "max_value";
}
