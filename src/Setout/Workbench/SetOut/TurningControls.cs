using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Drawing.Turning;
using Setout.Shop.Drawings;
using Setout.Workbench.Shell;
using SetPiece = Setout.Core.SettingOut.SetPiece;

namespace Setout.Workbench.SetOut;

/// <summary>A way to turn the piece or move its parts: a link that works without a script.</summary>
/// <param name="Word">What it does.</param>
/// <param name="Href">The page as it is then.</param>
/// <param name="Does">What the script does instead: <c>turn 15</c>, <c>tip -15</c>, <c>apart 0.4</c>, <c>to 180 0</c>.</param>
public sealed record TurnLink(string Word, string Href, string Does);

/// <summary>What the script needs to turn the piece without asking for pages.</summary>
/// <param name="From">Turn, tip and how far apart, as three numbers.</param>
/// <param name="Blocks">The members as six numbers each, in the order of their groups in <see cref="TurningInput.Blocks"/>; with the wash they are filled with.</param>
/// <param name="Links">The ways to turn it.</param>
/// <param name="Keys">What turns it from the keyboard, in words.</param>
public sealed record TurningControls(string From, string Blocks, ImmutableArray<TurnLink> Links, string Keys)
{
    /// <summary>The word of the view in addresses.</summary>
    public const string Word = "apart";

    // As a person first looks at it: parted a little, or nothing of the inside would be seen.
    private static readonly Standpoint s_first = Standpoint.Usual with { Apart = 0.4 };

    /// <summary>The standpoint that an address names; the usual one where it names none or what is no number.</summary>
    internal static Standpoint Asked(string? turn, string? tip, string? apart) =>
        new Standpoint(Number(turn) ?? s_first.Turn, Number(tip) ?? s_first.Tip, Number(apart) ?? s_first.Apart).Clamped();

    /// <summary>The word of the view with where it is looked at from, as an address has it; the word alone for the usual place.</summary>
    internal static string Seen(Standpoint from) => from == s_first ? Word : Word + Words(from);

    private static string Words(Standpoint from) => $"&turn={Text(from.Turn)}&tip={Text(from.Tip)}&apart={Text(from.Apart)}";

    internal static (Scene Wide, Scene Narrow, TurningControls Controls) Of(SetPiece set, string piece, string? size, Standpoint from)
    {
        TurningInput input = TurningPiece.Input(set);
        string Href(Standpoint to)
        {
            to = to.Clamped();
            return $"{Shell.Links.View(piece, Word, size ?? "")}{Words(to)}";
        }
        TurnLink Side(string word, double turn, double tip) => new($"from {word}", Href(@from with { Turn = turn, Tip = tip }), $"to {Text(turn)} {Text(tip)}");
        ImmutableArray<TurnLink> links =
        [
            Side("the front", 0, 0), Side("the right", 90, 0), Side("behind", 180, 0), Side("the left", 270, 0), Side("above", 0, 90), Side("a corner", s_first.Turn, s_first.Tip),
            new("turn left", Href(@from with { Turn = from.Turn - Step }), $"turn {-Step}"), new("turn right", Href(@from with { Turn = from.Turn + Step }), $"turn {Step}"),
            new("from higher", Href(@from with { Tip = from.Tip + Step }), $"tip {Step}"), new("from lower", Href(@from with { Tip = from.Tip - Step }), $"tip {-Step}"),
            new("parts apart", Href(@from with { Apart = from.Apart + Further }), $"apart {Text(Further)}"), new("together", Href(@from with { Apart = from.Apart - Further }), $"apart {Text(-Further)}"),
        ];
        return (TurningView.Draw(input, from, s_wide), TurningView.Draw(input, from, s_narrow),
            new($"{Text(from.Turn)} {Text(from.Tip)} {Text(from.Apart)}", Json(input), links, "Drag to turn, with Shift to move the paper; arrow keys turn and tip, + and - part and join. Choose a part by a click, or by its name in the text below."));
    }

    private const int Step = 15;
    private const double Further = 0.2;
    private static readonly PaperBox s_wide = new(200, 130), s_narrow = new(100, 100);

    private static double? Number(string? text) => double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) ? number : null;

    private static string Text(double number) => Math.Round(number, 2).ToString(CultureInfo.InvariantCulture);

    // Of a block among several that make up one member also the middle of that, and its edges with the faces they lie on.
    private static string Json(TurningInput input) => JsonSerializer.Serialize(input.Blocks.Select(b => (object[])
    [
        b.Key, SvgStyle.WashClass(b.Wash), .. Numbers(b.Low), .. Numbers(b.High),
        .. b.Around is { } around ? new object[] { Numbers(around), b.Edges.Select(e => (object[])[e.Face, e.Other, .. Numbers(e.From), .. Numbers(e.To)]) } : [],
    ]));

    private static object[] Numbers(Spot spot) => [Short(spot.X), Short(spot.Y), Short(spot.Z)];

    private static double Short(double millimetres) => Math.Round(millimetres, 2);
}
