"""Layered courses under linear convection by the Laplace transform, apart from Laygate: the tables of docs/verification/conduction-layers.

    python3 tests/Tools/transform.py

Needs Python 3.9 or later and mpmath (tried with Python 3.11 and mpmath 1.3.0). Shares no code with the program.

Method: Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, chapter 12 (composite solids; recalled). In each
layer the transformed excess over the air is start/s + A cosh(px) + B sinh(px), p = sqrt(s/a), and start/s + A exp(-px) in
the half-space below; the constants follow from convection at the skin and from equal temperature and flux at each contact.
The transform is inverted twice, with Talbot's contour and with Stehfest's sums; both are printed.
"""
import mpmath

mpmath.mp.dps = 30
HOT, OLD = (1.2, 2300, 920), (1.5, 2350, 900)
BINDER, GRANULAR = (1.3, 2350, 900), (1.0, 2000, 900)


def transformed(courses, base, start, air, h, s):
    """Constants of each course and of the base, from a linear system."""
    p = [mpmath.sqrt(s * r * c / k) for (k, r, c), _, _ in courses] + [mpmath.sqrt(s * base[1] * base[2] / base[0])]
    n = len(courses)
    matrix, right = mpmath.matrix(2 * n + 1, 2 * n + 1), mpmath.matrix(2 * n + 1, 1)
    k = courses[0][0][0]
    matrix[0, 0], matrix[0, 1], right[0] = -h, k * p[0], h * (courses[0][2] - air) / s
    for i, ((k, _, _), thick, laid) in enumerate(courses):
        ch, sh, row = mpmath.cosh(p[i] * thick), mpmath.sinh(p[i] * thick), 2 * i + 1
        below, kb = (start, base[0]) if i == n - 1 else (courses[i + 1][2], courses[i + 1][0][0])
        matrix[row, 2 * i], matrix[row, 2 * i + 1], matrix[row, 2 * i + 2] = ch, sh, -1
        right[row] = (below - laid) / s
        matrix[row + 1, 2 * i], matrix[row + 1, 2 * i + 1] = k * p[i] * sh, k * p[i] * ch
        if i == n - 1:
            matrix[row + 1, 2 * i + 2] = kb * p[n]
        else:
            matrix[row + 1, 2 * i + 3] = -kb * p[i + 1]
    return p, mpmath.lu_solve(matrix, right)


def temperature(courses, base, start, air, h, place):
    """The transform of the temperature at a place: a depth in mm, or ('mean', index of a course)."""
    def of(s):
        p, c = transformed(courses, base, start, air, h, s)
        if isinstance(place, tuple):
            i = place[1]
            thick = courses[i][1]
            q = p[i] * thick
            return courses[i][2] / s + (c[2 * i] * mpmath.sinh(q) + c[2 * i + 1] * (mpmath.cosh(q) - 1)) / q
        depth = mpmath.mpf(place) / 1000
        for i, (_, thick, laid) in enumerate(courses):
            if depth <= thick:
                return laid / s + c[2 * i] * mpmath.cosh(p[i] * depth) + c[2 * i + 1] * mpmath.sinh(p[i] * depth)
            depth -= thick
        return start / s + c[2 * len(courses)] * mpmath.exp(-p[-1] * depth)
    return of


def show(title, stack, places, times):
    print(title)
    for t in times:
        values = []
        for place in places:
            of = temperature(*stack, place)
            talbot, stehfest = mpmath.invertlaplace(of, t, method="talbot"), mpmath.invertlaplace(of, t, method="stehfest")
            values.append(f"{mpmath.nstr(talbot, 8)} ({mpmath.nstr(stehfest, 8)})")
        print(f"  {t} s: " + ", ".join(values))


def crossing(stack, place, celsius, low, high):
    of = temperature(*stack, place)
    for _ in range(45):
        middle = (low + high) / 2
        low, high = (middle, high) if mpmath.invertlaplace(of, middle, method="talbot") > celsius else (low, middle)
    return f"{float((low + high) / 2):.3f}"


if __name__ == "__main__":
    mm = mpmath.mpf(1) / 1000
    single = ([(HOT, 50 * mm, mpmath.mpf(150))], OLD, mpmath.mpf(10), mpmath.mpf(10), mpmath.mpf(25))
    show("50 mm at 150 °C on old asphalt at 10 °C: skin, 25, 50, 75 mm, mean", single, [0, 25, 50, 75, ("mean", 0)], [60, 300, 600, 900, 1200, 1800, 3600])
    print("  mean below 100, 90, 80 °C at", ", ".join(crossing(single, ("mean", 0), c, 300, 3600) for c in (100, 90, 80)), "s")
    pair = ([(HOT, 25 * mm, mpmath.mpf(155)), (BINDER, 85 * mm, mpmath.mpf(150))], GRANULAR, mpmath.mpf(12), mpmath.mpf(12), mpmath.mpf(25))
    show("25 mm at 155 °C on 85 mm at 150 °C on granular base at 12 °C: skin, 12.5, 25, 67.5, 110 mm, means", pair,
         [0, 12.5, 25, 67.5, 110, ("mean", 0), ("mean", 1)], [300, 900, 1800, 3600, 7200])
    print("  upper middle below 110, 100, 90, 80 °C at", ", ".join(crossing(pair, 12.5, c, 300, 7200) for c in (110, 100, 90, 80)), "s")
