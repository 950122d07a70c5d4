"""Torsion axles by the least energy of their springs, in pounds and inches: no solving for forces, no rule for axles that
lift. Prints what test/rules/reference/torsion-cases.ts holds. Standard library only:  python3 torsion.py"""

EMPTY, LOAD = (2_800, 165), (9_000, 160)
AXLES = (163.5, 196.5)


def forces(axles, rate, offset, raised, ground, pitch):
    return [max(0.0, rate * (offset + g - raised - pitch * x)) for x, g in zip(axles, ground)]


def energy(axles, rate, offset, raised, ground, moment, pitch):
    pressed = [max(0.0, offset + g - raised - pitch * x) for x, g in zip(axles, ground)]
    return moment * pitch + sum(rate / 2 * p * p for p in pressed)


def rest(weights, axles, rate, raised=0.0, ground=None, level_weights=None):
    """Axle loads and tongue. `level_weights`: the load under which it was level, when that is another."""
    ground = ground or [0.0] * len(axles)
    weight = sum(w for w, _ in weights)
    moment = sum(w * x for w, x in weights)
    offset = sum(w * x for w, x in (level_weights or weights)) / (rate * sum(axles))
    low, high = -1.0, 1.0
    for _ in range(300):
        a, b = low + (high - low) / 3, high - (high - low) / 3
        ea = energy(axles, rate, offset, raised, ground, moment, a)
        eb = energy(axles, rate, offset, raised, ground, moment, b)
        low, high = (low, b) if ea < eb else (a, high)
    found = forces(axles, rate, offset, raised, ground, (low + high) / 2)
    return [round(f, 1) for f in found], round(weight - sum(found), 1)


both = [EMPTY, LOAD]
print("soft, nose 3 high", rest(both, AXLES, 1_000, 3))
print("stiff, nose 3 high", rest(both, AXLES, 3_000, 3))
print("stiff, nose 12 high", rest(both, AXLES, 3_000, 12))
print("moved 6 in forward", rest([EMPTY, (9_000, 154)], AXLES, 2_000, 3, level_weights=both))
print("500 lb taken off", rest([EMPTY, (9_000 - 500, 160)], AXLES, 2_000, 3, level_weights=both))
print("2 in dip in front", rest(both, AXLES, 2_000, 0, [-2, 0]))
print("2 in dip behind", rest(both, AXLES, 2_000, 0, [0, -2]))
print("2 in bump behind", rest(both, AXLES, 2_000, 0, [0, 2]))
TRIPLE, BOTH = (210, 244, 278), [(4_200, 205), (14_000, 225)]
for where in range(3):
    for height in (3, -3):
        print("triple", where + 1, height, rest(BOTH, TRIPLE, 1_800, 0, [height if i == where else 0 for i in range(3)]))


def lifts_at(weights, axles, rate, where, sign):
    """Least height, by halving, at which an axle is off the ground."""
    low, high = 0.0, 60.0
    for _ in range(60):
        middle = (low + high) / 2
        found, _ = rest(weights, axles, rate, 0, [sign * middle if i == where else 0 for i in range(len(axles))])
        low, high = (low, middle) if min(found) <= 0.05 else (middle, high)
    return round(high, 2)


for sign in (1, -1):
    print("tandem lifts at", sign, [lifts_at(both, AXLES, 2_000, i, sign) for i in range(2)])
    print("triple lifts at", sign, [lifts_at(BOTH, TRIPLE, 1_800, i, sign) for i in range(3)])
