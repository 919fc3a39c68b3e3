using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Drawing.Elevations;
using Setout.Drawing.Scenes;
using Setout.Shop.Drawings;
using Setout.Shop.Edits;
using Setout.Shop.Tests.SettingOut;
using Setout.Testing;

namespace Setout.Shop.Tests.Edits;

/// <summary>Every kind of divider is moved by hand; whatever else stands on a drawing says why it is not.</summary>
public class DividerKindsTests
{
    private static readonly string Kinds = EveryDivider.Text;

    [Fact]
    public void Moves_OfEveryKind_AreFound() =>
        Assert.Equal(["E", "H", "M", "P", "R"], DividerMove.Of(RandomEditsTests.SetOut(Kinds)).Select(m => m.Key).Order(StringComparer.Ordinal));

    [Theory, InlineData("E", 333), InlineData("H", 250), InlineData("M", 700), InlineData("P", 420), InlineData("R", 301)]
    public void Divider_Moved_StandsWhereItIsPutAndLeavesBothNeighboursTheRest(string key, int to)
    {
        SetPiece before = RandomEditsTests.SetOut(Kinds);
        DividerMove was = DividerMove.Of(before).Single(m => m.Key == key);
        Edited edited = new MoveDivider(key, $"{to}").ApplyTo(Kinds);
        Assert.True(edited.IsDone);
        DividerMove now = DividerMove.Of(RandomEditsTests.SetOut(edited.Text!)).Single(m => m.Key == key);
        var size = ExactLength.FromMillimetres(to);
        Assert.Equal((size, was.Room), (now.Size, now.Room));
        // It went as far as the opening before it grew, to the right or down.
        ExactLength by = size - was.Size;
        Assert.Equal(was.IsAcross ? (was.Space.X + by, was.Space.Z) : (was.Space.X, was.Space.Z - by), (now.Space.X, now.Space.Z));
        Assert.Equal((was.Space.SizeX, was.Space.SizeZ), (now.Space.SizeX, now.Space.SizeZ));
    }

    [Theory]
    [InlineData("S1", "share its height evenly")]
    [InlineData("S3", "on pins")]
    [InlineData("G1", "type the height of a front")]
    [InlineData("G1.front", "type the height of a front")]
    [InlineData("D1", "hangs where A is")]
    [InlineData("A1", "choose E")]
    [InlineData("B", "choose P")]
    [InlineData("C.side", "where the sizes of C put it")]
    [InlineData("L.rail", "where the sizes of F put it")]
    [InlineData("A.width", "not moved but typed")]
    public void Thing_ThatStandsStill_SaysWhy(string key, string words) =>
        Assert.Contains(words, StandsStill.Why(RandomEditsTests.SetOut(Kinds), key), StringComparison.Ordinal);

    [Fact]
    public void Openings_ThatAreCounted_SayWhatToDoFirst()
    {
        const string equal = "down: {openings: 3, key: X}";
        SetPiece set = RandomEditsTests.SetOut(Kinds.Replace("down: [{opening: A1, height: 300}, {deck: E}, {opening: A2, height: rest, shelves: {down: [S1, S2]}}]", equal, StringComparison.Ordinal));
        string[] counted = [.. set.Piece.Keys.Keys.Concat(set.Parts.Select(p => p.Key)).Distinct().Where(k => StandsStill.Why(set, k)?.Contains("counted", StringComparison.Ordinal) == true)];
        // Three openings with two decks between them.
        Assert.Equal(5, counted.Length);
        Assert.Equal(["H", "M", "P", "R"], DividerMove.Of(set).Select(m => m.Key).Order(StringComparer.Ordinal));
    }

    /// <summary>Nothing on a drawing leaves a person without an answer: it moves, or it says why not.</summary>
    [Theory, InlineData(Sample.Bench), InlineData(Sample.Cabinet), InlineData(Sample.Chest), InlineData("sewing-corner.yaml"), InlineData("")]
    public void Everything_MovesOrSaysWhyNot(string sample)
    {
        SetPiece set = RandomEditsTests.SetOut(sample.Length == 0 ? Kinds : Sample.Text(sample));
        DividerMove[] moves = [.. DividerMove.Of(set)];
        string[] drawn = [.. GroupsOf(PieceView.Draw(set, Views.Front, new(200, 116)).Scene.Items).Select(g => g.Key.Split('#')[0]).Where(k => k.Length > 0).Distinct()];
        Assert.NotEmpty(drawn);
        foreach (string key in drawn)
        {
            bool isMoved = moves.Any(m => m.Key == key || m.Posts == key || key.StartsWith(m.Key + ".", StringComparison.Ordinal));
            Assert.True(isMoved != (StandsStill.Why(set, key) is { Length: > 0 }), $"{key}: {StandsStill.Why(set, key) ?? "nothing is said"}");
        }
    }

    private static IEnumerable<GroupItem> GroupsOf(IEnumerable<SceneItem> items) => items.OfType<GroupItem>().SelectMany(g => GroupsOf(g.Items).Prepend(g));
}
