#!/usr/bin/env python3
"""Writes readings.json: networks, healthy and with one fault in them, each as a build's text with
what ngspice finds at the places where a meter is put.

Run it in this folder; it needs ngspice (versions are kept in the file). Resistances are worked out
here from the published figures: copper of 0.017241 ohm mm2/m and 0.00393 1/K (IEC 60028), a blade
fuse by its data sheet, 4.80 mOhm cold and 0.102 V at 15 A, between by the square of its load. Cables lie at 20 C and carry far less
than they may, so that they stay there within the tolerance of the test.
"""
import json
import platform
import re
import subprocess

RHO = 0.017241
HOLDER = 2e-3  # sprung contacts of a blade's holder, which a build cannot state


def spice(lines):
    text = "* network\n" + "\n".join(lines) + "\n.op\n.end\n"
    control = "\n".join([".control", "op", "print all", ".endc", ".end"])
    text = text.replace(".op\n.end\n", control + "\n")
    run = subprocess.run(["ngspice", "-b"], input=text, capture_output=True, text=True, check=False)
    found = {}
    for name, value in re.findall(r"^(\S+) = (\S+)$", run.stdout, re.M):
        found[name] = float(value)
    return text, found


def case(name, cause, fault, run, posts=12.80, bad=0.0, by_body=False, load_a=5.0, thin=1.0):
    """One network. The load takes its current at any voltage: a plain motor."""
    feed_mm2, length = run
    cable = RHO / feed_mm2 * length * thin
    main = 1.5e-3 + RHO / 16 * 1.0
    tail = RHO / 16 * 0.8 + 1.5e-3
    ohm = {"main": main, "fuse": 4.80e-3 + (0.102 / 15 - 4.80e-3) * (load_a / 15) ** 2 + HOLDER, "feed": cable + 5e-3, "back": cable,
           "body": 2e-3 + 3e-3 + RHO / 6 * 0.6, "tail": tail}
    if by_body:
        ohm["back"] += 5e-3
    lines = [f"vbank post minus dc {posts}", "vminus minus 0 dc 0"]
    add = lambda part: ohm[part] + (bad if fault == part else 0.0)
    open_ = lambda part: fault == "open " + part
    part = lambda p: 1e12 if open_(p) else add(p)
    lines += [f"rmain post block {part('main'):.9g}", f"rfuse block way {part('fuse'):.9g}",
              f"rfeed way plus {part('feed'):.9g}"]
    to = "steel" if by_body else "bus"
    lines += [f"rback less {to} {part('back'):.9g}", f"rtail bus minus {part('tail'):.9g}"]
    if by_body:
        lines += [f"rbody steel bus {part('body'):.9g}"]
    off = fault in ("standby",) or (fault or "").startswith("open")
    lines += ["rmeter plus less 1e7"] if off else [f"iload plus less dc {load_a}"]
    text, v = spice([".options gmin=1e-18 reltol=1e-9"] + lines)
    at = lambda node: v.get(node, v.get(f"v({node})"))
    current = 0.0 if off else load_a
    read = {
        "battery": at("post") - at("minus"), "block": at("block") - at("bus"),
        "appliance": at("plus") - at("less"), "current": current,
        "main_drop": at("post") - at("block"), "fuse_drop": at("block") - at("way"),
        "feed_drop": at("block") - at("plus"), "return_drop": at("less") - at("bus"),
        "negative_drop": at("bus") - at("minus"),
    }
    back = (f'return = {{ by = "body", section = "{feed_mm2} mm2", length = "{length} m", '
            f'stud = "5 mΩ", insulation = "105 °C", ambient = "20 °C" }}') if by_body else (
            f'return = {{ section = "{feed_mm2} mm2", length = "{length} m", '
            f'insulation = "105 °C", ambient = "20 °C" }}')
    build = f'''system = "12 V"
[bank]
kind = "AGM"
capacity = "100 Ah"
fuse = {{ rating = "100 A", family = "strip", resistance = "1.5 mΩ", from_post = "100 mm" }}
[block]
feed = {{ section = "16 mm2", length = "1.0 m", insulation = "105 °C", ambient = "20 °C" }}
return = {{ section = "16 mm2", length = "0.8 m", insulation = "105 °C", ambient = "20 °C" }}
joints = "1.5 mΩ"
[block.ways.1]
fuse = "15 A"
family = "blade"
run = "pump"
[body]
resistance = "2 mΩ"
stud = "3 mΩ"
cable = {{ section = "6 mm2", length = "0.6 m", insulation = "105 °C", ambient = "20 °C" }}
[parts.pump]
kind = "pump"
power = {{ running = "{12 * load_a} W" }}
[items.pump]
[runs.pump]
section = "{feed_mm2} mm2"
length = "{length} m"
insulation = "105 °C"
ambient = "20 °C"
joints = "5 mΩ"
{back}
'''
    return {"name": name, "cause": cause, "bad_mohm": 1000 * bad, "build": build,
            "netlist": text, "read": {k: round(x, 6) for k, x in read.items()}}


def main():
    run = (4, 4)
    cases = [
        case("healthy, return by cable", "", None, run),
        case("healthy, return through the body", "", None, run, by_body=True),
        case("healthy, long and thin", "", None, (2.5, 6), load_a=3.0),
        case("healthy, full and charging", "", None, run, posts=14.2, load_a=8.0),
        case("bad joint in the feed", "bad joint in the feed with its plug", "feed", run, bad=0.160),
        case("bad contact of the fuse", "bad joint in the fuse's way", "fuse", run, bad=0.080),
        case("bad joint in the return", "bad joint in the return", "back", run, bad=0.300),
        case("painted stud of the body's bond", "bad joint in the body's bond", "body", run,
             bad=0.100, by_body=True),
        case("bad isolator", "bad joint in the way from the post to the block", "main", run, bad=0.120),
        case("bad shunt", "bad joint in the common return to the post", "tail", run, bad=0.120),
        case("fuse blown", "open way in the fuse's way", "open fuse", run),
        case("return come apart", "open way in the return", "open back", run),
        case("thinner cable than was said", "cables with", None, run, thin=4 / 1.0, load_a=5.0),
        case("nothing asked for", "the pump asks for nothing", "standby", run),
    ]
    version = subprocess.run(["ngspice", "--version"], capture_output=True, text=True, check=False)
    version = re.search(r"ngspice-(\d+)", version.stdout).group(1)
    out = {"made_by": "readings.py", "python": platform.python_version(), "ngspice": version,
           "cases": cases}
    with open("readings.json", "w", encoding="utf-8") as file:
        json.dump(out, file, indent=1, ensure_ascii=False)
        file.write("\n")


main()
