# Computes bypass.csv, outside the program: python3 bypass.py > bypass.csv
#
# The day of bypass.jsonl as ordinary differential equations, integrated in steps of 0.002 gal by the classical fourth-order
# Runge-Kutta method; steps of 0.004 and 0.001 gal give the same seven digits. Hose and return line are plugs: each keeps the
# running sum of what went in over the volume that went in, and gives what went in one line's volume earlier.
import math
import sys
from bisect import bisect_right

HOSE = math.pi / 4 * 0.375**2 * 12 * 200 / 231
CELL, RETURN, PUMP, GUN = 0.2, 0.1, 8.0, 3.0
ROUND = (PUMP - GUN) / GUN  # gallons through the bypass for each through the gun


class Plug:
    def __init__(self, size):
        self.size, self.x = size, [-size, 0.0]
        self.sum, self.strength = [(0.0, 0.0)] * 2, [(0.0, 0.0)] * 2  # water

    def put(self, volume, amounts, strength):
        if volume > 0:
            self.x.append(self.x[-1] + volume)
            self.sum.append(tuple(a + b for a, b in zip(self.sum[-1], amounts)))
            self.strength.append(strength)

    def at(self, x):
        """The running sum at x, by a cubic through the sums and strengths (its slopes) at both sides."""
        i = min(max(bisect_right(self.x, x) - 1, 0), len(self.x) - 2)
        h = self.x[i + 1] - self.x[i]
        t = (x - self.x[i]) / h
        return [
            a * (1 + 2 * t) * (1 - t) ** 2 + p * h * t * (1 - t) ** 2 + b * t * t * (3 - 2 * t) - q * h * t * t * (1 - t)
            for a, b, p, q in zip(self.sum[i], self.sum[i + 1], self.strength[i], self.strength[i + 1])
        ]

    def gives(self, volume):
        x = self.x[-1] - self.size
        return [b - a for a, b in zip(self.at(x), self.at(x + volume))]

    def inside(self):
        return [a - b for a, b in zip(self.sum[-1], self.at(self.x[-1] - self.size))]


class Truck:
    def __init__(self, step):
        self.step, self.volume = step, {"a": 100.0, "b": 60.0}
        self.held = {"a": [200.0, 0.0], "b": [0.0, 120.0]}
        self.cell, self.hose, self.back = [0.0, 0.0], Plug(HOSE), Plug(RETURN)

    def run(self, gun, bypass, supply, returns, into=None):
        """gun gal leave the nozzle, into a compartment or onto a lawn, while bypass gal go round; what left the nozzle."""
        n = math.ceil((gun + bypass) / self.step)
        dv, share, out = (gun + bypass) / n, gun / (gun + bypass), [0.0, 0.0]
        grows = {c: (c == returns) * (1 - share) + (c == into) * share - (c == supply) for c in "ab"}
        for _ in range(n):
            nozzle, back = self.hose.gives(share * dv), self.back.gives((1 - share) * dv)
            passed = [0.0, 0.0]
            for p in (0, 1):
                comes = {c: ((c == returns) * back[p] + (c == into) * nozzle[p]) / dv for c in "ab"}

                def slope(t, y):
                    sucked = y["ab".index(supply)] / (self.volume[supply] + grows[supply] * t)
                    given = y[2] / CELL
                    s = [comes["a"], comes["b"], sucked - given, given]
                    s["ab".index(supply)] -= sucked
                    return s

                y = [self.held["a"][p], self.held["b"][p], self.cell[p], 0.0]
                k1 = slope(0, y)
                k2 = slope(dv / 2, [v + dv / 2 * k for v, k in zip(y, k1)])
                k3 = slope(dv / 2, [v + dv / 2 * k for v, k in zip(y, k2)])
                k4 = slope(dv, [v + dv * k for v, k in zip(y, k3)])
                y = [v + dv / 6 * (a + 2 * b + 2 * c + d) for v, a, b, c, d in zip(y, k1, k2, k3, k4)]
                self.held["a"][p], self.held["b"][p], self.cell[p], passed[p] = y
                out[p] += nozzle[p]
            for c in "ab":
                self.volume[c] += grows[c] * dv
            now = tuple(m / CELL for m in self.cell)
            self.hose.put(share * dv, [share * m for m in passed], now)
            self.back.put((1 - share) * dv, [(1 - share) * m for m in passed], now)
        return out

    def rows(self, when):
        for c in "ab":
            yield f"{when}/compartment/{c}", self.volume[c], self.held[c]
        yield f"{when}/cell", CELL, self.cell
        yield f"{when}/return_line", RETURN, self.back.inside()
        yield f"{when}/hose/reel", HOSE, self.hose.inside()


def day(step):
    t, rows = Truck(step), []

    def gun(gal, supply, returns, into=None):
        return t.run(gal, gal * ROUND, supply, returns, into)

    gun(2, "a", "a", "a")
    for zone, area in (("north", 3200), ("south", 2000)):
        rows.append((f"77 Fir/{zone}", 10 * area / 5200, gun(10 * area / 5200, "a", "a")))
    gun(1.6, "b", "b", "a")
    rows += [(name, v, list(m)) for name, v, m in t.rows("pushed")]
    rows.append(("9 Birch/all", 4, gun(4, "b", "b")))
    rows.append(("418 Alder/front", 6, gun(6, "a", "b")))
    t.run(0, PUMP * 0.5, "a", "a")
    return rows + list(t.rows("left"))


print(
    """# What the day of bypass.jsonl lays, computed outside the program by bypass.py: fourth-order Runge-Kutta, fixed steps.
#
# Volumes in gal, "weed" in fl oz, "iron" in oz; "pushed" rows are what is in the rig after the second push-back, "left" rows what
# is in it at the end. A compartment and the cell are stirred, hose and return line are plugs (Levenspiel, Chemical Reaction
# Engineering, 3rd ed. 1999, mixed flow and plug flow in series); all begin with water. Per gallon that is pumped, with g = 3/8 of it
# through the gun and 1 - g through the bypass, and strengths c:
#   supply: -c(supply); cell of 0.2 gal: c(supply) - c(cell), and c(cell) leaves it, g into the hose and 1 - g into the return line;
#   what the hose gives comes pi/4 d^2 L / 231 = 1.147497 gal of the gun's later, what the return line gives 0.1 gal of the bypass's later.
# Turned to b with both valves at once, b gets the 0.1 gal of old mix that stood in the return line and 1 - g of the cell's, 0.125 gal.
# Of these 0.225 gal the gun has had some 1.6 in 60 when the push-back ends, and cell and return line hold their part: 0.2185 gal are left,
# which is the weed of "pushed/compartment/b" over the 1.971444 fl oz a gallon that stood in a when the valves were turned.
place,volume_gal,weed,iron"""
)
for place, volume, (weed, iron) in day(float(sys.argv[1]) if len(sys.argv) > 1 else 0.002):
    print(f"{place},{volume:.7g},{weed:.7g},{iron:.7g}")
