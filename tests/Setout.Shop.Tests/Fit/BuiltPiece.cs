using Setout.Core.SettingOut;

namespace Setout.Shop.Tests.Fit;

/// <summary>A bank of drawers of a sample, in words that the builders below use.</summary>
internal sealed record Bank(string Opening, string Kind, string Sides, string Bottoms, string Fronts, string[] Drawers);

/// <summary>
/// A sample as it would be built, from the figures to cut to the real gaps, by formulas written down here and nowhere else: stage after stage,
/// so that openings can be read in between and the rest is cut by figures set out anew.
/// </summary>
internal abstract class BuiltPiece(TrueShop shop)
{
    protected TrueShop Shop { get; } = shop;

    /// <summary>The real gaps, by key.</summary>
    public Dictionary<string, double> Gaps { get; } = [];

    /// <summary>The real clear sizes that can be read once they stand.</summary>
    public Dictionary<string, double> Openings { get; } = [];

    /// <summary>What is cut and put together, in order: each by the plan as it stands then.</summary>
    public abstract IReadOnlyList<Action<SetPiece>> Stages { get; }

    /// <summary>Builds the boxes of a bank.</summary>
    protected void Boxes(SetPiece plan, Bank bank)
    {
        foreach (string d in bank.Drawers)
        {
            double end = Shop.Cut(plan, bank.Sides, $"{d}.end.length"), side = Shop.Cut(plan, bank.Sides, $"{d}.side.length");
            double sides = Shop.Member($"{d}.side", bank.Sides) + Shop.Member($"{d}.side", bank.Sides);
            double ends = Shop.Member($"{d}.end", bank.Sides) + Shop.Member($"{d}.end", bank.Sides);
            double groove = Shop.Cut(plan, "grooves", $"{d}.groove.depth");
            Gaps[$"{d}.play"] = Openings[bank.Opening] - (2 * Shop.Slide(bank.Kind)) - (end + sides);
            Gaps[$"{d}.bottom.play-across"] = end + (2 * groove) - Shop.Cut(plan, bank.Bottoms, $"{d}.bottom.width");
            Gaps[$"{d}.bottom.play-along"] = side - ends + (2 * groove) - Shop.Cut(plan, bank.Bottoms, $"{d}.bottom.length");
        }
    }

    /// <summary>Fixes the fronts of a bank over what they cover.</summary>
    /// <param name="covered">What they cover: across and up, as meant for the carcase that was built.</param>
    /// <param name="gap">The gap between two, as meant.</param>
    protected void Fronts(SetPiece plan, Bank bank, string key, (double Across, double Up) covered, double gap)
    {
        double left = covered.Up;
        foreach ((int i, string d) in bank.Drawers.Index())
        {
            Gaps[$"{d}.front.beside"] = covered.Across - Shop.Cut(plan, bank.Fronts, $"{d}.front.width");
            left -= Shop.Cut(plan, bank.Fronts, $"{d}.front.height");
            if (i == 0) continue;
            double real = gap + Shop.Placing();
            Gaps[$"{d}.front.gap"] = real;
            left -= real;
        }
        Gaps[$"{key}.fronts-short"] = left;
    }
}

/// <summary>The luthiers' bench: posts and rails of 2x4, two bays with a slide panel either side.</summary>
internal sealed class BuiltBench(TrueShop shop) : BuiltPiece(shop)
{
    private const double Inch = 25.4, Toe = 4 * Inch, OverPostOrRail = 0.5 * Inch, GapMeant = Inch / 8;

    private static readonly Bank[] s_banks =
    [
        new("L.width", "bench", "boxes", "bottoms", "carcase", ["L1", "L2", "L3", "L4"]), new("R.width", "bench", "boxes", "bottoms", "carcase", ["R1", "R2", "R3"]),
    ];

    private static readonly string[] s_bays = ["L", "R"];

    private readonly Dictionary<string, double> _rails = [];
    private double _up;

    public override IReadOnlyList<Action<SetPiece>> Stages => [Frame, Panels, Drawers];

    private void Frame(SetPiece plan)
    {
        // The top rail is laid flat, the bottom rail on edge.
        _up = Shop.Cut(plan, "studs", "F.post.length") - Toe - Shop.Section("studs.width") - Shop.Section("studs.thickness");
        foreach (string bay in s_bays)
        {
            _rails[bay] = Shop.Cut(plan, "studs", $"{bay}.rail.length");
            Openings[$"{bay}.height"] = _up + Shop.Placing();
        }
    }

    private void Panels(SetPiece plan)
    {
        foreach (string bay in s_bays)
        {
            double panels = Shop.Member($"{bay}.panel", "carcase") + Shop.Member($"{bay}.panel", "carcase");
            Openings[$"{bay}.width"] = _rails[bay] - panels + Shop.Placing();
            Gaps[$"{bay}.panel.room"] = Openings[$"{bay}.height"] - Shop.Cut(plan, "carcase", $"{bay}.panel.length");
        }
    }

    private void Drawers(SetPiece plan)
    {
        foreach (Bank bank in s_banks)
        {
            string bay = bank.Opening[..1];
            Boxes(plan, bank);
            // Fronts lie over the slide panels and half an inch of posts and rails: how thick the panels are does not matter.
            Fronts(plan, bank, bay, (_rails[bay] + (2 * OverPostOrRail), _up + (2 * OverPostOrRail)), GapMeant);
        }
    }
}

/// <summary>The plan chest: a case with ten drawers, fronts over all of its edges but the reveal.</summary>
internal sealed class BuiltChest(TrueShop shop) : BuiltPiece(shop)
{
    private const double Reveal = 1.5, GapMeant = 3;

    private static readonly Bank s_bank = new("C.opening.width", "shallow", "birch15", "birch12", "birch18", [.. Enumerable.Range(1, 10).Select(i => $"D{i}")]);

    private double _across, _up;

    public override IReadOnlyList<Action<SetPiece>> Stages => [Carcase, Drawers];

    private void Carcase(SetPiece plan)
    {
        double deck = Shop.Cut(plan, "birch18", "C.deck.length");
        // Sides run the whole height; outside width is what stands between them and both of them.
        _up = Shop.Cut(plan, "birch18", "C.side.length") - (2 * Reveal);
        _across = deck + Shop.Member("C.side", "birch18") + Shop.Member("C.side", "birch18") - (2 * Reveal);
        Openings["C.opening.width"] = deck + Shop.Placing();
    }

    private void Drawers(SetPiece plan)
    {
        Boxes(plan, s_bank);
        Fronts(plan, s_bank, "C.opening", (_across, _up), GapMeant);
    }
}
