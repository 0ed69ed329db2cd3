"""Loads of axles of 24 invented vehicles in two load states: before, as weighed, and after a job.

Nothing is computed as a change here: every mass is laid on the beam, and the equations of balance
are solved as one linear system (scipy.linalg.solve), about a datum that is neither axle. For a
trailer with its car that is one system of four supports and the force in the coupling. The
program gets the loads of the first state as its weighing and has to find the rest.

Run: python3 make_vehicles.py > vehicles.json
"""

import json
import sys

import numpy
import scipy
from scipy.linalg import solve

FUEL = 0.83  # the program's stand-in, in kilograms a litre
DATUM = 2.345  # metres ahead of the rear axle
rng = numpy.random.default_rng(20260314)


def number(low, high, digits=3):
    return round(float(rng.uniform(low, high)), digits)


def supports(loads, places):
    """Forces in two supports at `places` under `loads` of (mass, place)."""
    a = [[1.0, 1.0], [place - DATUM for place in places]]
    b = [sum(m for m, _ in loads), sum(m * (x - DATUM) for m, x in loads)]
    return solve(numpy.array(a), numpy.array(b))


def vehicle(kind):
    trailer = kind == "trailer"
    length = number(2.6, 4.2) if trailer else number(2.8, 5.2)
    v = {
        "kind": kind,
        "wheelbase": length,
        "rear_axle": number(0.6, 1.6),
        "width": number(1.6, 2.2),
        "track": number(1.5, 1.9),
        "tag": {"behind": number(1.0, 1.4), "share": number(0.2, 0.5, 2)} if kind == "tag" else None,
    }
    v["at"] = {
        what: [number(0.2, v["rear_axle"] + 0.9 * length), number(0.3, 1.3)]
        for what in ("water", "people", "fuel", "food")
    }
    item = lambda: {
        "mass": number(5, 90, 1),
        "length": number(0.2, 0.9),
        "width": number(0.2, 0.7),
        "from_rear": number(0.0, v["rear_axle"] + 0.7 * length),
        "from_left": number(0.0, 0.8),
    }
    v["stays"], v["goes"], v["comes"] = item(), item(), item()
    scale = 0.3 if trailer else 1.0
    v["states"] = {
        name: {
            "water": number(10, 120, 0) * scale,
            "people": 0.0 if trailer else number(70, 320, 0),
            "fuel": 0.0 if trailer else number(10, 110, 0),
            "food": number(5, 60, 0),
        }
        for name in ("touring", "full")
    }
    # The rest of the vehicle, which the program never sees: five lumps.
    span = (0.1, 0.35) if trailer else (0.2, 0.9)
    hidden = [
        (number(100, 250) * (1 if trailer else 2), number(*span) * length, number(-0.15, 0.15))
        for _ in range(5)
    ]
    if trailer:
        v["car"] = {
            "wheelbase": number(2.5, 3.3),
            "overhang": number(0.8, 1.3),
            "front": number(900, 1200, 0),
            "rear": number(800, 1200, 0),
        }
    v["weighed"], _ = loads(v, hidden, "touring", ["stays", "goes"])
    v["expected"] = {name: loads(v, hidden, name, ["stays", "comes"])[1] for name in v["states"]}
    return v


def loads(v, hidden, state, items):
    masses = list(hidden)
    middle = v["width"] / 2
    for name in items:
        i = v[name]
        x = i["from_rear"] + i["length"] / 2 - v["rear_axle"]
        masses.append((i["mass"], x, middle - i["from_left"] - i["width"] / 2))
    for what, amount in v["states"][state].items():
        x, y = v["at"][what]
        kg = amount * FUEL if what == "fuel" else amount
        masses.append((kg, x - v["rear_axle"], middle - y))
    tag = v["tag"]
    rear_at = -tag["behind"] * tag["share"] if tag else 0.0
    along = [(m, x) for m, x, _ in masses]
    front, rear = supports(along, [v["wheelbase"], rear_at])
    half = v["track"] / 2
    left, right = supports([(m, y) for m, _, y in masses], [half, -half])
    total = front + rear
    share = tag["share"] if tag else 0.0
    out = {
        "nose" if v["kind"] == "trailer" else "front": front,
        "rear": rear * (1 - share),
        "total": total,
        "side": abs(left - right) / total * 100,
    }
    if tag:
        out["tag"] = rear * share
    if v["kind"] == "trailer":
        out["nose-share"] = front / total * 100
        c = v["car"]
        # Front and rear of the car, coupling, axle of the trailer: four balances at once, about
        # the car's front axle and about the trailer's own axle.
        coupling = c["wheelbase"] + c["overhang"]
        car_moment = c["rear"] * c["wheelbase"]
        a = numpy.array(
            [
                [1, 1, -1, 0],
                [0, c["wheelbase"], -coupling, 0],
                [0, 0, 1, 1],
                [0, 0, v["wheelbase"], 0],
            ]
        )
        b = [c["front"] + c["rear"], car_moment, total, sum(m * x for m, x in along)]
        car_front, car_rear, nose, _ = solve(a, numpy.array(b))
        assert abs(nose - front) < 1e-6
        out |= {"car.front": car_front, "car.rear": car_rear, "car.total": car_front + car_rear}
    weighed = {"front": front, "rear": rear, "left": left, "right": right}
    rounded = lambda d: {key: round(float(value), 6) for key, value in d.items()}
    return rounded(weighed), rounded(out)


kinds = ["van"] * 12 + ["tag"] * 4 + ["trailer"] * 8
made = {
    "made_by": "make_vehicles.py",
    "numpy": numpy.__version__,
    "scipy": scipy.__version__,
    "fuel": FUEL,
    "vehicles": [vehicle(kind) for kind in kinds],
}
json.dump(made, sys.stdout, indent=1)
print()
