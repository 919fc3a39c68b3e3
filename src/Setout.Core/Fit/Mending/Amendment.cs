using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>What an amendment does to its quantity.</summary>
public enum AmendmentKind
{
    /// <summary>The part is cut to this figure: a fact that stands on its figure to cut.</summary>
    CutTo,

    /// <summary>It will read this once the work is done.</summary>
    Reads,

    /// <summary>Bought so long: a fact.</summary>
    Bought,

    /// <summary>What was read or decided of the old thing is no more.</summary>
    Forget,
}

/// <summary>One change to what is known from the bench, as it will stand when a remedy is carried out.</summary>
/// <param name="Key">The quantity.</param>
/// <param name="Value">Its value then; zero where it is to be forgotten.</param>
/// <param name="Kind">What is done.</param>
public readonly record struct Amendment(QuantityKey Key, ExactLength Value, AmendmentKind Kind)
{
    private static readonly Origin s_origin = new(OriginKind.Reading, "as it will be");

    /// <summary>The facts with amendments put in, in order. States, sheets and what is bought stay as they are.</summary>
    /// <param name="facts">What is known now.</param>
    /// <param name="amendments">None for the same facts.</param>
    public static BenchFacts Apply(BenchFacts facts, IEnumerable<Amendment> amendments)
    {
        var pins = facts.Pins.ToImmutableDictionary().ToBuilder();
        foreach (Amendment amendment in amendments)
        {
            if (amendment.Kind == AmendmentKind.Forget) pins.Remove(amendment.Key);
            else pins[amendment.Key] = new([amendment.Value], s_origin, "") { IsFact = amendment.Kind is AmendmentKind.CutTo or AmendmentKind.Bought };
        }
        return facts with { Pins = pins.ToImmutable() };
    }
}
