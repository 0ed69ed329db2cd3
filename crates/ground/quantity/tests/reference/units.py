"""Writes units.json: sizes of units and readings in SI units, by pint.

Run: pip install pint==0.25.3 && python units.py > units.json
The numbers are computed as exact fractions and rounded once to a double; those of `readings`
are strings, since not every reader of JSON rounds numbers correctly.
"""

import json
import platform
import random
from fractions import Fraction

import pint

# kind: (SI unit, {our symbol: pint's expression})
KINDS = {
    "length": ("m", {"mm": "mm", "cm": "cm", "m": "m", "km": "km", "in": "inch", "ft": "foot"}),
    "area": ("m**2", {
        "mm²": "mm**2", "cm²": "cm**2", "m²": "m**2", "in²": "inch**2", "ft²": "foot**2",
        "cmil": "circular_mil", "kcmil": "1000*circular_mil",
    }),
    "volume": ("m**3", {
        "l": "liter", "ml": "milliliter", "m³": "m**3", "cm³": "cm**3", "ft³": "foot**3",
        "in³": "inch**3", "US gal": "gallon", "imp gal": "imperial_gallon",
    }),
    "mass": ("kg", {"kg": "kg", "g": "g", "t": "metric_ton", "lb": "pound", "oz": "ounce"}),
    "force": ("N", {"N": "N", "kN": "kN", "daN": "daN", "lbf": "lbf", "kgf": "kgf"}),
    "time": ("s", {"s": "s", "ms": "ms", "min": "min", "h": "hour", "d": "day", "wk": "week"}),
    "temperature difference": ("delta_degC", {
        "K": "kelvin", "°C": "delta_degC", "°F": "delta_degF",
    }),
    "voltage": ("V", {"V": "V", "mV": "mV", "kV": "kV"}),
    "current": ("A", {"A": "A", "mA": "mA", "µA": "uA", "kA": "kA"}),
    "resistance": ("ohm", {
        "mΩ": "milliohm", "Ω": "ohm", "µΩ": "microohm", "kΩ": "kiloohm", "MΩ": "megaohm",
    }),
    "power": ("W", {"W": "W", "mW": "mW", "kW": "kW", "MW": "MW", "BTU/h": "Btu_it/hour"}),
    "energy": ("J", {
        "Wh": "W*hour", "kWh": "kW*hour", "J": "J", "kJ": "kJ", "MJ": "MJ", "BTU": "Btu_it",
    }),
    "charge": ("A*s", {"Ah": "A*hour", "mAh": "mA*hour", "A·s": "coulomb"}),
    "flow": ("m**3/s", {
        "m³/h": "m**3/hour", "m³/s": "m**3/s", "l/s": "liter/s", "l/min": "liter/min",
        "l/h": "liter/hour", "cfm": "foot**3/min",
    }),
    "pressure": ("Pa", {
        "kPa": "kPa", "Pa": "Pa", "hPa": "hPa", "MPa": "MPa", "GPa": "GPa",
        "N/mm²": "N/mm**2", "mbar": "millibar", "bar": "bar", "psi": "lbf/inch**2",
    }),
    "angle": ("rad", {"°": "degree", "rad": "rad"}),
    "thermal conductance": ("W/K", {"W/K": "W/K", "mW/K": "mW/K"}),
    "thermal conductivity": ("W/m/K", {"W/(m·K)": "W/m/K", "mW/(m·K)": "mW/m/K"}),
}
TEMPERATURES = {"°C": "degC", "°F": "degF", "K": "kelvin"}


IRRATIONAL = ("cmil", "kcmil", "°")


def rows(name, rows):
    return f'"{name}": [\n' + ",\n".join(json.dumps(row, ensure_ascii=False) for row in rows) + "]"


def main():
    ureg = pint.UnitRegistry(non_int_type=Fraction, autoconvert_offset_to_baseunit=True)
    pick = random.Random(1)
    units, readings = [], []
    for kind, (si, of_kind) in KINDS.items():
        for symbol, name in of_kind.items():
            one = (ureg.Quantity(Fraction(1), "") * ureg.parse_expression(name)).to(si).magnitude
            units.append({"kind": kind, "unit": symbol, "si": float(one)})
            for _ in range(0 if symbol in IRRATIONAL else 5):
                digits = pick.randint(1, 16)
                text = f"{pick.randint(1, 10**digits)}e{pick.randint(-12, 3)}"
                row = {"kind": kind, "text": f"{text} {symbol}", "si": repr(float(Fraction(text) * one))}
                readings.append(row)
    inch = ureg.Quantity(Fraction(1), "inch").to("m").magnitude
    for _ in range(100):
        whole, part = pick.randint(1, 100), pick.randint(1, 63)
        row = {"kind": "length", "text": f"{whole} {part}/64 in"}
        readings.append(row | {"si": repr(float((whole + Fraction(part, 64)) * inch))})
    for symbol, name in TEMPERATURES.items():
        for number in ("300", "0", "-40", "98.6", "451", "68", "0.1"):
            kelvin = ureg.Quantity(Fraction(number), name).to("kelvin").magnitude
            if kelvin >= 0:
                celsius = float(kelvin - Fraction("273.15"))
                readings.append(
                    {"kind": "temperature", "text": f"{number} {symbol}", "si": repr(celsius)})
    versions = f'"pint": "{pint.__version__}", "python": "{platform.python_version()}"'
    print(f'{{"generator": "units.py", {versions},')
    print(rows("units", units) + ",")
    print(rows("readings", readings) + "}")


main()
