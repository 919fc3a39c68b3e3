namespace Setout.Store.Tests.Documents;

/// <summary>What a document is to do, told as simply as can be: texts in a list, each with its parent, and for each the child to go to next.</summary>
internal sealed class TreeModel
{
    private readonly List<(int Parent, string Text)> _states = [];
    private readonly Dictionary<int, int> _next = [];
    private int _head;

    public TreeModel(string text) => _states.Add((-1, text));

    public string Text => _states[_head].Text;

    public int Count => _states.Count;

    public bool CanUndo => _states[_head].Parent >= 0;

    public bool CanRedo => _next.ContainsKey(_head);

    public IEnumerable<string> Texts => _states.Select(s => s.Text);

    public void Edit(string text)
    {
        if (text == Text) return;
        _states.Add((_head, text));
        _next[_head] = _states.Count - 1;
        _head = _states.Count - 1;
    }

    public void Undo()
    {
        int parent = _states[_head].Parent;
        _next[parent] = _head;
        _head = parent;
    }

    public void Redo() => _head = _next[_head];
}
