using System.Collections.Immutable;
using CsCheck;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;
using Setout.Shop.Edits;
using Setout.Shop.Plans;
using Setout.Shop.Texts;
using Setout.Shop.Tests.SettingOut;
using Setout.Testing;

namespace Setout.Shop.Tests.Edits;

/// <summary>Edits as the page offers them, one after the other, on samples, test pieces and new ones.</summary>
public class RandomEditsTests
{
    private static readonly string[] s_lengths = ["3", "5 1/2", "1' 2\"", "96/3 - 3/4", "40mm", "300", "rest", "2 parts", "", "-3", "x y", "0"];
    private static readonly string s_shop = Sample.Text("shop.yaml");

    private static readonly string[] s_new =
    [
        new NewPiece("Shoe rack: hall", LengthUnit.Inch, NewKind.Case, "30", "2' 6\"", "12 1/2").Text().Text!,
        new NewPiece("Bench", LengthUnit.Millimetre, NewKind.Frame, "1400", "850", "600", Wood.Stick("oak", "60 x 60")).Text().Text!,
        new NewPiece("Slab", LengthUnit.Inch, NewKind.Top, "60", "", "25").Text().Text!,
    ];

    internal sealed record Step(int Key, int Choice, ImmutableArray<int> Fields, bool AsOffered);

    private static readonly Gen<Step> s_step = Gen.Select(Gen.Int[0, 1000], Gen.Int[0, 1000], Gen.Int[0, 1000].Array[6], Gen.Bool, (k, c, f, d) => new Step(k, c, [.. f], d));

    private static readonly Gen<(string Text, Step[] Steps)> s_run = Gen.Select(Gen.Frequency((3, RemarkedText.Text), (1, Gen.OneOf(s_new))), s_step.Array[1, 10]);

    internal static SetPiece SetOut(string text)
    {
        (PieceSource? source, var findings) = PieceSource.Read(text, null, s_shop);
        Assert.True(source is not null, string.Join("; ", findings.Select(f => $"{f.Text} {f.Finding}")) + "\n" + text);
        return source.SetOut();
    }

    private static string[] KeysOf(SetPiece set) =>
        [.. set.Piece.Keys.Keys.Concat(set.Piece.DrawerKinds.Keys).Concat(set.Dimensions.Select(d => d.Key.Text)).Concat(set.Parts.Select(p => p.Key)).Append("").Distinct().Order(StringComparer.Ordinal)];

    internal static (EditChoice Choice, Edit Edit)? Picked(SetPiece set, Step step)
    {
        string[] keys = KeysOf(set);
        ImmutableArray<EditChoice> choices = Choices.For(set, keys[step.Key % keys.Length], ShopText.Read(s_shop).Value);
        if (choices.IsEmpty) return null;
        EditChoice choice = choices[step.Choice % choices.Length];
        var values = step.AsOffered ? [] : choice.Fields.Select((f, i) => KeyValuePair.Create(f.Name, Typed(f, step.Fields[i % step.Fields.Length]))).ToDictionary();
        return choice.Make(values).Value is { } edit ? (choice, edit) : null;
    }

    private static string Typed(EditField field, int pick) => field.Kind switch
    {
        FieldKind.OneOf when field.Options.Length > 0 => field.Options[pick % field.Options.Length],
        FieldKind.Count => (pick % 7).ToString(System.Globalization.CultureInfo.InvariantCulture),
        FieldKind.Words => new[] { "left bank: #1", "18 x 14", "a", "vice", "" }[pick % 5],
        _ => pick % 4 == 0 ? field.Default : s_lengths[pick % s_lengths.Length],
    };

    // Each value by the thing it is said of; to see whether anything was taken out.
    private static IEnumerable<string> Values(YamlNode node, string owner)
    {
        if (node is YamlList list) return list.Items.SelectMany(i => i is YamlScalar s ? [$"{owner} {s.Text}"] : Values(i, owner));
        if (node is not YamlMap map) return [];
        string own = TextPathOwner(map) ?? owner;
        return map.Entries.SelectMany(e => e.Value is YamlScalar ? [$"{own} {e.Key.Text}"] : Values(e.Value, own).Prepend($"{own} {e.Key.Text}"));
    }

    private static string? TextPathOwner(YamlMap map) => map.Entries.Where(e => e.Key.Text is "frame" or "case" or "top" or "opening" or "partition" or "deck" or "posts" or "rail" or "stretcher" or "drawer" or "slot" or "well" or "part" && e.Value is YamlScalar).Select(e => ((YamlScalar)e.Value).Text).FirstOrDefault();

    [Fact]
    public void AnyEditsInTurn_ReadSetOutKeepRemarksAndGiveNewKeys()
    {
        int done = 0, refused = 0, stopped = 0;
        s_run.Holds(run =>
        {
            string text = run.Text;
            var taken = ImmutableHashSet<string>.Empty;
            if (!PieceText.Read(text).IsSound) return;
            foreach (Step step in run.Steps)
            {
                SetPiece set = SetOut(text);
                taken = taken.Union(set.Piece.Keys.Keys);
                if (Picked(set, step) is not { } picked) continue;
                Edited edited = picked.Edit.ApplyTo(text, EditBench.Empty with { Taken = taken });
                Assert.NotEmpty(edited.Name);
                Assert.All(edited.Findings, f => Assert.True(f.Words.Length > 0 && f.Remedy.Length > 0, f.Code));
                if (edited.Text is not { } after)
                {
                    Assert.NotEmpty(edited.Findings);
                    Interlocked.Increment(ref refused);
                    continue;
                }
                Interlocked.Increment(ref done);
                Assert.Equal(edited, picked.Edit.ApplyTo(text, EditBench.Empty with { Taken = taken }) with { Findings = edited.Findings });
                SetPiece now = SetOut(after);
                if (now.IsStopped && !set.IsStopped && step.AsOffered) Interlocked.Increment(ref stopped);
                foreach (string key in now.Piece.Keys.Keys.Except(set.Piece.Keys.Keys)) Assert.DoesNotContain(key, taken);
                string[] gone = [.. Values(YamlTree.Read(text).Value!, "").Except(Values(YamlTree.Read(after).Value!, ""))];
                string[] lost = [.. RemarkedText.Remarks(text).Keys.Except(RemarkedText.Remarks(after).Keys)];
                Assert.True(gone.Length > 0 || lost.Length == 0, $"{picked.Edit}: lost {string.Join(' ', lost)}");
                text = after;
            }
        }, iter: 150, print: Shown);
        Assert.True(done > 300, $"{done} edits were done, {refused} refused.");
        Assert.True(stopped * 20 < done, $"{stopped} of {done} edits as offered stop the plan.");
    }

    private static string Shown((string Text, Step[] Steps) run)
    {
        var told = new System.Text.StringBuilder();
        string text = run.Text;
        foreach (Step step in run.Steps)
        {
            if (PieceSource.Read(text, null, s_shop).Source?.SetOut() is not { } set) break;
            if (Picked(set, step) is not { } picked) continue;
            Edited edited = picked.Edit.ApplyTo(text);
            told.AppendLine($"{picked.Choice.Id}: {picked.Edit} => {edited.Name} {string.Join("; ", edited.Findings)}");
            text = edited.Text ?? text;
        }
        return told + text;
    }

    /// <summary>What an edit as offered does to pieces that can be set out: a plan that stops afterwards is told with its finding.</summary>
    [Fact]
    public void EditsAsOffered_OfEverythingInTheSamples_SeldomStopThePlan()
    {
        var stops = new List<string>();
        int all = 0;
        foreach (string text in Repository.FilesIn("samples", "*.yaml").Where(f => !f.EndsWith("shop.yaml", StringComparison.Ordinal)).Select(f => File.ReadAllText(Repository.PathOf(f))).Where(t => t.Contains("\nsetout:", StringComparison.Ordinal)).Concat(s_new))
        {
            SetPiece set = SetOut(text);
            foreach (string key in KeysOf(set))
            {
                foreach (EditChoice choice in Choices.For(set, key, ShopText.Read(s_shop).Value))
                {
                    if (choice.Make(new Dictionary<string, string>()).Value is not { } edit || edit.ApplyTo(text) is not { Text: { } after } edited) continue;
                    all++;
                    SetPiece now = SetOut(after);
                    if (now.IsStopped) stops.Add($"{set.Piece.Name} {key} {choice.Id}: {edited.Name}: {now.Findings.First(f => f.Severity == Severity.Stop).Words}");
                }
            }
        }
        Assert.True(stops.Count * 100 < all, $"{stops.Count} of {all}\n{string.Join('\n', stops)}");
    }
}
