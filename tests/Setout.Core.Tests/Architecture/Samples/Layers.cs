// Small layers with one forbidden dependency of each kind, for the test of the test. Low may not see High.
#pragma warning disable CA1710, CA1805

namespace Setout.Core.Tests.Architecture.Samples.High
{
    public class Thing
    {
        public static int Count { get; } = 1;
    }

    [AttributeUsage(AttributeTargets.All)]
    public sealed class MarkAttribute : Attribute;

    public sealed class Trouble : Exception;

    public interface IWish;

    public sealed class LooksDown
    {
        public Low.Clean? Clean { get; init; }
    }
}

namespace Setout.Core.Tests.Architecture.Samples.Low
{
    public sealed class Clean
    {
        public int Sum(int[] values) => values.Sum() + values.Length switch { 0 => 7, 1 => 9, 2 => 4, 3 => 1, _ => 2 };
    }

    public sealed class ByBase : High.Thing;

    public sealed class ByInterface : High.IWish;

    public sealed class ByField
    {
        private readonly List<High.Thing[]>? _things = null;

        public bool Any => _things is not null;
    }

    public sealed class BySignature
    {
        public int Take(IReadOnlyDictionary<string, High.Thing?> things) => things.Count;
    }

    public sealed class ByCode
    {
        public int Count() => High.Thing.Count;
    }

    public sealed class ByLambda
    {
        public IEnumerable<int> Counts(IEnumerable<int> values) => values.Select(v => v + High.Thing.Count);
    }

    public sealed class ByGenericCall
    {
        public object[] Make() => [.. Array.Empty<High.Thing>()];
    }

    public sealed class ByCatch
    {
        public bool Try(Action action)
        {
            try
            {
                action();
                return true;
            }
            catch (High.Trouble)
            {
                return false;
            }
        }
    }

    [High.Mark]
    public sealed class ByAttribute;

    public sealed class ByConstraint<T>
        where T : High.IWish;

    public sealed class ByTypeOf
    {
        public string Name() => typeof(High.Thing).Name;
    }
}
