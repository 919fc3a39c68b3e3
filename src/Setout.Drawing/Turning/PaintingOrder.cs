using System.Collections.Immutable;

namespace Setout.Drawing.Turning;

/// <summary>
/// From the farthest to the nearest. Of two blocks a plane along the axes lies between (if they share room: where they go into each other least); what is on the eye's side of it cannot be covered by the other.
/// Where rings are left, as three blocks may lie each over the next, the farthest goes first.
/// </summary>
internal static class PaintingOrder
{
    public static ImmutableArray<int> Of(ImmutableArray<(Spot Low, Spot High)> boxes, Eye eye)
    {
        int count = boxes.Length;
        var shadows = new (double Left, double Right, double Low, double High, double Far)[count];
        for (int i = 0; i < count; i++) shadows[i] = Shadow(boxes[i], eye);
        var after = new List<(int Later, int Weight)>[count];
        int[] open = new int[count];
        for (int i = 0; i < count; i++) after[i] = [];
        for (int a = 0; a < count; a++)
        {
            for (int b = a + 1; b < count; b++)
            {
                if (!Overlap(shadows[a], shadows[b])) continue;
                (int first, bool isSure) = Farther(boxes[a], boxes[b], eye.Sight);
                if (first == 0) continue;
                (int before, int later) = first < 0 ? (a, b) : (b, a);
                int weight = isSure ? Sure : 1;
                after[before].Add((later, weight));
                open[later] += weight;
            }
        }
        // What nothing must come before; else what only parts that go into it should; at last the farthest.
        (int, double) Rank(int i) => (open[i] == 0 ? 2 : open[i] < Sure ? 1 : 0, shadows[i].Far);
        var order = ImmutableArray.CreateBuilder<int>(count);
        var done = new bool[count];
        while (order.Count < count)
        {
            int next = -1;
            for (int i = 0; i < count; i++)
                if (!done[i] && (next < 0 || Rank(i).CompareTo(Rank(next)) > 0)) next = i;
            done[next] = true;
            order.Add(next);
            foreach ((int later, int weight) in after[next]) open[later] -= weight;
        }
        return order.ToImmutable();
    }

    // More than all that is not sure together.
    private const int Sure = 1 << 16;

    // Below zero where the first is painted first, above zero where the second is, zero where neither covers the other; not sure where they share room.
    private static (int First, bool IsSure) Farther((Spot Low, Spot High) a, (Spot Low, Spot High) b, Spot sight)
    {
        bool aIsFar = false, bIsFar = false, isParted = false;
        int least = 0;
        double leastShared = double.MaxValue;
        for (int axis = 0; axis < 3; axis++)
        {
            double shared = Math.Min(a.High[axis], b.High[axis]) - Math.Max(a.Low[axis], b.Low[axis]);
            if (shared < leastShared && Math.Abs(sight[axis]) > Eye.EdgeOn) (least, leastShared) = (axis, shared);
            if (shared > Touching) continue;
            isParted = true;
            bool aIsLow = a.Low[axis] + a.High[axis] < b.Low[axis] + b.High[axis];
            if (Math.Abs(sight[axis]) <= Eye.EdgeOn) continue;
            if (aIsLow == sight[axis] > 0) bIsFar = true;
            else aIsFar = true;
        }
        if (!isParted)
        {
            bool aIsLow = a.Low[least] + a.High[least] < b.Low[least] + b.High[least];
            return (aIsLow == sight[least] > 0 ? 1 : -1, false);
        }
        return (aIsFar == bIsFar ? 0 : aIsFar ? -1 : 1, true);
    }

    private const double Touching = 1e-6;

    private static bool Overlap((double Left, double Right, double Low, double High, double Far) a, (double Left, double Right, double Low, double High, double Far) b) =>
        a.Left < b.Right - Touching && b.Left < a.Right - Touching && a.Low < b.High - Touching && b.Low < a.High - Touching;

    private static (double Left, double Right, double Low, double High, double Far) Shadow((Spot Low, Spot High) box, Eye eye)
    {
        (double left, double right, double low, double high) = (double.MaxValue, double.MinValue, double.MaxValue, double.MinValue);
        for (int corner = 0; corner < 8; corner++)
        {
            (double x, double y, _) = eye.Of(TurningView.Corner(box, corner));
            (left, right, low, high) = (Math.Min(left, x), Math.Max(right, x), Math.Min(low, y), Math.Max(high, y));
        }
        double far = eye.Of(new((box.Low.X + box.High.X) / 2, (box.Low.Y + box.High.Y) / 2, (box.Low.Z + box.High.Z) / 2)).Far;
        return (left, right, low, high, far);
    }
}
