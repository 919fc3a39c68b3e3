using System.Collections.Immutable;
using System.Net.Http.Headers;
using System.Text;

namespace Setout.Soak;

/// <summary>What is sent in a form: fields in order, of which a name may stand more than once, and files.</summary>
internal sealed class SpoiltForm
{
    private readonly List<(string Name, string Value)> _fields = [];
    private readonly List<(string Name, string File, byte[] Bytes)> _files = [];
    private byte[]? _body;

    /// <summary>Whether it is sent in parts, as forms with files are.</summary>
    public bool IsMultipart { get; set; }

    /// <summary>Adds a field.</summary>
    public void Add(string name, string value) => _fields.Add((name, value));

    /// <summary>Adds a file.</summary>
    public void Add(string name, string file, byte[] bytes) => _files.Add((name, file, bytes));

    /// <summary>What the first field of a name holds; empty without one.</summary>
    public string this[string name] => _fields.FirstOrDefault(f => f.Name == name).Value ?? "";

    /// <summary>Fills in what a page offers: as it stands there, or with something that may be typed.</summary>
    public static SpoiltForm Of(PageForm form, Random random, ImmutableArray<string> texts)
    {
        var sent = new SpoiltForm { IsMultipart = form.IsMultipart };
        foreach (PageField field in form.Fields)
        {
            switch (field.Kind)
            {
                case "file":
                    sent.Add(field.Name, Spoiling.FileName(random), Spoiling.FileOf(random, texts));
                    break;
                case "checkbox" or "radio":
                    if (field.IsOn ? random.Next(4) > 0 : random.Next(2) == 0) sent.Add(field.Name, field.Value.Length > 0 ? field.Value : "on");
                    break;
                case "select" when field.Options.Length > 0:
                    sent.Add(field.Name, field.Options[random.Next(field.Options.Length)]);
                    break;
                case "textarea" when field.Name == "text":
                    sent.Add(field.Name, Spoiling.Text(random, texts[random.Next(texts.Length)], field.Value));
                    break;
                case "hidden":
                    sent.Add(field.Name, field.Value);
                    break;
                default:
                    sent.Add(field.Name, random.Next(3) == 0 ? field.Value : Spoiling.Likely(random));
                    break;
            }
        }
        return sent;
    }

    /// <summary>Spoils it in one place or two: a field is wrong, empty, huge, in a unit of elsewhere, holds signs that are none, stands twice or not at all; or the bytes are no form any more.</summary>
    public void Spoil(Random random)
    {
        for (int i = random.Next(3) == 0 ? 2 : 1; i > 0 && _fields.Count > 0; i--)
        {
            int at = random.Next(_fields.Count);
            (string name, string value) = _fields[at];
            switch (random.Next(12))
            {
                case 0: _fields[at] = (name, ""); break;
                case 1: _fields.RemoveAt(at); break;
                case 2: _fields.Add((name, value)); break;
                case 3: _fields.Add((name, Spoiling.Typed(random))); break;
                case 4: _fields[at] = (name, Spoiling.Huge(random)); break;
                case 5: _fields[at] = (name, value + Spoiling.Control(random)); break;
                case 6: _fields[at] = (name, Spoiling.Foreign(random)); break;
                case 7: _fields[at] = (Spoiling.Typed(random), value); break;
                case 8 when value.Length > 2: _fields[at] = (name, Spoiling.Text(random, value, value)); break;
                case 9 when random.Next(4) == 0: _body = Spoiling.Bytes(random, Encoded()); break;
                default: _fields[at] = (name, Spoiling.Typed(random)); break;
            }
        }
    }

    /// <summary>As it goes over the wire.</summary>
    public HttpContent Content()
    {
        if (_body is { } body)
        {
            var broken = new ByteArrayContent(body);
            broken.Headers.ContentType = new MediaTypeHeaderValue("application/x-www-form-urlencoded");
            return broken;
        }
        if (!IsMultipart) return new FormUrlEncodedContent(_fields.Select(f => KeyValuePair.Create(f.Name, f.Value)));
        var parts = new MultipartFormDataContent("a-boundary-of-the-soak");
        // The name of a part stands in a header, where quotes and ends of lines would end it.
        static string Plain(string name) => name.Any(c => c is '"' or '\\' || char.IsControl(c) || char.IsSurrogate(c)) || name.Trim().Length == 0 ? "spoilt" : name;
        foreach ((string name, string value) in _fields) parts.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(value)), Plain(name));
        foreach ((string name, string file, byte[] bytes) in _files) parts.Add(new ByteArrayContent(bytes), Plain(name), Plain(file));
        return parts;
    }

    /// <inheritdoc/>
    public override string ToString() => (_body is null ? "" : "(spoilt as a whole) ") + string.Join('\n', [.. _fields.Select(f => $"{f.Name}={Short(f.Value)}"), .. _files.Select(f => $"{f.Name}: file '{f.File}' of {f.Bytes.Length} bytes")]);

    private static string Short(string value) => value.Length > 2000 ? $"{value[..200]}... ({value.Length} signs)" : value;

    private byte[] Encoded() => Encoding.ASCII.GetBytes(string.Join('&', _fields.Select(f => $"{Uri.EscapeDataString(f.Name)}={Uri.EscapeDataString(f.Value)}")));
}
