using System.Collections;

namespace PushSim.Numerics;

/// <summary>Shapes in a row; two are equal where all their shapes are.</summary>
/// <param name="items">The shapes; not copied.</param>
internal sealed class ShapeList<TShape>(TShape[] items) : IReadOnlyList<TShape>, IEquatable<ShapeList<TShape>>
    where TShape : IEquatable<TShape>
{
    private readonly TShape[] _items = items;

    public int Count => _items.Length;

    public TShape this[int index] => _items[index];

    public bool Equals(ShapeList<TShape>? other) => other is not null && _items.AsSpan().SequenceEqual(other._items);

    public override bool Equals(object? obj) => Equals(obj as ShapeList<TShape>);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (TShape item in _items)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    public IEnumerator<TShape> GetEnumerator() => ((IEnumerable<TShape>)_items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => _items.GetEnumerator();
}
