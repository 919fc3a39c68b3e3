using System.Collections.Immutable;
using CsCheck;
using Setout.Core.SettingOut;
using Setout.Shop.Edits;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Shop.Tests.Texts;
using Setout.Testing;

namespace Setout.Shop.Tests.Edits;

/// <summary>Edits of spoilt texts: never an exception; what comes out could be read where what went in could.</summary>
public class EditFuzzTests
{
    private static readonly string[] s_keys = ["C", "L", "K", "A", "B1", "M1", "P", "L2", "T", "F", "carcase", "bench", "framed", "A1", "D1", "S1", "legs", "", "Z"];
    private static readonly string[] s_words = ["12", "rest", "2 parts", "1/0", "-", "a: b", "x y", "", "\n", "birch", "400000 m"];

    private static readonly Gen<Edit> s_edit = Gen.Select(Gen.OneOf(s_keys), Gen.OneOf(s_words), Gen.Int[0, 40], Gen.Bool, Gen.Int[0, 29], (key, word, count, yes, kind) => (Edit)(kind switch
    {
        0 => Divide.Equally(key, yes, count),
        1 => Divide.At(key, yes, word, count % 2 == 0, (Between)(count % 3)),
        2 => new Divide(key, yes, [word, null, word]),
        3 => new PutDrawers(key, count, yes ? word : null),
        4 => new PutShelves(key, count, word, yes ? word : null),
        5 => new PutDoors(key, yes, null, count % 2 == 0 ? word : null),
        6 => new Empty(key),
        7 => new AddDrawer(key, count - 3, yes ? word : null),
        8 => new TakeOutDrawer(key),
        9 => new SetFront(key, yes ? word : null),
        10 => new SetKind(key, word),
        11 => new AddShelf(key, count - 3),
        12 => new MoveDivider(key, word),
        13 => new TakeOutDivider(key),
        14 => new TakeOutOpening(key),
        15 => new TakeOut(key),
        16 => new AddMaterial(yes ? Wood.Sheet(word, word) : Wood.Stick(word, word), null, count % 2 == 0 ? TextPath.Of(key, "of") : null),
        17 => new AddDrawerKind(yes ? word : null),
        18 => new AddDoorKind(yes ? word : null),
        19 => new AddTop(yes ? word : null, count % 2 == 0 ? key : null, word),
        20 => new AddWell(key, word, yes ? word : null, word, word, word, count % 2 == 0 ? key : null),
        21 => new AddEdging(key, yes ? word : null),
        22 => new SetAny(TextPath.Of(key, count % 2 == 0 ? "width" : "name"), word),
        23 => new SetAny(TextPath.Of(key, "overhang", "front"), word),
        24 => new ClearAny(TextPath.Of(key, count % 2 == 0 ? "across" : "width")),
        25 => new AddStructure((NewKind)(count % 3), key, yes, word, word, word),
        26 => new AddOpening(key, yes, count % 2 == 0 ? word : null),
        27 => new MoveItem(key, count - 20),
        28 => new SetWritten(TextPath.Of(key, "back"), $"{{of: {word}}}"),
        _ => new ListOpenings(key),
    }));

    [Fact]
    public void Apply_SpoiltTexts_NeverThrows() => Gen.Select(FuzzTests.Spoilt, s_edit.Array[1, 3]).Holds((text, edits) =>
    {
        bool isSound = PieceText.Read(text).IsSound;
        foreach (Edit edit in edits)
        {
            Edited edited = edit.ApplyTo(text);
            Assert.True(edited.IsDone || edited.Findings.Length > 0, edit.ToString());
            if (edited.Text is not { } after) continue;
            Assert.True(!isSound || PieceText.Read(after).IsSound, edit.ToString());
            text = after;
        }
    }, iter: 5000);

    [Fact]
    public void Choices_OfAnyKeyOfSpoiltTexts_NeverThrow() => Gen.Select(FuzzTests.Spoilt, Gen.OneOf(s_keys), Gen.OneOf(s_words)).Holds((text, key, word) =>
    {
        if (PieceSource.Read(text, null, null).Source is not { } source) return;
        foreach (EditChoice choice in Choices.For(source.SetOut(), key))
        {
            TextRead<Edit> made = choice.Make(choice.Fields.ToDictionary(f => f.Name, _ => word));
            Assert.True(made.Value is not null || made.Findings.Length > 0);
            made.Value?.ApplyTo(text);
        }
    }, iter: 150);

    [Fact]
    public void Splice_SpoiltTexts_NeverThrows() => Gen.Select(FuzzTests.Spoilt, Gen.Int[0, 10_000], Gen.Int[0, 6], Gen.OneOf(s_words)).Holds((text, place, kind, word) =>
    {
        if (YamlTree.Read(text) is not { IsSound: true, Value: { } root }) return;
        ImmutableArray<PathStep>[] all = [.. Places(root, [])];
        var path = new TextPath("", all[place % all.Length]);
        Splice splice = kind switch
        {
            0 => Splice.TakeOut(path),
            1 => Splice.Add(path, place % 3, Written.Fields(("a", "1"))),
            2 => Splice.Move(path, place % 3, place / 3 % 3),
            3 => Splice.Set(path, Written.List(Written.Word("a"), Written.Fields(("b", "c")))),
            4 => Splice.Set(path.To("x"), word),
            5 => Splice.SetLast(path.To("x"), Written.Map(("y", Written.Words("z")))),
            _ => Splice.Set(path, word),
        };
        TextRead<string> result = TextSplice.Apply(text, splice);
        Assert.True(result.Value is not null || result.Findings.Length > 0);
    }, iter: 5000);

    private static IEnumerable<ImmutableArray<PathStep>> Places(YamlNode node, ImmutableArray<PathStep> steps) => node switch
    {
        YamlMap map => map.Entries.SelectMany(e => Places(e.Value, steps.Add(e.Key.Text))).Prepend(steps),
        YamlList list => list.Items.SelectMany((i, n) => Places(i, steps.Add(n))).Prepend(steps),
        _ => [steps],
    };
}
