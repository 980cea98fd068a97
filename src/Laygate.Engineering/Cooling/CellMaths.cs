using System.Numerics;
using System.Runtime.InteropServices;

namespace Laygate.Engineering.Cooling;

/// <summary>The loops over cells that have no dependence from cell to cell, several cells at a time.</summary>
internal static class CellMaths
{
    /// <summary>target = start + scale · Σ coefficient[j] · rates[j], rows of n cells; start null counts as zero.</summary>
    public static void Combine(double[] target, double[]? start, double[] rates, int n, double[] coefficients, int count, double scale, int first)
    {
        // The slice checks the bounds once, so that the inner loop need not.
        ref var from = ref MemoryMarshal.GetReference(rates.AsSpan(0, n * count));
        var i = first;
        for (; i <= n - Vector<double>.Count; i += Vector<double>.Count)
        {
            var sum = Vector<double>.Zero;
            for (var j = 0; j < count; j++)
            {
                sum += Vector.LoadUnsafe(ref from, (nuint)((j * n) + i)) * coefficients[j];
            }

            sum *= scale;
            (start is null ? sum : sum + new Vector<double>(start, i)).CopyTo(target, i);
        }

        for (; i < n; i++)
        {
            var sum = 0.0;
            for (var j = 0; j < count; j++)
            {
                sum += rates[(j * n) + i] * coefficients[j];
            }

            target[i] = (start is null ? 0 : start[i]) + (sum * scale);
        }
    }

    /// <summary>target = tridiagonal matrix · x on the cells from first to n.</summary>
    public static void Multiply(double[] target, double[] up, double[] own, double[] down, double[] x, int first, int n)
    {
        var last = n - 1;
        target[first] = (own[first] * x[first]) + (first < last ? down[first] * x[first + 1] : 0);
        var i = first + 1;
        for (; i + Vector<double>.Count <= last; i += Vector<double>.Count)
        {
            var sum = (new Vector<double>(up, i) * new Vector<double>(x, i - 1))
                + (new Vector<double>(own, i) * new Vector<double>(x, i))
                + (new Vector<double>(down, i) * new Vector<double>(x, i + 1));
            sum.CopyTo(target, i);
        }

        for (; i <= last; i++)
        {
            target[i] = (up[i] * x[i - 1]) + (own[i] * x[i]) + (i < last ? down[i] * x[i + 1] : 0);
        }
    }

    /// <summary>target = right − stage + slope · celsius.</summary>
    public static void Load(double[] target, double[] right, double[] stage, double[] slope, double[] celsius, int first, int n)
    {
        var i = first;
        for (; i <= n - Vector<double>.Count; i += Vector<double>.Count)
        {
            (new Vector<double>(right, i) - new Vector<double>(stage, i) + (new Vector<double>(slope, i) * new Vector<double>(celsius, i))).CopyTo(target, i);
        }

        for (; i < n; i++)
        {
            target[i] = right[i] - stage[i] + (slope[i] * celsius[i]);
        }
    }

    /// <summary>stage += slope · (solved − celsius); returns the greatest distance from content.</summary>
    public static double Move(double[] stage, double[] slope, double[] solved, double[] celsius, double[] content, int first, int n)
    {
        var i = first;
        var most = Vector<double>.Zero;
        for (; i <= n - Vector<double>.Count; i += Vector<double>.Count)
        {
            var moved = new Vector<double>(stage, i) + (new Vector<double>(slope, i) * (new Vector<double>(solved, i) - new Vector<double>(celsius, i)));
            moved.CopyTo(stage, i);
            var miss = Vector.Abs(new Vector<double>(content, i) - moved);
            most = Vector.ConditionalSelect(Vector.LessThanOrEqual(miss, most), most, miss);
        }

        var gap = 0.0;
        for (var lane = 0; lane < Vector<double>.Count; lane++)
        {
            gap = most[lane] <= gap ? gap : most[lane];
        }

        for (; i < n; i++)
        {
            stage[i] += slope[i] * (solved[i] - celsius[i]);
            var miss = Math.Abs(content[i] - stage[i]);
            gap = miss <= gap ? gap : miss;
        }

        return gap;
    }

    /// <summary>rates[row …] = (a − b) · scale.</summary>
    public static void Differentiate(double[] rates, int row, double[] a, double[] b, double scale, int first, int n)
    {
        var i = first;
        for (; i <= n - Vector<double>.Count; i += Vector<double>.Count)
        {
            ((new Vector<double>(a, i) - new Vector<double>(b, i)) * scale).CopyTo(rates, row + i);
        }

        for (; i < n; i++)
        {
            rates[row + i] = (a[i] - b[i]) * scale;
        }
    }
}
