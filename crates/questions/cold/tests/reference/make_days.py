"""Whole days of cold boxes from builds written as text, each solved by SciPy on its own.

Every case is a build file and what a program of our kind has to answer of it: the duty and the
bay's temperature on a hot afternoon, with the boxes held and with them where they come to, the amp-hours of a hot and of an ordinary day, the conductance
of the walls. Nothing here is taken from the program but its stand-ins, which are read from the
tables of typical values; the heat balances are written out anew, moist air is CoolProp's, fits are
SciPy's least squares, balances its brentq and fsolve.
Run in this folder: pip install numpy==2.4.6 scipy==1.17.1 CoolProp==8.0.0, then
python make_days.py
"""
import json
import math
import tomllib

import CoolProp
import numpy as np
import scipy
from CoolProp.HumidAirProp import HAPropsSI
from scipy.optimize import brentq, least_squares, root

rng = np.random.default_rng(20260611)
TABLES = "../../../../ground/tables/data/"
rows = {}
for name in ["typical.toml", "typical_cold.toml"]:
    with open(TABLES + name, "rb") as file:
        rows |= tomllib.load(file)
used = {}


def typical(key, factor=1.0):
    likely = rows[key]["likely"]
    used[key] = likely
    return factor * float(likely.split()[0] if isinstance(likely, str) else likely)


CARNOT = typical("fridge-carnot", 0.01)
EVAPORATOR_K = typical("fridge-evaporator")
CONDENSER_K = typical("fridge-condenser")
LIFT_K = typical("fridge-least-lift")
STANDBY_W = typical("fridge-standby")
AIR_J_PER_M3_K = 353.0 / 308.0 * 1006.0  # air of 35 °C, density 353/(273 + t)


def cop(inside_c, air_c):
    te = inside_c - EVAPORATOR_K + 273.15
    tc = max(air_c + CONDENSER_K + 273.15, te + LIFT_K)
    return CARNOT * math.exp(-0.0075 * (tc - 318.15)) * te / (tc - te)


def milk_j_per_kg(t_c):
    """Heat in milk: 3.9 and 2.05 kJ/(kg·K), 289 kJ/kg (Earle, appendix 7); it freezes at −0.5 °C."""
    return 3900.0 * (t_c + 0.5) if t_c >= -0.5 else 2050.0 * (t_c + 0.5) - 289000.0


def conductance(box):
    """W/K of a box, from its papers or from its sizes."""
    if box["consumption"]:
        def misses(ua):
            return [ua[0] * (ambient - inside) / cop(inside, ambient) / (wh / 24 - STANDBY_W) - 1
                    for ambient, inside, wh in box["consumption"]]
        return least_squares(misses, [1.0], xtol=1e-14, ftol=1e-14, gtol=1e-14).x[0]
    outside = np.array(box["size"]) / 1000
    x = box["wall"] / 1000
    inner = outside - 2 * x

    def surface(a):
        return 2 * (a[0] * a[1] + a[1] * a[2] + a[2] * a[0])
    s = surface(inner) / x + 0.54 * 4 * inner.sum() + 8 * 0.15 * x
    resistance = (1 / (typical("film-inside") * surface(inner)) + 1 / (box["k"] * s)
                  + 1 / (typical("film-outside") * surface(outside)))
    w, h, d = outside
    rim = 2 * (w + (d if box["kind"] == "lidded box" else h))
    return typical("fridge-bridges") / resistance + typical("fridge-gasket") * rim


def humid(t_c, humidity):
    state = ("T", t_c + 273.15, "P", 101325, "R", humidity)
    return HAPropsSI("H", *state), HAPropsSI("W", *state), HAPropsSI("V", *state)


def openings_w(box, cabin_c, inside_c):
    key = {"upright fridge": "upright", "lidded box": "lidded", "drawer fridge": "drawer"}[box["kind"]]
    volume = box["volume"] / 1000 * typical("air-change-" + key, 0.01)
    h1, w1, _ = humid(cabin_c, typical("cabin-humidity", 0.01))
    h2, w2, v2 = humid(inside_c, typical("fridge-humidity", 0.01))
    water = 4190.0 * inside_c if inside_c >= 0 else 2050.0 * inside_c - 333600.0
    return typical("openings") * volume / v2 * ((h1 - h2) - (w1 - w2) * water) / 86400


def bay_w_per_k(case):
    if case["conductance"] is not None:
        return case["conductance"]
    vents = any(box["vents"] for box in case["boxes"])
    flow = typical("vent-flow") / 3600 if vents else 0.0
    return typical("bay-to-cabin") + typical("bay-to-outside") + AIR_J_PER_M3_K * flow


def box_at(case, box, cabin_c, bay_c):
    """Duty, mean electric power and heat left in the bay, of a box in a bay of this temperature."""
    inside = case["inside"]
    ua = conductance(box)
    w, h, d = box["size"]
    front = w * h / (2 * (w * h + h * d + d * w))
    front = front if case["bay"] and box["kind"] != "lidded box" else 0.0
    light = 0.0 if box["consumption"] else typical("fridge-light-fan")
    litres = sum(b["volume"] for b in case["boxes"])
    kg_per_s = typical("warm-food") * case["people"] * box["volume"] / litres / 86400
    food = kg_per_s * (milk_j_per_kg(cabin_c) - milk_j_per_kg(inside))
    walls_bay = ua * (1 - front) * (bay_c - inside)
    load = (walls_bay + ua * front * (cabin_c - inside) + openings_w(box, cabin_c, inside) + food + light)
    c = cop(inside, bay_c)
    duty = load / (c * box["power"])
    run = min(duty, 1.0)
    power = run * box["power"] + STANDBY_W + light
    left = run * box["power"] * (1 + c) + STANDBY_W - walls_bay
    return duty, power, left


def solve(case, cabin_c):
    if not case["bay"]:
        return cabin_c, [box_at(case, box, cabin_c, cabin_c) for box in case["boxes"]]
    g = bay_w_per_k(case)

    def over(bay_c):
        left = sum(box_at(case, box, cabin_c, bay_c)[2] for box in case["boxes"])
        return cabin_c + left / g - bay_c
    # The lowest balance: from the cabin's temperature upwards in small steps.
    low = cabin_c - 5.0
    while over(low + 0.25) > 0:
        low += 0.25
    bay_c = brentq(over, low, low + 0.25, xtol=1e-11)
    check = root(lambda b: over(b[0]), [bay_c])
    assert check.success and abs(check.x[0] - bay_c) < 1e-6
    return bay_c, [box_at(case, box, cabin_c, bay_c) for box in case["boxes"]]


def settled_left(case, box, cabin_c, bay_c):
    """Heat left in the bay by a box that is where its compressor holds it, and what it is inside."""
    duty, _, left = box_at(case, box, cabin_c, bay_c)
    if duty <= 1:
        return left, case["inside"]
    ua = conductance(box)
    w, h, d = box["size"]
    front = w * h / (2 * (w * h + h * d + d * w)) if case["bay"] and box["kind"] != "lidded box" else 0.0
    held = duty * cop(case["inside"], bay_c) * box["power"]
    fixed = held - ua * (1 - front) * (bay_c - case["inside"]) - ua * front * (cabin_c - case["inside"])

    def short(inside_c):
        walls = ua * (1 - front) * (bay_c - inside_c) + ua * front * (cabin_c - inside_c)
        return walls + fixed - cop(inside_c, bay_c) * box["power"]
    inside = brentq(short, case["inside"], 60.0, xtol=1e-11)
    pumped = cop(inside, bay_c) * box["power"]
    return pumped + box["power"] + STANDBY_W - ua * (1 - front) * (bay_c - inside), inside


def settled(case, cabin_c, held_c):
    """Temperature of the bay, and of every box, with all boxes where they come to."""
    if not case["bay"]:
        return cabin_c, [settled_left(case, box, cabin_c, cabin_c)[1] for box in case["boxes"]]
    g = bay_w_per_k(case)

    def over(bay_c):
        return cabin_c + sum(settled_left(case, b, cabin_c, bay_c)[0] for b in case["boxes"]) / g - bay_c
    low = held_c - 0.01
    while over(low + 0.25) > 0:
        low += 0.25
    bay_c = brentq(over, low, low + 0.25, xtol=1e-11)
    return bay_c, [settled_left(case, box, cabin_c, bay_c)[1] for box in case["boxes"]]


def draw_box(kind, papers, hard):
    size = {"upright fridge": [475, 780, 495], "lidded box": [600, 420, 385],
            "drawer fridge": [440, 250, 560]}[kind]
    size = [round(s * rng.uniform(0.85, 1.2)) for s in size]
    wall = round(rng.uniform(28, 48))
    volume = round(0.75 * math.prod((s - 2 * wall) / 100 for s in size))
    base = rng.uniform(180, 320) if kind != "upright fridge" else rng.uniform(300, 480)
    base *= 1.9 if hard else 1.0
    consumption = [(25, 5, round(base)), (32, 5, round(base * rng.uniform(1.4, 1.65)))][:papers]
    return dict(kind=kind, size=size, wall=wall, volume=volume, k=round(rng.uniform(0.021, 0.027), 4),
                power=round(rng.uniform(36, 70)), consumption=consumption, vents=bool(rng.random() < 0.5))


def text(case):
    lines = [f'system = "{case["volts"]} V"',
             f'wants = {{ people = {case["people"]}, away = "4 days", inside = "{case["inside"]} °C" }}',
             f'[states.corner.hot-day]\ncabin = "{case["hot"]} °C"',
             f'[states.corner.mild-day]\ncabin = "{case["mild"]} °C"']
    if case["bay"]:
        lines += ['[bays.galley]\nopens = "left"',
                  'size = { width = "900 mm", height = "1400 mm", depth = "900 mm" }',
                  'place = { from_rear = "0 mm", from_right = "0 mm", above = "0 mm" }']
        if case["conductance"] is not None:
            lines.append(f'conductance = "{case["conductance"]} W/K"')
    for i, box in enumerate(case["boxes"]):
        w, h, d = box["size"]
        lines += [f'[parts.p{i}]\nkind = "{box["kind"]}"',
                  f'size = {{ width = "{w} mm", height = "{h} mm", depth = "{d} mm" }}',
                  f'volume = "{box["volume"]} L"\ninsulation = "{box["wall"]} mm"',
                  f'conductivity = "{box["k"]} W/(m·K)"\nwarmest = "43 °C"\npower = {{ running = "{box["power"]} W" }}']
        if box["vents"]:
            lines.append('air = { inlet = "160 cm2", outlet = "160 cm2" }')
        for ambient, inside, wh in box["consumption"]:
            lines.append(f'[[parts.p{i}.consumption]]\nambient = "{ambient} °C"\n'
                         f'inside = "{inside} °C"\nper_day = "{wh} Wh"')
        lines.append(f'[items.b{i}]\npart = "p{i}"')
        if case["bay"]:
            lines.append('place = { in = "galley" }')
    return "\n".join(lines) + "\n"


wanted = [(["upright fridge"], 2, True, "typical"), (["upright fridge"], 0, True, "typical"),
          (["lidded box"], 2, True, "given"), (["lidded box"], 1, False, None),
          (["drawer fridge"], 0, True, "given"), (["drawer fridge"], 2, True, "typical"),
          (["upright fridge"], 1, True, "given"), (["upright fridge"], 2, False, None),
          (["lidded box", "drawer fridge"], 2, True, "typical"),
          (["upright fridge", "lidded box"], 0, True, "given"),
          (["upright fridge"], 2, True, "hard"), (["lidded box"], 0, True, "freezer")]
cases = []
for kinds, papers, bay, how in wanted:
    case = dict(
        bay=bay, conductance=round(rng.uniform(4, 14), 1) if how in ("given", "hard") else None,
        boxes=[draw_box(kind, papers, how == "hard") for kind in kinds],
        inside=-15 if how == "freezer" else round(rng.uniform(2, 7), 1), people=int(rng.integers(1, 5)),
        hot=round(rng.uniform(30, 38), 1), mild=round(rng.uniform(16, 24), 1), volts=int(rng.choice([12, 24])))
    bay_c, hot = solve(case, case["hot"])
    _, mean = solve(case, case["hot"] - typical("hot-day-mean"))
    _, mild = solve(case, case["mild"])

    settled_c, insides = settled(case, case["hot"], bay_c)

    def ah(boxes):
        return sum(power for _, power, _ in boxes) * 24 / case["volts"]
    cases.append(dict(
        build=text(case), bay=bay_c, duty=[duty for duty, _, _ in hot], hot_ah=ah(mean), mild_ah=ah(mild),
        settled_bay=settled_c, settled_inside=insides,
        conductance=[conductance(box) for box in case["boxes"]]))

with open("days.json", "w") as file:
    json.dump(dict(
        generator="make_days.py",
        versions=dict(numpy=np.__version__, scipy=scipy.__version__, CoolProp=CoolProp.__version__),
        typical=used, cases=cases), file, indent=1, ensure_ascii=False)
    file.write("\n")
