namespace Setout.Cutting.Sheets.Model;

/// <summary>What a layout may still spend: strictly less than this, money before sheets.</summary>
internal readonly record struct Goal(decimal Cost, int Sheets)
{
    public static Goal None { get; } = new(decimal.MaxValue, int.MaxValue);

    public bool Allows(decimal cost, int sheets) => cost < Cost || (cost == Cost && sheets < Sheets);
}
