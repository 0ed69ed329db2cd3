"""Bays, bodies and what stands in their way, with the room left on each side.

Writes fits.json beside itself, with the versions that it was made with.
Usage: python fits.py

A bay opens left: x runs forward from its rear side, y from the wall behind (right) to the opening
(left), z up. All figures in millimetres. The body stands with its face at the opening. An arch is a
polygon of (x, z) carried from the wall behind along y. Every distance is found by clipping the
polygon to the strip that the body sweeps (Shapely), the boxes by comparing intervals; a body that
shares room with anything is told by the areas shared.
"""

import json
import pathlib
import platform

import numpy as np
import shapely
from shapely.geometry import LineString, Polygon, box

rng = np.random.default_rng(20260114)
FAR = 10_000.0


def spans(a, b):
    return min(a[1], b[1]) - max(a[0], b[0]) > 1e-9


def arch_profile(width, height):
    """A hump from the floor on the rear side of the bay, of seven corners."""
    xs = np.sort(rng.integers(10, int(width * 0.9), 5)).astype(float)
    xs = np.unique(np.concatenate([[0.0], xs]))
    zs = rng.integers(40, int(height * 0.35), len(xs)).astype(float)
    return [[0.0, 0.0], *[[float(x), float(z)] for x, z in zip(xs, zs)], [float(xs[-1]), 0.0]]


def wall(rows):
    return LineString([(row[1], row[0]) for row in rows])


def least_depth(rows, low, high):
    strip = box(0.0, low, FAR, high)
    return wall(rows).intersection(strip).bounds[0]


def ways(body, arch, carried, boxes, bay, depth_at_wall):
    """The room left in each direction, or None where the body shares room with something."""
    (x0, x1), (y0, y1), (z0, z1) = body
    width, height, depth = bay
    left = {"front": width - x1, "rear": x0, "up": height - z1, "down": z0}
    left["behind"] = depth_at_wall - (depth - y0)
    profile = Polygon(arch)
    seen = box(x0, z0, x1, z1)
    in_y = spans((y0, y1), (0.0, carried))
    if in_y and profile.intersection(seen).area > 1e-6:
        return None
    if in_y:
        for name, strip, edge, sign, axis in [
            ("front", box(x1, z0, FAR, z1), x1, 1, 0),
            ("rear", box(-FAR, z0, x0, z1), x0, -1, 0),
            ("up", box(x0, z1, x1, FAR), z1, 1, 1),
            ("down", box(x0, -FAR, x1, z0), z0, -1, 1),
        ]:
            met = profile.intersection(strip)
            if met.area > 1e-6:
                bounds = met.bounds
                near = bounds[axis] if sign > 0 else bounds[axis + 2]
                left[name] = min(left[name], (near - edge) * sign)
    if profile.intersection(seen).area > 1e-6 and y0 >= carried:
        left["behind"] = min(left["behind"], y0 - carried)
    for other in boxes:
        shared = [spans(a, b) for a, b in zip(body, other)]
        if all(shared):
            return None
        for axis, low, high in [(0, "rear", "front"), (1, "behind", None), (2, "down", "up")]:
            if all(shared[i] for i in range(3) if i != axis):
                if other[axis][0] >= body[axis][1]:
                    if high:
                        left[high] = min(left[high], other[axis][0] - body[axis][1])
                else:
                    left[low] = min(left[low], body[axis][0] - other[axis][1])
    return left


def case():
    width, height, depth = (float(v) for v in rng.integers([450, 700, 420], [900, 1400, 700]))
    top = float(depth - rng.integers(0, 60))
    rows = [[0.0, depth], [float(rng.integers(200, 500)), float(rng.integers(int(top), int(depth) + 1))], [height, top]]
    arch, carried = arch_profile(width, height), float(rng.integers(80, int(depth * 0.7)))
    w, h, d = (float(rng.integers(int(0.3 * v), int(0.75 * v))) for v in (width, height, depth - 60))
    x0 = float(rng.integers(5, int(width - w - 4)))
    z0 = float(rng.integers(5, int(height - h - 4)))
    body = [(x0, x0 + w), (depth - d, depth), (z0, z0 + h)]
    boxes = []
    for _ in range(2):
        size = rng.integers([20, 20, 20], [120, 120, 200])
        low = [float(rng.integers(0, int(v - s))) for v, s in zip((width, depth - 60, height), size)]
        boxes.append([(a, a + float(s)) for a, s in zip(low, size)])
    at_wall = least_depth(rows, z0, z0 + h)
    return {
        "bay": [width, height, depth],
        "rows": rows,
        "arch": arch,
        "carried": carried,
        "boxes": boxes,
        "body": body,
        "left": ways(body, arch, carried, boxes, (width, height, depth), at_wall),
    }


def reach(width, thickness, degrees):
    """How far a leaf reaches ahead of its pin, by trying a hundred thousand angles."""
    angles = np.radians(np.linspace(0.0, degrees, 100_001))
    return float(np.max(width * np.sin(angles) + thickness * np.cos(angles)))


clear, shared = [], []
while len(clear) < 60 or len(shared) < 25:
    made = case()
    into = shared if made["left"] is None else clear
    if len(into) < (25 if made["left"] is None else 60):
        into.append(made)
doors = []
for _ in range(12):
    w, t, a = float(rng.integers(250, 700)), float(rng.integers(10, 80)), float(rng.integers(30, 130))
    doors.append({"width": w, "thickness": t, "angle": a, "reach": reach(w, t, a)})
out = pathlib.Path(__file__).with_name("fits.json")
versions = {
    "python": platform.python_version(),
    "shapely": shapely.__version__,
    "geos": shapely.geos_version_string,
    "numpy": np.__version__,
}
made = {"versions": versions, "clear": clear, "shared": shared, "doors": doors}
out.write_text(json.dumps(made) + "\n")
