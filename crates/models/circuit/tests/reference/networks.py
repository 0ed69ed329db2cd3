#!/usr/bin/env python3
"""Writes networks.json: circuits with the node voltages that ngspice finds.

Run it in this folder; it needs ngspice, numpy and SciPy (versions are kept in the file). Each
circuit is given twice: as a list of elements and as the netlist that was run. Beside ngspice,
SciPy's fsolve solves Kirchhoff's equations of the elements, written here without any matrix of
conductances; how far the two are apart at most is kept as `apart_v`.
"""
import json
import random
import re
import subprocess

import numpy
import scipy
from scipy.optimize import fsolve

REFERENCE = "bank -"


class Circuit:
    """The elements of one circuit, in the order in which they are added."""

    def __init__(self, name, why):
        self.name, self.why, self.elements = name, why, []

    def add(self, kind, name, a, b, **figures):
        self.elements.append({"kind": kind, "name": name, "from": a, "to": b, **figures})

    def battery(self, name, a, b, open_v, inner_ohm):
        self.add("battery", name, a, b, open_v=open_v, inner_ohm=inner_ohm)

    def resistor(self, name, a, b, ohm):
        self.add("resistor", name, a, b, ohm=ohm)

    def current(self, name, a, b, current_a):
        self.add("current", name, a, b, current_a=current_a)

    def resistance(self, name, a, b, ohm):
        self.add("resistance", name, a, b, ohm=ohm)

    def power(self, name, a, b, power_w):
        self.add("power", name, a, b, power_w=power_w)

    def nodes(self):
        seen = [REFERENCE]
        for e in self.elements:
            for node in (e["from"], e["to"]):
                if node not in seen:
                    seen.append(node)
        return seen

    def highest_v(self):
        return max(e["open_v"] for e in self.elements if e["kind"] == "battery")


def netlist(circuit):
    """The circuit in ngspice's language, node 0 the reference."""
    number = {node: index for index, node in enumerate(circuit.nodes())}
    lines = [f"* {circuit.name}"]
    batteries = []
    for index, e in enumerate(circuit.elements):
        a, b = number[e["from"]], number[e["to"]]
        if e["kind"] == "battery":
            batteries.append((e["name"], f"v{index}"))
            if e["inner_ohm"] == 0:
                lines.append(f"V{index} {a} {b} DC {e['open_v']!r}")
            else:
                lines.append(f"V{index} e{index} {b} DC {e['open_v']!r}")
                lines.append(f"R{index} e{index} {a} {e['inner_ohm']!r}")
        elif e["kind"] in ("resistor", "resistance"):
            if e["ohm"] == 0:  # ngspice makes a resistor of 0 one of 1 mOhm
                lines.append(f"V{index} {a} {b} DC 0")
            else:
                lines.append(f"R{index} {a} {b} {e['ohm']!r}")
        elif e["kind"] == "current":
            lines.append(f"I{index} {a} {b} DC {e['current_a']!r}")
        elif e["kind"] == "power":
            lines.append(f"B{index} {a} {b} I={e['power_w']!r}/V({a},{b})")
    for node, index in number.items():
        if any(e["kind"] == "power" and e["from"] == node for e in circuit.elements):
            lines.append(f".nodeset V({index})={0.9 * circuit.highest_v():.3f}")
    lines.append(".options reltol=1e-12 abstol=1e-12 vntol=1e-12 gmin=1e-18 itl1=500")
    lines += [".control", "op", "set numdgt=15"]
    lines += [f"print v({index})" for index in number.values() if index != 0]
    lines += [f"print i({source})" for _, source in batteries]
    lines += [".endc", ".end"]
    return "\n".join(lines) + "\n", number, batteries


def by_ngspice(circuit):
    """Node voltages [V] and battery currents [A], positive when discharging."""
    text, number, batteries = netlist(circuit)
    run = subprocess.run(["ngspice", "-b", "/dev/stdin"], input=text, capture_output=True, text=True)
    found = dict(re.findall(r"^(v\(\d+\)|i\(v\d+\)) = (\S+)$", run.stdout, re.M))
    assert "singular" not in run.stdout + run.stderr, run.stdout + run.stderr
    try:
        node_v = {n: float(found[f"v({i})"]) if i else 0.0 for n, i in number.items()}
        battery_a = {n: -float(found[f"i({source})"]) for n, source in batteries}
    except KeyError:
        raise SystemExit(f"{circuit.name}: ngspice failed\n{text}\n{run.stdout}\n{run.stderr}")
    return text, node_v, battery_a


def by_scipy(circuit, start_v):
    """Node voltages from Kirchhoff's laws, the currents of batteries and resistors unknowns too."""
    nodes = circuit.nodes()
    free = {node: index for index, node in enumerate(nodes[1:])}
    series = [e for e in circuit.elements if e["kind"] in ("battery", "resistor")]

    def residuals(x):
        volt = lambda node: x[free[node]] if node in free else 0.0
        out = numpy.zeros(len(x))

        def flows(e, ampere):
            for node, sign in ((e["from"], 1), (e["to"], -1)):
                if node in free:
                    out[free[node]] += sign * ampere

        at = len(free)
        for e in circuit.elements:
            u = volt(e["from"]) - volt(e["to"])
            if e["kind"] in ("battery", "resistor"):
                ohm, open_v = e.get("inner_ohm", e.get("ohm")), e.get("open_v", 0.0)
                flows(e, x[at])
                out[at] = u - ohm * x[at] - open_v
                at += 1
            else:
                flows(e, {"current": lambda: e["current_a"], "resistance": lambda: u / e["ohm"],
                          "power": lambda: e["power_w"] / u}[e["kind"]]())
        return out

    start = [start_v[node] for node in nodes[1:]] + [0.0] * len(series)
    x, _, good, message = fsolve(residuals, start, xtol=1e-13, full_output=True)
    worst = numpy.abs(residuals(x)).max()
    assert worst < 1e-8, (circuit.name, worst, message)
    return {node: float(x[free[node]]) if node in free else 0.0 for node in nodes}


def drawn():
    """The circuits that were laid by hand."""
    out = []

    def new(name, why):
        out.append(Circuit(name, why))
        return out[-1]

    c = new("one load", "series of battery, feed, joint, fuse, load, return")
    c.battery("bank", "bank +", REFERENCE, 12.6, 0.006)
    c.resistor("main", "bank +", "block", 0.0023)
    c.resistor("fuse", "block", "way", 0.0109)
    c.resistor("feed", "way", "fridge +", 0.0713)
    c.resistor("return", "fridge -", REFERENCE, 0.0713)
    c.current("fridge", "fridge +", "fridge -", 6.2)

    c = new("constant power", "the same with a load of constant power")
    c.elements = [dict(e) for e in out[0].elements[:-1]]
    c.power("fridge", "fridge +", "fridge -", 78.0)

    c = new("two returns", "the return through a cable and through the body at once")
    c.battery("bank", "bank +", REFERENCE, 12.8, 0.005)
    c.resistor("feed", "bank +", "pump +", 0.054)
    c.resistor("cable return", "pump -", REFERENCE, 0.054)
    c.resistor("stud", "pump -", "body rear", 0.003)
    c.resistor("body", "body rear", "body front", 0.0008)
    c.resistor("strap", "body front", REFERENCE, 0.0004)
    c.current("pump", "pump +", "pump -", 7.0)

    c = new("chassis return", "three loads share the body, one of them behind a painted stud")
    c.battery("bank", "bank +", REFERENCE, 12.4, 0.007)
    c.resistor("strap", "body 1", REFERENCE, 0.0005)
    c.resistor("body 1-2", "body 1", "body 2", 0.0011)
    c.resistor("body 2-3", "body 2", "body 3", 0.0014)
    for i, (watts, feed, stud) in enumerate([(60, 0.05, 0.002), (35, 0.11, 0.06), (90, 0.04, 0.003)]):
        c.resistor(f"feed {i}", "bank +", f"load {i} +", feed)
        c.resistor(f"stud {i}", f"load {i} -", f"body {i + 1}", stud)
        c.power(f"load {i}", f"load {i} +", f"load {i} -", watts)

    c = new("two batteries", "unlike batteries in parallel through links, one charges the other")
    c.battery("first", "post 1", REFERENCE, 12.9, 0.004)
    c.battery("second", "post 2", "minus 2", 12.5, 0.009)
    c.resistor("link +", "post 1", "post 2", 0.0007)
    c.resistor("link -", "minus 2", REFERENCE, 0.0007)
    c.resistor("feed", "post 1", "inverter +", 0.0012)
    c.resistor("return", "inverter -", REFERENCE, 0.0012)
    c.power("inverter", "inverter +", "inverter -", 1150.0)

    c = new("diagonal take-off", "two like batteries, load taken off at opposite ends")
    for i in (1, 2):
        c.battery(f"battery {i}", f"plus {i}", REFERENCE if i == 1 else "minus 2", 13.2, 0.003)
    c.resistor("link +", "plus 1", "plus 2", 0.0004)
    c.resistor("link -", REFERENCE, "minus 2", 0.0004)
    c.resistor("feed", "plus 2", "load +", 0.001)
    c.power("load", "load +", REFERENCE, 2000.0)

    c = new("charging", "a charger in its current limit feeds bank and loads")
    c.battery("bank", "bank +", REFERENCE, 12.7, 0.008)
    c.resistor("bus", "bank +", "block", 0.0015)
    c.resistor("charger cable", "charger +", "bank +", 0.004)
    c.current("charger", "charger +", REFERENCE, -20.0)
    c.resistor("feed", "block", "fridge +", 0.06)
    c.power("fridge", "fridge +", REFERENCE, 75.0)
    c.resistance("lamp", "block", REFERENCE, 7.2)

    c = new("near collapse", "99.99 % of the power that 12 V behind 0.4 ohm can bring, 90 W")
    c.battery("bank", "bank +", REFERENCE, 12.0, 0.1)
    c.resistor("feed", "bank +", "load +", 0.3)
    c.power("load", "load +", REFERENCE, 90.0 * 0.9999)

    c = new("near collapse, three loads", "a long feed with loads on the way, at 99.5 % of the most")
    c.battery("bank", "bank +", REFERENCE, 12.2, 0.02)
    for i, (a, b) in enumerate([("bank +", "tap 1"), ("tap 1", "tap 2"), ("tap 2", "tap 3")]):
        c.resistor(f"feed {i}", a, b, 0.12)
        c.power(f"load {i}", b, REFERENCE, 20.0 + 5 * i)
    most = most_share(c)
    for e in c.elements:
        if e["kind"] == "power":
            e["power_w"] *= 0.995 * most

    c = new("ring feed", "a feed that runs round and comes back to the block")
    c.battery("bank", "bank +", REFERENCE, 13.1, 0.004)
    c.resistor("main", "bank +", "ring 0", 0.002)
    for i in range(6):
        c.resistor(f"ring {i}", f"ring {i}", f"ring {(i + 1) % 6}", 0.01 + 0.003 * i)
        if i:
            c.power(f"load {i}", f"ring {i}", REFERENCE, 12.0 * i)

    c = new("bridge", "an unbalanced bridge, the load across its middle")
    c.battery("bank", "top", REFERENCE, 12.0, 0.01)
    for name, a, b, ohm in [("a", "top", "left", 1.0), ("b", "top", "right", 2.2),
                            ("c", "left", REFERENCE, 3.3), ("d", "right", REFERENCE, 1.0)]:
        c.resistor(name, a, b, ohm)
    c.current("middle", "left", "right", 1.1)

    c = new("ideal connections", "bars and an isolator without resistance, and an ideal source")
    c.battery("source", "source +", REFERENCE, 13.8, 0.0)
    c.resistor("isolator", "source +", "bar", 0.0)
    c.resistor("bar", "bar", "block", 0.0)
    c.resistor("feed", "block", "fan +", 0.08)
    c.resistor("return", "fan -", "bar -", 0.08)
    c.resistor("bar -", "bar -", REFERENCE, 0.0)
    c.power("fan", "fan +", "fan -", 30.0)
    c.current("lamp", "block", "bar -", 1.5)

    c = new("24 V", "a box truck's 24 V with batteries in series and a tapped lamp")
    c.battery("lower", "middle", REFERENCE, 12.7, 0.004)
    c.battery("upper", "bank +", "middle", 12.6, 0.005)
    c.resistor("feed", "bank +", "heater +", 0.03)
    c.power("heater", "heater +", REFERENCE, 240.0)
    c.resistance("lamp", "middle", REFERENCE, 14.0)

    c = new("bad joint", "160 milliohm in one branch of a fuse block")
    c.battery("bank", "bank +", REFERENCE, 12.85, 0.006)
    c.resistor("main", "bank +", "block", 0.004)
    c.resistor("joint", "block", "way", 0.16)
    c.resistor("feed", "way", "fridge +", 0.05)
    c.resistor("return", "fridge -", "bar -", 0.05)
    c.resistor("earth", "bar -", REFERENCE, 0.003)
    c.power("fridge", "fridge +", "fridge -", 65.0)
    c.resistance("lights", "block", "bar -", 4.5)

    c = new("bolted fault", "a fault of 2 milliohm at the block, the alternator feeding in")
    c.battery("bank", "bank +", REFERENCE, 13.0, 0.005)
    c.battery("starter", "starter +", "body", 12.7, 0.006)
    c.resistor("link", "starter +", "bank +", 0.012)
    c.resistor("body", "body", REFERENCE, 0.003)
    c.resistor("main", "bank +", "block", 0.002)
    c.resistor("fault", "block", "body", 0.002)

    c = new("long ladder", "twelve loads down one feed and one return")
    c.battery("bank", "f0", REFERENCE, 12.7, 0.005)
    for i in range(12):
        back = REFERENCE if i == 0 else f"r{i}"
        c.resistor(f"feed {i}", f"f{i}", f"f{i + 1}", 0.004 + 0.001 * (i % 3))
        c.resistor(f"return {i}", f"r{i + 1}", back, 0.003)
        [c.power, c.current, c.resistance][i % 3](
            f"load {i}", f"f{i + 1}", f"r{i + 1}", [24.0, 1.8, 9.0][i % 3])
    return out


def most_share(circuit):
    """The greatest share of all constant powers that still has a solution, by halving."""
    low, high = 0.0, 100.0
    powers = [e["power_w"] for e in circuit.elements if e["kind"] == "power"]
    for _ in range(60):
        share = 0.5 * (low + high)
        trial = Circuit(circuit.name, "")
        trial.elements = [dict(e) for e in circuit.elements]
        for e, watts in zip([e for e in trial.elements if e["kind"] == "power"], powers):
            e["power_w"] = watts * share
        try:
            by_scipy(trial, {n: circuit.highest_v() for n in trial.nodes()})
            low = share
        except AssertionError:
            high = share
    return low


def thrown(seed):
    """A circuit with a feed tree, loops in feed and return, and a body, thrown by a seed."""
    dice = random.Random(seed)
    c = Circuit(f"thrown {seed}", "random tree with loops, returns through cable and body")
    ohm = lambda least, most: float(f"{least * (most / least) ** dice.random():.4g}")
    c.battery("bank", "bank +", REFERENCE, round(dice.uniform(12.0, 13.4), 3), ohm(0.002, 0.02))
    feeds, backs = ["bank +"], [REFERENCE]
    for i in range(dice.randint(3, 9)):
        feeds.append(f"feed {i}")
        c.resistor(f"run {i}", dice.choice(feeds[:-1]), f"feed {i}", ohm(0.001, 0.06))
    for i in range(dice.randint(2, 6)):
        backs.append(f"body {i}")
        c.resistor(f"bond {i}", f"body {i}", dice.choice(backs[:-1]), ohm(0.0003, 0.02))
    for i in range(dice.randint(1, 4)):
        side = dice.choice([feeds, backs])
        a, b = dice.sample(side, 2)
        c.resistor(f"loop {i}", a, b, ohm(0.001, 0.1))
    if dice.random() < 0.5:
        c.battery("second", dice.choice(feeds), dice.choice(backs),
                  round(dice.uniform(12.0, 13.4), 3), ohm(0.004, 0.04))
    if dice.random() < 0.4:
        c.current("charger", dice.choice(feeds), dice.choice(backs), -round(dice.uniform(5, 30), 2))
    for i in range(dice.randint(3, 8)):
        a, b = dice.choice(feeds[1:]), dice.choice(backs)
        kind = dice.choice(["power", "power", "current", "resistance"])
        getattr(c, kind)(f"load {i}", a, b, round(
            {"power": dice.uniform(5, 120), "current": dice.uniform(0.2, 8),
             "resistance": dice.uniform(1.5, 40)}[kind], 2))
    return c


def main():
    version = subprocess.run(["ngspice", "--version"], capture_output=True, text=True).stdout
    out = {
        "made_by": "networks.py",
        "ngspice": re.search(r"ngspice-(\S+)", version).group(1),
        "scipy": scipy.__version__,
        "numpy": numpy.__version__,
        "reference": REFERENCE,
        "networks": [],
    }
    for circuit in drawn() + [thrown(seed) for seed in range(1, 21)]:
        text, node_v, battery_a = by_ngspice(circuit)
        other_v = by_scipy(circuit, node_v)
        apart_v = max(abs(node_v[n] - other_v[n]) for n in node_v)
        assert apart_v < 1e-6, (circuit.name, apart_v)
        out["networks"].append({
            "name": circuit.name, "why": circuit.why, "elements": circuit.elements,
            "node_v": node_v, "battery_a": battery_a, "apart_v": float(f"{apart_v:.1e}"),
            "netlist": text.splitlines(),
        })
    with open("networks.json", "w", encoding="utf-8") as file:
        json.dump(out, file, indent=1, ensure_ascii=False)
        file.write("\n")
    print(len(out["networks"]), "circuits; most apart", max(n["apart_v"] for n in out["networks"]))


main()
