"""Cooling times of courses on a base, computed apart from Laygate, to set beside the cases of docs/verification.

    python3 tests/Tools/cooling.py docs/verification/conduction-other-program/*.yaml docs/verification/conduction-layers/*.yaml

Needs Python 3.9 or later and PyYAML 6 (tried with Python 3.11 and PyYAML 6.0.3). Shares no code with the program.

Method: one-dimensional heat conduction, finite volumes, 0.25 mm cells in the courses, growing cells to 1.5 m of base;
Crank-Nicolson after a start of backward Euler steps, steps from 0.002 s to 1 s; the skin balances conduction with
convection, long-wave exchange and absorbed sun, linearised anew in each step. Layers that join later and water are left out.

Prints each value of a case, the one found here and the difference; ends with 1 where a difference exceeds the tolerance.
"""
import math
import re
import sys

import yaml

ZERO, SIGMA = 273.15, 5.670374419e-8
SCALE = {"mm": 1e-3, "min": 60, "h": 3600, "%": 1e-2}
FORMS = {
    "barber-1957": lambda v: 7.4 + 6.39 * v**0.75,
    "mcadams-1954": lambda v: 5.7 + 3.8 * v,
    "en-iso-6946": lambda v: 4 + 4 * v,
}


def number(text, scale=True):
    found = re.match(r"([-+0-9.e]+)\s*(\S*)", str(text))
    return float(found[1]) * (SCALE.get(found[2], 1) if scale else 1)


class Skin:
    """Heat that leaves the top of the uppermost cell, and its slope, from the temperature in the middle of that cell."""

    def __init__(self, given, mix):
        if "convection" in given:
            self.h, self.air = number(given["convection"]["coefficient"]), number(given["convection"]["air"])
            self.eps, self.sky, self.sun = 0.0, self.air, 0.0
        else:
            weather = given["weather"]
            (point,) = weather["points"]
            self.h, self.air = FORMS[weather["form"]](number(point["wind"])), number(point["air"])
            self.eps, self.sky = number(mix.get("emissivity", 0.95)), number(point["sky"])
            self.sun = number(mix.get("absorptivity", 0)) * number(point.get("sun", 0))

    def loss(self, inside, conductance):
        skin = inside
        for _ in range(30):
            out = self.h * (skin - self.air) + self.eps * SIGMA * ((skin + ZERO)**4 - (self.sky + ZERO)**4) - self.sun
            slope = self.h + 4 * self.eps * SIGMA * (skin + ZERO)**3
            change = (conductance * (inside - skin) - out) / (conductance + slope)
            skin += change
            if abs(change) < 1e-11:
                break
        return skin, conductance * (inside - skin), conductance * slope / (conductance + slope)


class Mat:
    def __init__(self, case):
        self.layers, materials = case["layers"], case["materials"]
        self.width, self.k, self.heat, self.t, self.faces = [], [], [], [], [0]
        for layer in self.layers:
            mix = materials[layer["material"]]
            size = number(layer["thickness"])
            cell = 2.5e-4 if layer["role"] == "course" else 2e-3
            widths = [cell] * round(size / cell)
            if layer is self.layers[-1]:
                widths = [2.5e-4]
                while sum(widths) < 1.5:
                    widths.append(min(widths[-1] * 1.06, 0.02))
            self.width += widths
            self.k += [number(mix["conductivity"])] * len(widths)
            self.heat += [number(mix["density"]) * number(mix["specific_heat"])] * len(widths)
            self.t += [number(layer["initial"])] * len(widths)
            self.faces.append(len(self.width))
        self.skin = Skin(case["skin"], materials[self.layers[0]["material"]])
        self.between = [1 / (a / 2 / ka + b / 2 / kb) for a, b, ka, kb in zip(self.width, self.width[1:], self.k, self.k[1:])]
        self.top = 2 * self.k[0] / self.width[0]
        self.depths = [sum(self.width[:i]) + self.width[i] / 2 for i in range(self.faces[-2] + 400) if i < len(self.width)]

    def step(self, dt, share):
        """One step; share 1 is backward Euler, 0.5 Crank-Nicolson."""
        t, n = self.t, len(self.t)
        _, loss, slope = self.skin.loss(t[0], self.top)
        flows = [g * (a - b) for g, a, b in zip(self.between, t, t[1:])]
        lower, main, right = [0.0] * n, [0.0] * n, [0.0] * n
        for i in range(n):
            rate = dt / (self.width[i] * self.heat[i])
            above = self.between[i - 1] if i else slope
            below = self.between[i] if i < n - 1 else 0.0
            right[i] = rate * ((flows[i - 1] if i else -loss) - (flows[i] if i < n - 1 else 0.0))
            lower[i], main[i] = -share * rate * above, 1 + share * rate * (above + below)
        for i in range(1, n):
            factor = lower[i] / main[i - 1]
            upper = -share * dt / (self.width[i - 1] * self.heat[i - 1]) * self.between[i - 1]
            main[i] -= factor * upper
            right[i] -= factor * right[i - 1]
        change = [0.0] * n
        for i in range(n - 1, -1, -1):
            upper = -share * dt / (self.width[i] * self.heat[i]) * self.between[i] if i < n - 1 else 0.0
            change[i] = (right[i] - (upper * change[i + 1] if i < n - 1 else 0.0)) / main[i]
        self.t = [a + b for a, b in zip(t, change)]

    def at(self, place):
        if place == "skin":
            return self.skin.loss(self.t[0], self.top)[0]
        (kind, where), = place.items()
        if kind == "depth":
            return self.face(self.index(number(where)))
        i = [layer["id"] for layer in self.layers].index(where)
        first, last = self.faces[i], self.faces[i + 1]
        if kind == "mean":
            return sum(a * b for a, b in zip(self.t[first:last], self.width[first:last])) / sum(self.width[first:last])
        if kind == "bottom":
            return self.face(last)
        middle = (first + last) / 2
        return self.face(int(middle)) if middle == int(middle) else self.t[int(middle)]

    def index(self, depth):
        for i, middle in enumerate(self.depths):
            if middle > depth:
                self.share = (depth - self.depths[i - 1]) / (middle - self.depths[i - 1])
                return i + 0.5
        raise ValueError(depth)

    def face(self, i):
        if i != int(i):
            i = int(i)
            return self.t[i - 1] + self.share * (self.t[i] - self.t[i - 1])
        a, b = self.k[i - 1] / self.width[i - 1], self.k[i] / self.width[i]
        return (a * self.t[i - 1] + b * self.t[i]) / (a + b)


def asked(case):
    for group in case["expected"]:
        for row in group["rows"]:
            for place, value in zip(group["places"], row["values"]):
                tolerance = group["tolerance"]
                size = abs(value) * number(tolerance) if "%" in tolerance else number(tolerance, scale=False)
                yield group, row, place, value, size


def run(case):
    mat, now, seen = Mat(case), 0.0, {}
    wanted = list(asked(case))
    before = {}
    end = number(case["duration"])
    while now < end and len(seen) < len(wanted):
        dt = 0.002 if now < 0.02 else min(1.0, 0.02 * now)
        mat.step(dt, 1.0 if now < 0.02 else 0.5)
        now += dt
        values = {}
        for key, (group, row, place, _, _) in enumerate(wanted):
            if key in seen:
                continue
            name = str(place)
            if name not in values:
                values[name] = mat.at(place)
            t, (last, then) = values[name], before.get(name, (math.inf, 0.0))
            if group["quantity"] == "crossing-time" and t < number(row["below"]) <= last:
                seen[key] = (then + (now - then) * (last - number(row["below"])) / (last - t)) / SCALE.get(group["unit"], 1)
            if group["quantity"] == "temperature" and now >= number(row["time"]):
                seen[key] = last + (t - last) * (number(row["time"]) - then) / (now - then)
        before = {name: (t, now) for name, t in values.items()}
    return [(group, row, place, value, size, seen.get(key)) for key, (group, row, place, value, size) in enumerate(wanted)]


def main(names):
    count, worst, off = 0, 0.0, 0
    for name in names:
        with open(name, encoding="utf-8") as file:
            cases = [case for case in yaml.safe_load_all(file) if "conduction" in case]
        for case in cases:
            body = case["conduction"]
            skin = body["skin"]
            if any("joins" in layer for layer in body["layers"]) or body["bottom"] != "half-space" or not isinstance(skin, dict) or not {"weather", "convection"} & set(skin):
                print(f"{case['title']}: left out")
                continue
            for group, row, place, value, size, found in run(body):
                count, gap = count + 1, math.inf if found is None else found - value
                worst, off = max(worst, abs(gap) / size), off + (abs(gap) > size)
                print(f"{case['title']}: {group['quantity']} {place} {row.get('below', row.get('time'))}: {value} {group['unit']}, here {found if found is None else round(found, 4)}, off by {gap:+.4f}")
    print(f"{count} values, {off} beyond their tolerance, the widest gap {100 * worst:.0f} % of its tolerance")
    return 1 if off or not count else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
