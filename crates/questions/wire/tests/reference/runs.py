#!/usr/bin/env python3
"""Writes runs.json: whole runs, each as a build's text with what ngspice finds of its circuit.

Run it in this folder; it needs ngspice (versions are kept in the file). Every figure that a
build can state is stated in its text; those that it cannot are the stand-ins below. Resistances,
ampacities and temperatures are worked out here from the published figures, apart from the program:
copper of 0.017241 ohm mm2/m and 0.00393 1/K (IEC 60028), gauges by ASTM B258 with a lay of 2 %,
33 CFR 183.425 table 5, fuses by their data sheets.
"""
import json
import math
import platform
import re
import subprocess

RHO, ALPHA = 0.017241, 0.00393
# what a build cannot state: rest voltage at 20 % of charge, resistance when low and cold over that
# when full and warm, contacts of a fuse's holder (sprung, bolted), loss of an unknown fuse
LOW_V = {"AGM": 11.95, "flooded": 11.95, "gel": 11.95, "LiFePO4": 12.9}
LOW_COLD, SPRUNG, BOLTED, UNKNOWN_FUSE_V = 1.6, 2e-3, 0.3e-3, 0.1
# 33 CFR 183.425 table 5: gauge, 60 C, 105 C
CURRENTS = [(18, 10, 20), (16, 15, 25), (14, 20, 35), (12, 25, 45), (10, 40, 60), (8, 55, 80),
            (6, 80, 120), (4, 105, 160), (3, 120, 180), (2, 140, 210), (1, 165, 245),
            (0, 195, 285), (-1, 225, 330), (-2, 260, 385), (-3, 300, 445)]
# blade fuses: cold resistance, drop at the rating
BLADES = {5: (17.85e-3, 0.128), 7.5: (10.91e-3, 0.116), 10: (7.70e-3, 0.109),
          15: (4.80e-3, 0.102), 20: (3.38e-3, 0.098)}
SAE_CMIL = {12: 5833}


def awg_mm2(number):
    return math.pi / 4 * (0.127 * 92 ** ((36 - number) / 39)) ** 2


def copper(size):
    """Copper for certain [mm2], and ohm per metre at 20 C."""
    number, kind = size.split()[:2]
    if size.endswith("outside"):
        return 4 / 36 * float(number) ** 2, 1.02 * RHO / (4.3 / 36 * float(number) ** 2)
    if kind == "mm2":
        return float(number), RHO / float(number)
    if kind == "SAE":
        mm2 = SAE_CMIL[int(number)] * math.pi / 4 * 0.0254 ** 2
        return mm2, 1.02 * RHO / mm2
    mm2 = awg_mm2(int(number))
    return mm2, 1.02 * RHO / mm2


class Conductor:
    def __init__(self, size, length, ambient=35.0, rated=70.0):
        self.size, self.length, self.ambient, self.rated = size, length, ambient, rated
        self.warm = ambient

    def ohm(self, temperature):
        return copper(self.size)[1] * self.length * (1 + ALPHA * (temperature - 20))

    def allowed(self):
        """What it may carry there, with 70 C counted as 60 C."""
        column, of = (2, 105.0) if self.rated == 105.0 else (1, 60.0)
        # of a cable known by its diameter the likely section would do too; the least counts
        mm2 = copper(self.size)[0]
        rows = [(awg_mm2(row[0]), row[column]) for row in CURRENTS]
        for (a1, i1), (a2, i2) in zip(rows, rows[1:]):
            if a1 <= mm2 <= a2:
                share = math.log(mm2 / a1) / math.log(a2 / a1)
                free = math.exp(math.log(i1) + share * math.log(i2 / i1))
                return free * math.sqrt((of - self.ambient) / (of - 30))
        raise SystemExit(f"{self.size} is outside the table")

    def settle(self, ampere):
        """The temperature T with T - Ta = (Tr - Ta) (I/Iz)^2 r(T), by repetition."""
        for _ in range(100):
            r = (1 + ALPHA * (self.warm - 20)) / (1 + ALPHA * (self.rated - 20))
            self.warm = self.ambient + (self.rated - self.ambient) * (ampere / self.allowed()) ** 2 * r

    def text(self, keys=("section", "length", "insulation", "ambient")):
        values = (self.size, f"{self.length} m", f"{self.rated} °C", f"{self.ambient} °C")
        return ", ".join(f'{key} = "{value}"' for key, value in zip(keys, values))


def simulate(elements):
    """Voltages and currents of elements (name, kind, from, to, value) by ngspice."""
    nodes = {"0": "0"}
    number = lambda node: nodes.setdefault(node, str(len(nodes)))
    lines = ["* run"]
    for index, (name, kind, a, b, value) in enumerate(elements):
        a, b = number(a), number(b)
        if kind == "V":
            lines.append(f"V{index} {a} {b} DC {value!r}")
        elif kind == "R":
            lines.append(f"R{index} {a} {b} {value!r}")
        elif kind == "I":
            lines.append(f"I{index} {a} {b} DC {value!r}")
        elif kind == "P":
            lines += [f"B{index} {a} {b} I={value!r}/V({a},{b})", f".nodeset V({a})=11"]
    lines.append(".options reltol=1e-12 abstol=1e-12 vntol=1e-12 gmin=1e-18 itl1=500")
    lines += [".control", "op", "set numdgt=15"]
    lines += [f"print v({n})" for n in nodes.values() if n != "0"] + [".endc", ".end"]
    netlist = "\n".join(lines) + "\n"
    run = subprocess.run(["ngspice", "-b", "/dev/stdin"], input=netlist, capture_output=True, text=True)
    found = {k: float(v) for k, v in re.findall(r"^v\((\d+)\) = (\S+)$", run.stdout, re.M)}
    found["0"] = 0.0
    try:
        volt = {node: found[n] for node, n in nodes.items()}
    except KeyError:
        raise SystemExit(f"ngspice failed\n{netlist}\n{run.stdout}\n{run.stderr}")
    ampere = {name: (volt[a] - volt[b]) / value
              for name, kind, a, b, value in elements if kind == "R"}
    return netlist, volt, ampere


class Run:
    """One run with what it shares, as figures and as a build's text."""

    def __init__(self, name, why, power, start, cut_out, fuse, feed, back, body=None, plug=0.004,
                 kind="upright fridge", bank="AGM", count=1, inner=0.006, volts=12, family="blade",
                 others=(), main_ohm=0.001, joints=0.001,
                 main=("16 mm2", 0.9), main_back=("16 mm2", 0.7)):
        self.__dict__.update(locals())
        self.main, self.main_back = Conductor(*main), Conductor(*main_back)

    def fuse_ohm(self):
        if self.family != "blade":
            return UNKNOWN_FUSE_V / self.fuse + BOLTED
        cold, drop = BLADES[self.fuse]
        share = min(self.power / self.volts, self.fuse) / self.fuse
        return cold + (drop / self.fuse - cold) * share ** 2 + SPRUNG

    def elements(self, state):
        at = {"start": lambda c: c.ambient, "running": lambda c: c.warm,
              "fault": lambda c: c.rated}[state]
        shared = (lambda c: c.warm) if state == "fault" else at
        e = [("emf", "V", "e", "0", LOW_V[self.bank] * self.volts / 12),
             ("inner", "R", "e", "post", self.inner / self.count * LOW_COLD),
             ("main", "R", "post", "m", self.main_ohm),
             ("main cable", "R", "m", "block", self.main.ohm(shared(self.main))),
             ("way", "R", "block", "w", self.fuse_ohm()),
             ("feed", "R", "w", "f", self.feed.ohm(at(self.feed))),
             ("plug", "R", "f", "plug+", self.plug),
             ("back cable", "R", "bus", "j", self.main_back.ohm(shared(self.main_back))),
             ("joints", "R", "j", "0", self.joints)]
        if self.body:
            stud, sheet, bond_stud, bond = self.body
            e += [("back", "R", "plug-", "s", self.back.ohm(at(self.back))),
                  ("stud", "R", "s", "steel", stud), ("sheet", "R", "steel", "t", sheet + bond_stud),
                  ("bond", "R", "t", "bus", bond.ohm(shared(bond)))]
        else:
            e += [("back", "R", "plug-", "bus", self.back.ohm(at(self.back)))]
        motor = self.kind in ("water pump", "roof fan")
        if state == "start":
            e += [("item", "I", "plug+", "plug-", self.start)]
        elif state == "fault":
            e += [("fault", "R", "plug+", "plug-", 1e-9)]
        else:
            e += [("item", "I" if motor else "P", "plug+", "plug-",
                   self.power / self.volts if motor else self.power)]
            for n, (kind, power, by_body) in enumerate(self.others):
                moves = kind in ("water pump", "roof fan")
                to = "steel" if by_body else "bus"
                e += [(f"other {n}", "I" if moves else "P", "block", to,
                       power / self.volts if moves else power)]
        return e

    def expected(self):
        bond = self.body[3] if self.body else None
        for _ in range(8):
            _, _, ampere = simulate(self.elements("running"))
            for conductor, name in [(self.feed, "feed"), (self.back, "back"), (self.main, "main cable"),
                                    (self.main_back, "back cable"), (bond, "bond")]:
                if conductor:
                    conductor.settle(ampere[name])
        out = {}
        for state in ["start", "running", "fault"]:
            if state == "start" and self.start is None:
                continue
            netlist, volt, ampere = simulate(self.elements(state))
            out[state] = {"netlist": netlist, "posts_v": volt["post"],
                          "item_v": volt["plug+"] - volt["plug-"], "feed_a": ampere["feed"]}
        running = out["running"]
        running["drop_percent"] = 100 * (running["posts_v"] - running["item_v"]) / self.volts
        return out

    def text(self):
        start = f', start = "{self.start} A"' if self.start else ""
        cut = f', cut_out = "{self.cut_out} V"' if self.cut_out else ""
        back = self.back.text()
        if self.body:
            stud, sheet, bond_stud, bond = self.body
            back = f'by = "body", {back}, stud = "{stud * 1e3} mΩ"'
        t = [f'system = "{self.volts} V"', "[bank]", f'kind = "{self.bank}"', 'capacity = "100 Ah"',
             f"count = {self.count}", f'resistance = "{self.inner * 1e3} mΩ"',
             f'fuse = {{ rating = "300 A", family = "class T", resistance = "{self.main_ohm * 1e3} mΩ", from_post = "100 mm" }}',
             "[block]", f'feed = {{ {self.main.text()} }}', f'return = {{ {self.main_back.text()} }}',
             f'joints = "{self.joints * 1e3} mΩ"', 'ambient = "25 °C"',
             "[block.ways.1]", f'fuse = "{self.fuse} A"', f'family = "{self.family}"', 'run = "item"',
             "[parts.item]", f'kind = "{self.kind}"', f'power = {{ running = "{self.power} W"{start}{cut} }}',
             "[items.item]", "[runs.item]", *self.feed.text().split(", "),
             f'joints = "{self.plug * 1e3} mΩ"', f"return = {{ {back} }}"]
        if self.body:
            t += ["[body]", f'resistance = "{sheet * 1e3} mΩ"', f'stud = "{bond_stud * 1e3} mΩ"',
                  f"cable = {{ {bond.text()} }}"]
        for n, (kind, power, by_body) in enumerate(self.others):
            t += [f"[parts.other-{n}]", f'kind = "{kind}"', f'power = {{ running = "{power} W" }}',
                  f"[items.other-{n}]", f"[runs.other-{n}]", 'section = "1.5 mm2"', 'length = "2 m"']
            t += ['return = { by = "body" }'] if by_body else []
        return "\n".join(t) + "\n"


def bond(size="6 mm2", length=0.6):
    return Conductor(size, length)


C = Conductor
RUNS = [
    Run("fridge, own return", "one load, nothing else on", 58.0, 8.5, 10.9, 10,
        C("1.5 mm2", 7.2), C("1.5 mm2", 7.2)),
    Run("others on", "lamps at constant power and a pump at constant current on the same block",
        58.0, 8.5, 10.9, 10, C("2.5 mm2", 6.0), C("2.5 mm2", 6.0),
        others=[("light", 18.0, False), ("water pump", 84.0, False)]),
    Run("through the body", "return by stud, sheet, stud and bond", 58.0, 8.5, 10.9, 10,
        C("1.5 mm2", 7.2), C("1.5 mm2", 1.4), body=(0.02, 0.002, 0.005, bond())),
    Run("others through the body", "the bond is shared by a pump and lamps", 46.0, 6.0, 10.4, 7.5,
        C("2.5 mm2", 5.0), C("2.5 mm2", 0.8), body=(0.012, 0.0015, 0.004, bond("4 mm2", 1.1)),
        others=[("water pump", 60.0, True), ("light", 30.0, True), ("light", 12.0, False)]),
    Run("24 V", "a bank of 24 V", 65.0, 5.0, 22.3, 7.5, C("2.5 mm2", 8.0), C("2.5 mm2", 8.0),
        volts=24, inner=0.012),
    Run("gauge, lithium", "American gauge, 105 °C, lithium", 72.0, 11.0, 11.2, 15,
        C("12 AWG", 6.4, 40.0, 105.0), C("12 AWG", 6.4, 40.0, 105.0), bank="LiFePO4", inner=0.004),
    Run("automotive gauge", "SAE gauge, thinner return", 58.0, 8.0, 10.4, 10,
        C("12 SAE", 4.5, 30.0, 105.0), C("1.5 mm2", 4.0), bank="flooded", inner=0.008),
    Run("by its diameter", "cable of which only the outside diameter is known", 46.0, 6.5, 10.4, 10,
        C("6 mm outside", 6.0), C("6 mm outside", 6.0)),
    Run("two batteries, hot engine bay", "two in parallel, warm surroundings", 58.0, 8.5, 10.9, 10,
        C("4 mm2", 9.0, 50.0), C("4 mm2", 9.0, 50.0), count=2, inner=0.0055,
        main=("25 mm2", 1.6), main_back=("25 mm2", 1.2)),
    Run("inverter", "heavy current, self-heating, class T", 1600.0, None, 10.5, 250,
        C("70 mm2", 1.2, 35.0, 105.0), C("70 mm2", 1.2, 35.0, 105.0), kind="inverter",
        family="class T", bank="LiFePO4", count=2, inner=0.003, plug=0.0002,
        main=("70 mm2", 0.4, 35.0, 105.0), main_back=("70 mm2", 0.3, 35.0, 105.0),
        main_ohm=0.0003, joints=0.0004),
    Run("pump", "a motor that takes its current at any voltage", 84.0, 9.0, None, 10,
        C("1.5 mm2", 3.0), C("1.5 mm2", 3.0), kind="water pump", bank="gel", inner=0.007,
        others=[("upright fridge", 50.0, False)]),
]

if __name__ == "__main__":
    version = subprocess.run(["ngspice", "--version"], capture_output=True, text=True).stdout
    out = {"made_by": "runs.py", "python": platform.python_version(),
           "ngspice": re.search(r"ngspice-(\d+)", version)[1],
           "runs": [{"name": r.name, "why": r.why, "build": r.text(), **r.expected()} for r in RUNS]}
    with open("runs.json", "w", encoding="utf-8") as file:
        json.dump(out, file, indent=1, ensure_ascii=False)
        file.write("\n")
