// Over 200 lines: every way by which a length comes in, against the same law.
using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.Pieces;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Whole;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Edits.Saying;
using Setout.Shop.ShopEdits;
using Setout.Shop.Tests.Plans;
using Setout.Shop.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Edits;

/// <summary>A person who is shown millimetres edits a piece in inches, and the other way round: no size ever comes out in the wrong unit.</summary>
public sealed partial class OtherUnitTests
{
    private const string Pieces = "tests/Setout.Shop.Tests/SettingOut/Pieces";

    private static string[] Texts => [.. Repository.FilesIn(Pieces, "*.yaml").Concat(Repository.FilesIn("samples", "*.yaml")).Where(f => !f.EndsWith("shop.yaml", StringComparison.Ordinal)).Select(f => File.ReadAllText(Repository.PathOf(f)))];

    private static LengthUnit Other(LengthUnit unit) => unit == LengthUnit.Inch ? LengthUnit.Millimetre : LengthUnit.Inch;

    // Of each kind of saying the first few, from all texts.
    private static IEnumerable<(string Text, Piece Piece, EditChoice Choice)> Fields(int most)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (string text in Texts)
        {
            if (PieceText.Read(text) is not { IsSound: true, Value: { } piece } || Told(text) == "mistakes") continue;
            foreach (Said said in Thing.In(YamlTree.Read(text).Value!).Where(t => t.Node is YamlMap).Select(t => t.Key).Prepend("").Distinct().SelectMany(k => Sayings.Of(text, k)!.All))
            {
                string kind = $"{piece.Unit} {Numbers().Replace(said.Choice.Id, "")} {said.Choice.Fields.FirstOrDefault()?.Kind}";
                if (!said.IsSaid || said.Choice.Fields.Length != 1 || said.Choice.Id == "say.unit" || (seen[kind] = seen.GetValueOrDefault(kind) + 1) > most) continue;
                yield return (text, piece, said.Choice);
            }
        }
    }

    [GeneratedRegex("[0-9]+")]
    private static partial Regex Numbers();

    // All sizes of a piece and the names of all that is in it.
    private static string Told(string text)
    {
        if (PieceText.Read(text) is not { IsSound: true, Value: { } piece }) return "mistakes";
        SetPiece set = PieceSetOut.Of(piece, piece.Grid ?? (piece.Unit == LengthUnit.Inch ? Usual.InchGrid : Usual.MetricGrid), ImmutableDictionary<QuantityKey, Pin>.Empty);
        return set.IsStopped ? "mistakes" : string.Join(';', set.Worked.Values.OrderBy(v => v.Key).Select(v => $"{v.Key}={v.Value.Value.Ticks}").Concat(set.Parts.Select(p => $"{p.Key} {p.Name} {p.Count}")).Concat(set.Hardware.Select(h => $"{h.Name} {h.Count}"))
            .Concat(piece.Materials.Values.OrderBy(m => m.Name, StringComparer.Ordinal).Select(m => Placeless().Replace($"{m}", ""))).Append(Placeless().Replace($"{piece.Name} {piece.About} {piece.Grid} {piece.WayIn}", "")));
    }

    private static void Same(string before, string after, string what)
    {
        if (before == after) return;
        string[] one = before.Split(';'), two = after.Split(';');
        Assert.Fail($"{what}: {string.Join("; ", one.Except(two).Take(3))} became {string.Join("; ", two.Except(one).Take(3))}");
    }

    // Where something is written moves when a text grows.
    [GeneratedRegex("Place = Place \\{[^}]*\\}|line [0-9]+")]
    private static partial Regex Placeless();

    private static Shop.Texts.Shop Usual => Shop.Texts.Shop.Usual;

    private static string After(string text, EditChoice choice, string? typed)
    {
        TextRead<Edit> made = choice.Make(typed is null ? new Dictionary<string, string>() : new Dictionary<string, string> { [choice.Fields[0].Name] = typed });
        // What looks like the other unit is asked.
        if (typed is not null && made.Findings.Any(f => f.Code == "edit.two-units")) return text;
        Edited edited = made.Value!.ApplyTo(text);
        return edited.Text ?? (edited.Findings[0].Code == "edit.nothing" ? text : edited.Findings[0].Code);
    }

    /// <summary>What stands in a field, sent as it is, is what it was.</summary>
    [Fact]
    public void EachField_SentAsItStands_ChangesNoSize()
    {
        int fields = 0;
        foreach ((string text, Piece piece, EditChoice choice) in Fields(3))
        {
            fields++;
            Same(Told(text), Told(After(text, choice.For(piece.Unit, Other(piece.Unit)), null)), $"{piece.Name}: {choice.Id} {choice.Fields[0].Default}");
        }
        Assert.True(fields > 250, $"{fields}");
    }

    /// <summary>The same size, typed as a bare figure in the unit of the person, is the same size.</summary>
    [Fact]
    public void EachLength_TypedInTheOtherUnit_IsTheSameSize()
    {
        int lengths = 0;
        foreach ((string text, Piece piece, EditChoice choice) in Fields(3).Where(s => s.Choice.Fields[0].Kind is FieldKind.Length or FieldKind.Share or FieldKind.Size or FieldKind.Lengths))
        {
            LengthUnit other = Other(piece.Unit);
            string Bare(string one) => LengthText.Parse(one, piece.Unit) is not { IsRead: true, Value: var length } ? one : $"{(other == LengthUnit.Inch ? length.Inches : length.Millimetres)}";
            string typed = choice.Fields[0].Kind switch
            {
                FieldKind.Size => string.Join(" x ", choice.Fields[0].Default.Split('x', 'X', '×').Select(Bare)),
                FieldKind.Lengths => string.Join(", ", choice.Fields[0].Default.Split(',').Select(Bare)),
                _ => Bare(choice.Fields[0].Default),
            };
            lengths++;
            Same(Told(text), Told(After(text, choice.For(piece.Unit, other), typed)), $"{piece.Name}: {choice.Id} {choice.Fields[0].Default} as {typed}");
        }
        Assert.True(lengths > 100, $"{lengths}");
    }

    /// <summary>No field that is taken for words holds a length: one would be read in the wrong unit.</summary>
    [Fact]
    public void NoFieldOfWords_HoldsALength()
    {
        foreach ((string text, Piece piece, EditChoice choice) in Fields(1).Where(s => s.Choice.Fields[0].Kind is FieldKind.Words or FieldKind.Count))
        {
            foreach ((string metric, string inch) in new[] { ("25.4 mm", "1 in"), ("25.4 mm x 50.8 mm", "1 in x 2 in") })
            {
                string one = Told(After(text, choice, metric)), two = Told(After(text, choice, inch));
                Assert.False(one == two && one != Told(text) && one != "mistakes", $"{piece.Name}: {choice.Id} {choice.Fields[0].Default}");
            }
        }
    }

    /// <summary>The unit of a text is another, and every size is what it was; figures typed from then on are in the new one.</summary>
    [Theory]
    [MemberData(nameof(Sample.Data), MemberType = typeof(Sample))]
    public void UnitOfTheText_Changed_ChangesNoSize(string name)
    {
        string text = Sample.Text(name);
        Piece piece = PieceText.Read(text).Value!;
        string to = piece.Unit == LengthUnit.Inch ? "mm" : "in";
        EditChoice unit = Sayings.Of(text, "")!.All.Single(s => s.Choice.Id == "say.unit").Choice;

        Edited edited = unit.Make(new Dictionary<string, string> { ["value"] = to }).Value!.ApplyTo(text);

        Piece after = PieceText.Read(edited.Text!).Value!;
        Assert.NotEqual(piece.Unit, after.Unit);
        // Usual figures and the grid go by the unit; what was given does not.
        SetPiece one = SetOut(piece, piece.Unit), two = SetOut(after with { Unit = piece.Unit }, piece.Unit);
        Assert.Equal(one.Worked.Values.Count, two.Worked.Values.Count);
        Assert.All(one.Worked.Values, v => Assert.Equal(v.Value.Value, two.Worked[v.Key]));
        Assert.Equal(text.Split('\n').Count(l => l.Contains('#', StringComparison.Ordinal)), edited.Text!.Split('\n').Count(l => l.Contains('#', StringComparison.Ordinal)));
    }

    [Fact]
    public void UnitOfTheShop_Changed_ChangesNoFigure()
    {
        string text = Sample.Text("shop");
        ShopChoice whole = ShopChoices.For(text, "whole").Single(c => c.Id == "set");
        string after = whole.Make(new Dictionary<string, string> { ["unit"] = "mm" }).Value!.ApplyTo(text).Text!;
        Assert.Contains("unit: mm", after, StringComparison.Ordinal);
        Shop.Texts.Shop one = ShopText.Read(text).Value!, two = ShopText.Read(after).Value!;
        Assert.Equal(one.Stock.Select(s => (s.Size.Along, s.Size.Across)), two.Stock.Select(s => (s.Size.Along, s.Size.Across)));
        Assert.Equal(one.Shims.Select(s => (s.Name, s.Thickness)), two.Shims.Select(s => (s.Name, s.Thickness)));
        foreach (ShopPlace place in ShopPlace.All((YamlMap)YamlTree.Read(text).Value!))
            foreach (ShopKey key in place.Keys.Keys.Where(k => k.IsField))
                Assert.Equal(ShopFigures.Of(one, LengthUnit.Inch, place.Keys.Kind, key.Name), ShopFigures.Of(two, LengthUnit.Inch, place.Keys.Kind, key.Name));
    }

    /// <summary>A thousandth of an inch is said as that to whoever works in inches, and a half millimetre to whoever works in those.</summary>
    [Theory]
    [InlineData("calliper", LengthUnit.Inch, "0.001 in")]
    [InlineData("tape", LengthUnit.Inch, "1/32 in")]
    public void FigureOfAShop_IsSaidInTheUnitOfThePerson(string instrument, LengthUnit unit, string said) => Assert.Equal(said, ShopFigures.Of(Usual, unit, "instruments", instrument));

    private static SetPiece SetOut(Piece piece, LengthUnit unit) =>
        PieceSetOut.Of(piece, piece.Grid ?? (unit == LengthUnit.Inch ? Usual.InchGrid : Usual.MetricGrid), ImmutableDictionary<QuantityKey, Pin>.Empty);

    [Fact]
    public void OfferedOnTheDrawing_TypedInMillimetres_IsWrittenWithTheUnit()
    {
        string text = Sample.Text("luthiers-bench");
        SetPiece set = Sample.Source("luthiers-bench").ShownIn(LengthUnit.Millimetre).SetOut();
        EditChoice depth = Choices.For(set, "F.depth").Single();

        Assert.EndsWith(" in", depth.Fields[0].Default, StringComparison.Ordinal);
        Assert.Contains("depth: 610 mm", depth.Make(new Dictionary<string, string> { [depth.Fields[0].Name] = "610" }).Value!.ApplyTo(text).Text!, StringComparison.Ordinal);
        Assert.Contains("depth: 24 in", depth.Make(new Dictionary<string, string> { [depth.Fields[0].Name] = "24 in" }).Value!.ApplyTo(text).Text!, StringComparison.Ordinal);
    }

    [Fact]
    public void FractionTypedByWhoeverIsShownMillimetres_IsAskedAndNotTaken()
    {
        SetPiece set = Sample.Source("luthiers-bench").ShownIn(LengthUnit.Millimetre).SetOut();
        EditChoice depth = Choices.For(set, "F.depth").Single();
        TextRead<Edit> made = depth.Make(new Dictionary<string, string> { [depth.Fields[0].Name] = "24 1/2" });
        Assert.Null(made.Value);
        Assert.Equal("edit.two-units", Assert.Single(made.Findings).Code);
        Assert.NotNull(depth.Make(new Dictionary<string, string> { [depth.Fields[0].Name] = "24 1/2 in" }).Value);
    }

    [Fact]
    public void OfTheShop_TypedInMillimetres_IsWrittenWithTheUnit_ButForTheGrid()
    {
        string text = Sample.Text("shop");
        ShopChoice kerf = ShopChoices.For(text, "kerf").Single(c => c.Id == "set").For(LengthUnit.Inch, LengthUnit.Millimetre);
        Assert.Contains("sheets: 2.8 mm", kerf.Make(new Dictionary<string, string> { ["sheets"] = "2.8" }).Value!.ApplyTo(text).Text!, StringComparison.Ordinal);
        ShopChoice sheet = ShopChoices.For(text, "stock").Single(c => c.Id == "add-stock-panel").For(LengthUnit.Inch, LengthUnit.Millimetre);
        Assert.Contains("2440 mm x 1220 mm", sheet.Make(new Dictionary<string, string> { ["panel"] = "birch plywood", ["label"] = "18 mm", ["size"] = "2440 x 1220" }).Value!.ApplyTo(text).Text!, StringComparison.Ordinal);
        ShopChoice grid = ShopChoices.For(text, "grid").Single(c => c.Id == "set").For(LengthUnit.Inch, LengthUnit.Millimetre);
        Assert.Contains("in: 1/16", grid.Make(new Dictionary<string, string> { ["in"] = "1/16" }).Value!.ApplyTo(text).Text!, StringComparison.Ordinal);
    }
}
