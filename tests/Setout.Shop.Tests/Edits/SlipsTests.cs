using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Edits.Saying;
using Setout.Shop.ShopEdits;
using Setout.Shop.Tests.SettingOut;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Edits;

/// <summary>A form tells all slips of what was typed at once, each with its field.</summary>
public class SlipsTests
{
    private static readonly FieldKind[] s_figures = [FieldKind.Length, FieldKind.Share, FieldKind.Size, FieldKind.Lengths, FieldKind.Count];

    /// <summary>Every form of several figures that is offered for a thing of a sample, on the drawing and on its page of all that can be said.</summary>
    private static IEnumerable<(string Key, EditChoice Offer)> Forms(string text)
    {
        SetPiece set = RandomEditsTests.SetOut(text);
        string[] keys = ["", .. set.Piece.Keys.Keys, .. set.Piece.Materials.Keys, .. set.Piece.DrawerKinds.Keys, .. set.Piece.DoorKinds.Keys];
        return keys.SelectMany(k => Choices.For(set, k).Concat(Sayings.Of(text, k)?.All.Select(s => s.Choice) ?? []).Select(c => (k, c)))
            .Where(f => f.c.Fields.Count(i => s_figures.Contains(i.Kind)) > 1).DistinctBy(f => string.Join(' ', f.c.Fields.Select(i => i.Name).Prepend(f.c.Id)));
    }

    // Words are no slip, and of some words there must be one.
    private static Dictionary<string, string> Typed(Offer offer, Func<int, string> figure) => offer.Fields.Index()
        .ToDictionary(f => f.Item.Name, f => s_figures.Contains(f.Item.Kind) ? figure(f.Index) : f.Item.Kind == FieldKind.OneOf ? f.Item.MayBeEmpty ? "" : f.Item.Options[0] : f.Item.Default.Length > 0 ? f.Item.Default : "word");

    private static string[] Figures(Offer offer) => [.. offer.Fields.Where(f => s_figures.Contains(f.Kind)).Select(f => f.Name).Order(StringComparer.Ordinal)];

    [Theory]
    [InlineData(Sample.Bench), InlineData(Sample.Cabinet)]
    public void Form_WithASlipInEveryFigure_TellsThemAll(string sample)
    {
        string text = Sample.Text(sample);
        int tried = 0;
        foreach ((string key, EditChoice offer) in Forms(text))
        {
            Edited edited = offer.ApplyTo(Typed(offer, i => $"slip{i}"), text, EditBench.Empty);
            Assert.False(edited.IsDone);
            Assert.True(Figures(offer).All(f => edited.Findings.Any(n => n.Field == f)), $"{key} {offer.Id}: {string.Join(" | ", edited.Findings.Select(f => $"{f.Field}: {f.Words}"))}");
            // The same slip everywhere is told everywhere too.
            edited = offer.ApplyTo(Typed(offer, _ => "much"), text, EditBench.Empty);
            Assert.True(Figures(offer).All(f => edited.Findings.Any(n => n.Field == f)), $"{key} {offer.Id}: {string.Join(" | ", edited.Findings.Select(f => $"{f.Field}: {f.Words}"))}");
            tried++;
        }
        Assert.True(tried > 0);
    }

    [Theory]
    [InlineData(Sample.Bench), InlineData(Sample.Cabinet)]
    public void Form_LeftEmpty_TellsAllThatIsWanted(string sample)
    {
        string text = Sample.Text(sample);
        foreach ((string key, EditChoice offer) in Forms(text))
        {
            string[] wanted = [.. offer.Fields.Where(f => !f.MayBeEmpty).Select(f => f.Name)];
            Edited edited = offer.ApplyTo(offer.Fields.ToDictionary(f => f.Name, _ => ""), text, EditBench.Empty);
            if (wanted.Length > 0) Assert.Equal(wanted, edited.Findings.Select(f => f.Field).Where(wanted.Contains));
            Assert.Equal(edited.Findings.Length, edited.Findings.Select(f => f.Field).Distinct().Count());
        }
    }

    [Fact]
    public void Well_InNoBayAndNowhere_AsksForItsPlaceWithAllElse()
    {
        string text = Sample.Text(Sample.Bench);
        EditChoice well = Choices.For(RandomEditsTests.SetOut(text), "T").First(c => c.Id == "well");
        Edited edited = well.ApplyTo(new Dictionary<string, string> { ["bay"] = "", ["left"] = "", ["machine"] = "sander", ["footprint"] = "18 by", ["table"] = "-3", ["front"] = "" }, text, EditBench.Empty);
        Assert.Equal(["left", "footprint", "table", "front"], edited.Findings.Select(f => f.Field));
    }

    [Fact]
    public void Finish_WithANameThatIsTaken_TellsWhatElseIsWrong()
    {
        string text = Sample.Text(Sample.Cabinet);
        EditChoice finish = Sayings.Of(text, "")!.All.Select(s => s.Choice).First(c => c.Id == "say.finishes.new0");
        Edited first = finish.ApplyTo(new Dictionary<string, string> { ["name-of-it"] = "Danish oil", ["finish"] = "oil", ["coats"] = "2" }, text, EditBench.Empty);
        Edited edited = finish.ApplyTo(new Dictionary<string, string> { ["name-of-it"] = "Danish oil", ["finish"] = "oil", ["coats"] = "two", ["on"] = "nothing-there" }, first.Text!, EditBench.Empty);
        Assert.Equal(["coats", "name-of-it", "on"], edited.Findings.Select(f => f.Field).Order(StringComparer.Ordinal));
        Assert.Contains(edited.Findings, f => f.Field == "name-of-it" && f.Words.Contains("already", StringComparison.Ordinal));
    }

    /// <summary>What fits the fields is not told of them: the edit comes out as ever.</summary>
    [Fact]
    public void Form_WithOneSlip_TellsThatAlone()
    {
        string text = Sample.Text(Sample.Bench);
        EditChoice beside = Choices.For(RandomEditsTests.SetOut(text), "F").First(c => c.Id == "case-beside");
        Edited edited = beside.ApplyTo(new Dictionary<string, string> { ["height"] = "tall" }, text, EditBench.Empty);
        Assert.Equal("height", Assert.Single(edited.Findings).Field);
    }

    [Fact]
    public void ShopForms_WithASlipInEveryFigure_TellThemAll()
    {
        string text = Sample.Text("shop.yaml");
        string[] things = [ShopPlace.Whole, "stock", "grid", "kerf", "saws.fence", "saws.sled", "saws.guided", "saws.boards", "prices", "instruments", "stock.0"];
        int tried = 0;
        foreach (ShopChoice offer in things.SelectMany(t => ShopChoices.For(text, t)).Where(c => Figures(c).Length > 1))
        {
            Edited edited = offer.ApplyTo(Typed(offer, i => $"slip{i}"), text).Edited;
            Assert.True(Figures(offer).All(f => edited.Findings.Any(n => n.Field == f)), $"{offer.Id} {offer.Words}: {string.Join(" | ", edited.Findings.Select(f => $"{f.Field}: {f.Words}"))}");
            tried++;
        }
        Assert.InRange(tried, 6, 60);
    }

    [Fact]
    public void Shop_BegunWithSlips_TellsThemAll() =>
        Assert.Equal(["grid", "kerf"], new NewShop("Ours", Core.Measures.Text.LengthUnit.Inch, "fine", "thin", "EUR").Text().Findings.Select(f => f.Field));

    [Fact]
    public void Bought_WithSlips_TellsThemAll()
    {
        string text = Sample.Text("shop.yaml");
        ShopStock there = ShopText.Read(text).Value!.Stock.First(s => s.Size.Across is not null);
        Edited edited = BoughtWood.Of(text, there)!.ApplyTo(new Dictionary<string, string> { ["count"] = "0", ["price"] = "dear" }, text).Edited;
        Assert.Equal(["count", "price"], edited.Findings.Select(f => f.Field));
    }
}
