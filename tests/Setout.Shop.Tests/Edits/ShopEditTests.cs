using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures.Text;
using Setout.Shop.Edits;
using Setout.Shop.ShopEdits;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Edits;

/// <summary>Edits of the shop file: made from its schema, done as splices.</summary>
public class ShopEditTests
{
    private static readonly string s_shop = File.ReadAllText(Repository.PathOf("samples/shop.yaml"));
    private static readonly string s_small = "setout-shop: 1   # ours\nunit: mm\n";

    private static Edited Do(string text, string key, string choice, params (string, string)[] values)
    {
        ShopChoice offered = ShopChoices.For(text, key).First(c => c.Id == choice);
        TextRead<ShopEdit> made = offered.Make(values.ToDictionary(v => v.Item1, v => v.Item2));
        return made.Value is { } edit ? edit.ApplyTo(text) : new(null, "", made.Findings);
    }

    [Fact]
    public void Price_Changed_ChangesThatFigureAlone()
    {
        Edited edited = Do(s_shop, "stock.0", "set", ("price", "81.50"));
        Assert.Equal(s_shop.Replace("size: 96 x 48, price: 74.00", "size: 96 x 48, price: 81.50", StringComparison.Ordinal), edited.Text);
        Assert.Equal("hardwood plywood 3/4, 96 x 48: price 74.00 to 81.50", edited.Name);
    }

    /// <summary>New wood is not like what was read, or has knots: it gets a line of its own.</summary>
    [Theory]
    [InlineData("panel: birch plywood, label: 18 mm, size: 1500 x 1250, have: 2", true)]
    [InlineData("panel: birch plywood, label: 18 mm, size: 1500 x 1250, have: 2, read: 17.8", false)]
    [InlineData("stick: ash, section: 45 x 20, length: 3000, have: 2", true)]
    [InlineData("stick: ash, section: 45 x 20, length: 3000, have: 2, flaws: [{from: 400, to: 430}]", false)]
    public void Bought_Wood_JoinsOnlyALineOfNewWood(string line, bool isJoined)
    {
        string text = $"setout-shop: 1\nunit: mm\nstock:\n  - {{{line}}}\n";
        ShopStock there = ShopText.Read(text).Value!.Stock.Single();
        Edited edited = BoughtWood.Of(text, there)!.ApplyTo(new Dictionary<string, string> { ["count"] = "3" }, text).Edited;
        ImmutableArray<ShopStock> after = ShopText.Read(edited.Text!).Value!.Stock;
        Assert.Equal(isJoined ? [5] : new[] { 2, 3 }, after.Select(s => s.Size.InHand!.Value));
        if (isJoined) return;
        Assert.Null(after[1].Reads);
        Assert.Empty(after[1].Size.Flaws);
    }

    [Theory]
    [InlineData("kerf", "sheets", "2.2", "\nkerf: {sheets: 2.2}\n")]
    [InlineData("saws.fence", "widest", "760", "\nsaws: {fence: {widest: 760}}\n")]
    [InlineData("whole", "lift", "20 kg", "\nlift: 20 kg\n")]
    [InlineData("grid", "mm", "1", "\ngrid: {mm: 1}\n")]
    [InlineData("instruments", "tape", "0.8", "\ninstruments: {tape: 0.8}\n")]
    public void Key_OfAMapThatIsNotThere_IsAddedWithIt(string thing, string key, string value, string line)
    {
        string? text = Do(s_small, thing, "set", (key, value)).Text;
        Assert.NotNull(text);
        Assert.Contains("# ours", text, StringComparison.Ordinal);
        // Written in braces or in lines, as there is room.
        Assert.Equal(line.Replace(" ", "", StringComparison.Ordinal).Replace("{", "", StringComparison.Ordinal).Replace("}", "", StringComparison.Ordinal).Trim().Replace(":", "", StringComparison.Ordinal),
            text[s_small.IndexOf("unit", StringComparison.Ordinal)..].Replace("unit: mm", "", StringComparison.Ordinal).Replace("\n", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal)
                .Replace("{", "", StringComparison.Ordinal).Replace("}", "", StringComparison.Ordinal).Replace(":", "", StringComparison.Ordinal));
        // And goes with the last of its keys.
        Assert.Equal(s_small, Do(text, thing, "set", (key, "")).Text);
    }

    [Fact]
    public void Wood_PutIntoAnEmptyRack_CountedAgainAndTakenOut()
    {
        string first = Do(s_small, "stock", "add-stock-panel", ("panel", "birch plywood"), ("label", "18 mm"), ("size", "2500 x 1250"), ("have", "3"), ("price", "128")).Text!;
        ShopStock there = Assert.Single(ShopText.Read(first).Value!.Stock);
        Assert.Equal((3, 0, "panel birch plywood 18 mm"), (there.Size.InHand, there.Item, there.Identity));
        string counted = Do(first, "stock.0", "count", ("have", "2")).Text!;
        Assert.Equal((2, "2026-01-01"), (ShopText.Read(counted).Value!.Stock[0].Size.InHand, ShopText.Read(counted).Value!.Stock[0].Counted!.Text));
        Assert.Empty(ShopText.Read(Do(first, "stock.0", "take-out").Text!).Value!.Stock);
    }

    [Fact]
    public void Saw_ThatIsNotThere_IsSaidSoAndTakenBack()
    {
        string none = Do(s_small, "saws.sled", "none").Text!;
        Assert.Null(ShopText.Read(none).Value!.Saws.Sled);
        Assert.Equal(["there"], ShopChoices.For(none, "saws.sled").Select(c => c.Id));
        Assert.NotNull(ShopText.Read(Do(none, "saws.sled", "there").Text!).Value!.Saws.Sled);
    }

    [Fact]
    public void Board_GetsAFlawAndATrimByEnd()
    {
        Edited flawed = Do(s_shop, "stock.17", "add-flaw", ("from", "10 in"), ("to", "12 in"));
        Assert.Equal(2, ShopText.Read(flawed.Text!).Value!.Stock[17].Size.Flaws.Length);
        Edited trimmed = Do(s_shop, "stock.17", "trim", ("near end", "0"), ("far end", "1/4"));
        Assert.Equal(0, ShopText.Read(trimmed.Text!).Value!.Stock[17].Size.Sides!.NearEnd!.Value.Ticks);
        Assert.DoesNotContain("trim", ShopChoices.For(trimmed.Text!, "stock.17").First(c => c.Id == "set").Fields.Select(f => f.Name));
    }

    [Theory]
    [InlineData("stock.0", "set", "price", "much")]
    [InlineData("stock.0", "set", "size", "96")]
    [InlineData("kerf", "set", "sheets", "3 ft")]
    [InlineData("whole", "set", "lift", "heavy")]
    [InlineData("stock.0", "set", "have", "three")]
    [InlineData("stock.0", "set", "panel", "")]
    [InlineData("stock.0", "set", "price", "74.00")]
    public void Field_WithWhatCannotBe_IsRefusedWithARemedy(string thing, string choice, string field, string value)
    {
        Edited edited = Do(s_shop, thing, choice, (field, value));
        Assert.Null(edited.Text);
        Assert.NotEmpty(edited.Findings[0].Remedy);
        Assert.False(edited.Findings[0].Place.IsKnown);
    }

    [Fact]
    public void Text_WithMistakes_IsNotEdited() => Assert.Equal("edit.mistakes", Do(s_small + "kref: 3\n", "kerf", "set", ("sheets", "3")).Findings[0].Code);

    /// <summary>All keys of the schema can be told in some form: an independent walk of the schema against the fields that are offered.</summary>
    [Fact]
    public void Fields_OfAllThings_AreAllKeysOfTheSchema()
    {
        using var schema = System.Text.Json.JsonDocument.Parse(File.ReadAllText(Repository.PathOf("docs/schemas/shop.schema.json")));
        string text = s_small + "stock:\n  - {panel: mdf, label: 3/4, size: 9 x 9, have: 1}\n  - {lumber: 2x4, length: 99, have: 1, flaws: [{from: 1, to: 2}]}\n  - {stick: oak, section: 9 x 9, length: 99, have: 1, flaws: [{from: 1, to: 2}]}\nshims:\n  - {name: a, thickness: 1}\nprices:\n  - {name: a, price: 1}\n";
        Assert.True(ShopText.Read(text).IsSound);
        string[] things = ["whole", "grid", "kerf", "saws.fence", "saws.sled", "saws.guided", "saws.boards", "trim", "keep", "instruments", "spread", "stock.0", "stock.1", "stock.2", "shims.0", "prices.0"];
        HashSet<string> offered = [.. things.SelectMany(t => ShopChoices.For(text, t)).SelectMany(c => c.Fields).Select(f => f.Name)];
        IEnumerable<string> keys = schema.RootElement.GetProperty("$defs").EnumerateObject().Select(d => d.Value).Append(schema.RootElement).Where(d => d.TryGetProperty("properties", out _))
            .SelectMany(d => d.GetProperty("properties").EnumerateObject().Where(p => !p.Value.TryGetProperty("items", out _) && !IsMap(p.Value, schema.RootElement.GetProperty("$defs"))).Select(p => p.Name)).Where(n => n != "setout-shop");
        string[] missing = [.. keys.Distinct().Except(offered)];
        Assert.Empty(missing);
    }

    private static bool IsMap(System.Text.Json.JsonElement value, System.Text.Json.JsonElement defs)
    {
        string[] refs = [.. (value.TryGetProperty("anyOf", out System.Text.Json.JsonElement any) ? [.. any.EnumerateArray()] : new[] { value }).Where(v => v.TryGetProperty("$ref", out _)).Select(v => v.GetProperty("$ref").GetString()!["#/$defs/".Length..])];
        return refs.Length > 0 && refs.All(r => r == "absent" || defs.GetProperty(r).TryGetProperty("properties", out _));
    }

    private static readonly ImmutableArray<string> s_typed = ["", "3", "1/16", "96 x 48", "yes", "no", "in", "mm", "oak", "birch plywood", "18 mm", "2x4", "2026-11-27", "23 kg", "a name # of it", "0"];

    /// <summary>Whatever is offered and however it is filled in, in a long sequence: the text stays one that can be read, no remark is lost, and each change can be told.</summary>
    [Fact]
    public void Edits_InAnySequence_KeepTheTextReadableAndItsRemarks()
    {
        string[] places = ["whole", "grid", "kerf", "saws.fence", "saws.sled", "saws.guided", "saws.boards", "trim", "keep", "instruments", "spread", "stock", "shims", "prices", "stock.0", "stock.4", "stock.15", "stock.17", "shims.1", "prices.2"];
        int done = 0, all = 0;
        Gen.Select(Gen.Bool, Gen.Select(Gen.Int[0, places.Length - 1], Gen.Int[0, 20], Gen.Int[0, s_typed.Length - 1].Array[1, 12], Gen.Bool).Array[8, 30]).Holds(trial =>
        {
            string text = trial.Item1 ? s_shop : s_small;
            foreach ((int place, int which, int[] typed, bool isSparse) in trial.Item2)
            {
                ImmutableArray<ShopChoice> choices = ShopChoices.For(text, places[place]);
                if (choices.IsEmpty) continue;
                ShopChoice choice = choices[which % choices.Length];
                // Mostly one field is changed, as people do.
                var values = choice.Fields.Select((f, i) => (f.Name, Value: isSparse && i != typed[0] % choice.Fields.Length ? f.Default : f.Options.IsEmpty ? s_typed[typed[i % typed.Length]] : f.Options[typed[0] % f.Options.Length])).ToDictionary(f => f.Name, f => f.Value);
                Interlocked.Increment(ref all);
                if (choice.Make(values).Value is not { } edit) continue;
                Edited edited = edit.ApplyTo(text);
                if (edited.Text is not { } after)
                {
                    Assert.NotEmpty(edited.Findings);
                    continue;
                }
                Interlocked.Increment(ref done);
                Assert.True(ShopText.Read(after).IsSound);
                Assert.NotEmpty(edited.Name);
                foreach (string remark in new[] { "# The shop that goes", "# rips: the saw", "# ours" }.Where(r => text.Contains(r, StringComparison.Ordinal) && !(r.Contains("rips", StringComparison.Ordinal) && !after.Contains("kerf:", StringComparison.Ordinal))))
                    Assert.Contains(remark, after, StringComparison.Ordinal);
                text = after;
            }
        }, iter: 60);
        Assert.True(done * 5 > all, $"Only {done} of {all} were done.");
    }

    [Theory]
    [InlineData(LengthUnit.Inch, "1/64", "3/32", "USD", true)]
    [InlineData(LengthUnit.Millimetre, "", "", "", true)]
    [InlineData(LengthUnit.Millimetre, "0.5", "wide", "", false)]
    [InlineData(LengthUnit.Inch, "3 ft", "", "", false)]
    public void NewShop_WithTheLeast_IsReadOrSaysWhy(LengthUnit unit, string grid, string kerf, string currency, bool isRead)
    {
        Edited made = new NewShop("bakery: the yard", unit, grid, kerf, currency).Text();
        Assert.Equal(isRead, made.IsDone);
        if (isRead) Assert.Equal("bakery: the yard", ShopText.Read(made.Text!).Value!.Name);
        else Assert.NotEmpty(made.Findings[0].Words);
    }
}
