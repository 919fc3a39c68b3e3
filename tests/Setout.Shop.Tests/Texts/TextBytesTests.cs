using System.Text;
using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Tests.Texts;

public class TextBytesTests
{
    /// <summary>A stream without an end that counts what was taken from it.</summary>
    private sealed class Endless : Stream
    {
        public long Taken { get; private set; }
        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => Taken; set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            // Few at a time, as a slow disk or a pipe gives them.
            int given = Math.Min(count, 7);
            buffer.AsSpan(offset, given).Fill((byte)'#');
            Taken += given;
            return given;
        }

        public override void Flush() { }
        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
        public override void SetLength(long value) => throw new NotSupportedException();
        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }

    [Theory]
    [InlineData(1)]
    [InlineData(100)]
    [InlineData(200_000)]
    public void Read_MoreThanTheLimit_TakesOneByteMoreAndStops(int limit)
    {
        using var stream = new Endless();
        TextRead<string> read = TextBytes.Read(stream, new(Bytes: limit));
        Assert.Equal(limit + 1, stream.Taken);
        Assert.Equal("text.too-large", Assert.Single(read.Findings).Code);
        Assert.Null(read.Value);
    }

    [Fact]
    public void Read_ExactlyTheLimit_IsRead()
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes("é234"));
        Assert.Equal("é234", TextBytes.Read(stream, new(Bytes: 5)).Value);
    }

    [Fact]
    public void Read_ByteOrderMark_IsTakenOff()
    {
        using var stream = new MemoryStream([0xEF, 0xBB, 0xBF, (byte)'a']);
        Assert.Equal("a", TextBytes.Read(stream).Value);
        using var empty = new MemoryStream();
        Assert.Equal("", TextBytes.Read(empty).Value);
    }

    [Theory]
    [InlineData(new byte[] { 0x61, 0xFF }, 1, 2)]
    [InlineData(new byte[] { 0x61, 0x0A, 0xC3, 0xA9, 0x62, 0xE9, 0x20 }, 2, 3)] // Latin-1 after a sound é
    [InlineData(new byte[] { 0x61, 0x0D, 0x0A, 0x0D, 0xC3 }, 3, 1)] // cut off in the middle of a letter
    [InlineData(new byte[] { 0xED, 0xA0, 0x80 }, 1, 1)] // half of a pair
    [InlineData(new byte[] { 0xC0, 0x80 }, 1, 1)] // a zero byte in disguise
    [InlineData(new byte[] { 0xEF, 0xBB, 0xBF, 0x61, 0xF5 }, 1, 2)]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x61, 0x00 }, 1, 1)] // UTF-16
    public void Decode_NotUtf8_IsAFindingAtItsPlace(byte[] bytes, int line, int column)
    {
        Finding finding = Assert.Single(TextBytes.Decode(bytes).Findings);
        Assert.Equal(("text.not-utf8", new Place(line, column)), (finding.Code, finding.Place));
    }

    [Theory]
    [InlineData("a\nb\nc", 4, 3, 1)]
    [InlineData("a\r\nb", 3, 2, 1)]
    [InlineData("a\rb", 2, 2, 1)]
    [InlineData("abc", 2, 1, 3)]
    [InlineData("", 0, 1, 1)]
    public void Of_Index_IsLineAndColumn(string text, int index, int line, int column) => Assert.Equal(new Place(line, column), TextPlace.Of(text, index));
}
