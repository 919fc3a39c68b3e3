using Setout.Shop.Outputs;

namespace Setout.Shop.Tests.Outputs;

public sealed class CommandWordsTests
{
    [Theory]
    [InlineData("Read it first: setout record FILE birch.thickness READING.", "jar-cabinet", "Read it first: setout record @jar-cabinet birch.thickness READING.")]
    [InlineData("setout record FILE a 1; setout void FILE 3f", "old chest", "setout record \"@old chest\" a 1; setout void \"@old chest\" 3f")]
    [InlineData("setout record one.yaml a.thickness READING; setout record jar cabinet.yaml b.thickness READING.", "", "setout record @one a.thickness READING; setout record \"@jar cabinet\" b.thickness READING.")]
    [InlineData("'setout fit FILE' lists them", "", "'setout fit FILE' lists them")]
    [InlineData("'setout parts' lists those of the parts", "x", "'setout parts' lists those of the parts")]
    [InlineData("Put it into FILE of shop.yaml", "x", "Put it into FILE of shop.yaml")]
    public void Kept_Words_NameThePieceWhereACommandWantsItsFile(string words, string piece, string wanted) => Assert.Equal(wanted, CommandWords.Kept(words, piece));
}
