using System.Reflection;
using System.Runtime.CompilerServices;
using Setout.Core.Measures;

namespace Setout.Core.Tests.Architecture;

/// <summary>The house style where a machine can check it, over everything public in Core and over samples that break it.</summary>
public sealed class ConventionTests
{
    private static readonly Type[] s_public = [.. typeof(Length).Assembly.GetExportedTypes()];

    // Numbers that are not lengths, each with its reason. Names that begin with Approximate say it themselves.
    private static readonly HashSet<string> s_plainNumbers =
    [
        "Rational.ToDouble", // no unit
        "Area.RatioTo", // no unit
        "Mass.Pounds", // a mass
        "Mass.PoundsPerKilogram", // a ratio of masses
    ];

    // Types that carry an error bound with their number.
    private static readonly HashSet<Type> s_withBounds = [typeof(Estimate)];

    [Fact]
    public void PublicStructs_AreReadOnly() => Assert.Empty(s_public.Where(IsMutableStruct).Select(t => t.FullName));

    [Fact]
    public void PublicProperties_CannotBeSetLater() => Assert.Empty(s_public.SelectMany(SettersOf));

    [Fact]
    public void PublicFields_AreReadOnly() => Assert.Empty(s_public
        .Where(t => !t.IsEnum).SelectMany(t => t.GetFields(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
        .Where(f => !f.IsInitOnly && !f.IsLiteral).Select(f => $"{f.DeclaringType!.Name}.{f.Name}"));

    /// <summary>
    /// A double is never a length. A member of Core that gives or takes one says in its name that it is approximate, lives in a type with
    /// a bound, or stands in the list above with its reason.
    /// </summary>
    [Fact]
    public void PublicMembersOfMeasures_GiveAndTakeNoDouble() => Assert.Empty(s_public
        .Where(t => t.Namespace!.StartsWith("Setout.Core.Measures", StringComparison.Ordinal)).SelectMany(DoublesOf));

    /// <summary>Outside Measures other numbers are needed (chances, densities), but a name that tells a length must have the type of one.</summary>
    [Fact]
    public void PublicMembersNamedForALength_AreNoDouble() => Assert.Empty(s_public.SelectMany(DoublesNamedForALength));

    [Fact]
    public void ComparableStructs_HaveAllOperatorsOfOrder() => Assert.Empty(s_public.SelectMany(MissingOperators));

    [Fact]
    public void Checks_OnSamplesThatBreakThem_FindThem()
    {
        Assert.True(IsMutableStruct(typeof(Loose)));
        Assert.False(IsMutableStruct(typeof(Length)));
        Assert.Equal(["Loose.Settable"], SettersOf(typeof(Loose)));
        Assert.Equal(["Loose.Widths", "Loose.Cut"], DoublesOf(typeof(Loose)));
        Assert.Equal(["Loose.Cut(width)"], DoublesNamedForALength(typeof(Loose)));
        Assert.Equal(["Loose <", "Loose >", "Loose <=", "Loose >=", "Loose ==", "Loose !="], MissingOperators(typeof(Loose)));
    }

    private static bool IsMutableStruct(Type type) =>
        type is { IsValueType: true, IsEnum: false } && !type.IsDefined(typeof(IsReadOnlyAttribute), inherit: false);

    private static IEnumerable<string> SettersOf(Type type) => type
        .GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
        .Where(p => p.SetMethod is { IsPublic: true } set && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit)))
        .Select(p => $"{type.Name}.{p.Name}");

    private static IEnumerable<string> DoublesOf(Type type) => s_withBounds.Contains(type) ? [] : Members(type)
        .Where(m => m.Types.Any(HoldsDouble) && !m.Name.StartsWith("Approximate", StringComparison.Ordinal))
        .Select(m => $"{type.Name}.{m.Name}").Where(name => !s_plainNumbers.Contains(name)).Distinct();

    private static IEnumerable<string> DoublesNamedForALength(Type type)
    {
        string[] words = ["Length", "Width", "Height", "Depth", "Thickness", "Millimetres", "Inches", "Diagonal", "Gap", "Radius", "Diameter"];
        bool TellsALength(string name) => !name.Contains("Approximate", StringComparison.OrdinalIgnoreCase)
            && words.Any(w => name.EndsWith(w, StringComparison.OrdinalIgnoreCase) && !name.Contains("Per", StringComparison.Ordinal));
        foreach (PropertyInfo p in type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            if (HoldsDouble(p.PropertyType) && TellsALength(p.Name)) yield return $"{type.Name}.{p.Name}";
        foreach (MethodInfo m in type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            foreach (ParameterInfo p in m.GetParameters())
                if (HoldsDouble(p.ParameterType) && TellsALength(p.Name ?? "")) yield return $"{type.Name}.{m.Name}({p.Name})";
    }

    private static IEnumerable<(string Name, Type[] Types)> Members(Type type)
    {
        const BindingFlags Own = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        foreach (FieldInfo f in type.GetFields(Own)) yield return (f.Name, [f.FieldType]);
        foreach (PropertyInfo p in type.GetProperties(Own)) yield return (p.Name, [p.PropertyType]);
        foreach (MethodInfo m in type.GetMethods(Own).Where(m => !m.IsSpecialName || m.Name.StartsWith("op_", StringComparison.Ordinal)))
            yield return (m.Name, [m.ReturnType, .. m.GetParameters().Select(p => p.ParameterType)]);
        foreach (ConstructorInfo c in type.GetConstructors(Own)) yield return ("constructor", [.. c.GetParameters().Select(p => p.ParameterType)]);
    }

    private static bool HoldsDouble(Type type) => type == typeof(double) || type == typeof(float) || type == typeof(Half)
        || (type.HasElementType && HoldsDouble(type.GetElementType()!)) || (type.IsGenericType && type.GetGenericArguments().Any(HoldsDouble));

    private static IEnumerable<string> MissingOperators(Type type)
    {
        bool comparable = type.IsValueType && !type.IsEnum
            && type.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IComparable<>) && i.GetGenericArguments()[0] == type);
        if (!comparable) yield break;
        (string Method, string Sign)[] wanted =
            [("op_LessThan", "<"), ("op_GreaterThan", ">"), ("op_LessThanOrEqual", "<="), ("op_GreaterThanOrEqual", ">="), ("op_Equality", "=="), ("op_Inequality", "!=")];
        foreach ((string method, string sign) in wanted)
            if (type.GetMethod(method, [type, type]) is null) yield return $"{type.Name} {sign}";
    }

#pragma warning disable CA1036, CA1051, CA1815, MA0096 // a sample of what must be found
    public struct Loose : IComparable<Loose>
    {
        public int Settable { get; set; }

        public int Fine { get; init; }

        public readonly double ApproximateSize => 1;

        public readonly IReadOnlyList<double?> Widths => [];

        public readonly void Cut(double width) => _ = width;

        public readonly int CompareTo(Loose other) => 0;
    }
#pragma warning restore CA1036, CA1051, CA1815, MA0096
}
