"""Writes shapely.json and polytopes.json: distances and ways computed by other libraries.

    pip install shapely==2.2.0 numpy==2.4.6 scipy==1.17.1
    python generate.py

Nothing here is computed with the formulas of the crate: ways and angles are found by moving the
shape and asking GEOS whether the insides meet (bisection), areas by uniting very many positions,
distances in space as the shortest vector of a Minkowski difference (Qhull for its faces, Lawson and
Hanson's least distance programming by non-negative least squares for the vector).
"""

import json
import math
import platform
from pathlib import Path

import numpy as np
import scipy
import shapely
from scipy.optimize import nnls
from scipy.spatial import ConvexHull
from shapely import affinity
from shapely.geometry import Point, Polygon, box

HERE = Path(__file__).parent
RANDOM = np.random.default_rng(20_260_101)
VERSIONS = {
    "python": platform.python_version(),
    "shapely": shapely.__version__,
    "geos": shapely.geos_version_string,
    "numpy": np.__version__,
    "scipy": scipy.__version__,
}
DIRECTIONS = {"+0": (1, 0), "-0": (-1, 0), "+1": (0, 1), "-1": (0, -1)}


def polygon(corners, centre=(0.0, 0.0), size=0.5):
    """A star-shaped polygon with hollows, its points in metres."""
    angles = (np.arange(corners) + RANDOM.uniform(0.1, 0.9, corners)) * 2 * math.pi / corners
    radii = size * RANDOM.uniform(0.25, 1.0, corners)
    points = [
        [centre[0] + r * math.cos(a), centre[1] + r * math.sin(a)] for r, a in zip(radii, angles)
    ]
    assert Polygon(points).is_valid
    return points


def rectangle(reach, sides=(0.05, 0.4)):
    low = RANDOM.uniform(-reach, reach, 2)
    size = RANDOM.uniform(*sides, 2)
    return [*low, *(low + size)]


def insides_meet(a, b):
    return a.relate_pattern(b, "T********")


def least(holds, low, high):
    """The least number for which `holds`, which does not hold at `low` and does at `high`."""
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (low, middle) if holds(middle) else (middle, high)
    return (low + high) / 2


def free_way(shape, rect, step):
    """How far the rectangle may go: the room it sweeps only grows."""
    far = 10.0

    def met(way):
        x0, y0, x1, y1 = rect
        dx, dy = step[0] * way, step[1] * way
        return insides_meet(shape, box(x0 + min(dx, 0), y0 + min(dy, 0), x1 + max(dx, 0), y1 + max(dy, 0)))

    return least(met, 0.0, far) if met(far) else None


def way_clear(shape, rect, step):
    """How far the rectangle has to go to come clear, looked for at each half millimetre first."""

    def clear(way):
        return not insides_meet(shape, affinity.translate(box(*rect), step[0] * way, step[1] * way))

    way = next(k * 0.0005 for k in range(1, 20_000) if clear(k * 0.0005))
    return least(clear, way - 0.0005, way)


def flat_cases():
    cases = []
    while len(cases) < 48:
        points = polygon(int(RANDOM.integers(3, 12)))
        rect = rectangle(0.9)
        shape, body = Polygon(points), box(*rect)
        meets = insides_meet(shape, body)
        if meets and sum(case["overlaps"] for case in cases) >= 16:
            continue
        way = way_clear if meets else free_way
        cases.append({
            "points": points,
            "rect": rect,
            "area": shape.area,
            "overlaps": meets,
            "distance": shape.distance(body),
            "ways": {name: way(shape, rect, step) for name, step in DIRECTIONS.items()},
        })
    return cases


def rotated(leaf, degrees):
    return affinity.rotate(box(*leaf), degrees, origin=(0, 0))


def swing_cases():
    """A leaf hinged at the origin opens counter-clockwise; an obstacle stands in its way or not.

    In the last cases the hinge's pin stands within the leaf.
    """
    cases = []
    while len(cases) < 22:
        within = len(cases) >= 16
        width, thickness = RANDOM.uniform(0.3, 0.7), RANDOM.uniform(0.01, 0.06)
        offset = RANDOM.uniform(0.0, 0.03, 2) * RANDOM.integers(0, 2, 2)
        if within:
            offset = -np.array([0.1 * width, thickness]) * RANDOM.uniform(0.2, 0.8, 2)
        leaf = [offset[0], offset[1], offset[0] + width, offset[1] + thickness]
        angle = RANDOM.uniform(60, 175)
        bearing = math.radians(RANDOM.uniform(20, 200))
        away = RANDOM.uniform(0.3, 0.9)
        centre = (away * math.cos(bearing), away * math.sin(bearing))
        points = polygon(int(RANDOM.integers(3, 9)), centre, 0.25)
        obstacle = Polygon(points)
        if insides_meet(obstacle, box(*leaf)):
            continue

        def met(degrees):
            return insides_meet(obstacle, rotated(leaf, degrees))

        first = next((k * 0.02 for k in range(int(angle / 0.02) + 1) if met(k * 0.02)), None)
        if first is None and sum(case["free"] is None for case in cases) >= 4:
            continue
        free = None if first is None else least(met, first - 0.02, first)
        step = 0.05
        positions = [rotated(leaf, k * angle / round(angle / step)) for k in range(round(angle / step) + 1)]
        # From one position to the next the leaf stays in the hull of the two but for the arcs'
        # sagittas, which are less than a ten-millionth of the reach.
        hulls = [shapely.union(a, b).convex_hull for a, b in zip(positions, positions[1:])]
        cases.append({
            "leaf": leaf,
            "angle": angle,
            "points": points,
            "free": free,
            "area": None if within else shapely.unary_union(hulls).area,
        })
    return cases


def cut_cases():
    cases = []
    for _ in range(40):
        size = RANDOM.uniform(0.1, 0.6, 2)
        radius = RANDOM.uniform(0.003, 0.05)
        low = RANDOM.uniform(0.02, 0.2, 2)
        high = low + size
        panel = high + RANDOM.uniform(0.02, 0.2, 2)
        corner = np.array([RANDOM.choice([low[0], high[0]]), RANDOM.choice([low[1], high[1]])])
        near_corner = RANDOM.random() < 0.6
        at = corner + RANDOM.uniform(-0.06, 0.06, 2) if near_corner else RANDOM.uniform(0, 1, 2) * panel
        core = box(*(low + radius), *(high - radius))
        cut = core.buffer(radius, quad_segs=20_000)
        point = Point(*at)
        to_cut = point.distance(cut.exterior) * (-1 if cut.contains(point) else 1)
        sheet = box(0, 0, *panel)
        to_edge = point.distance(sheet.exterior) * (1 if sheet.contains(point) else -1)
        cases.append({
            "panel": list(panel),
            "cut": [*low, *size],
            "radius": radius,
            "hole": list(at),
            "to_cut": to_cut,
            "to_panel_edge": to_edge,
        })
    return cases


def shortest_vector(points):
    """The shortest vector of the convex hull of some points; 0 if the origin lies in it."""
    hull = ConvexHull(points)
    normals, offsets = hull.equations[:, :3], hull.equations[:, 3]
    if np.all(offsets <= 1e-12):
        return 0.0
    # Least distance programming: the least |x| with G x >= h, by the dual.
    g, h = -normals, offsets
    e = np.vstack([g.T, h])
    f = np.array([0.0, 0.0, 0.0, 1.0])
    u, _ = nnls(e, f, maxiter=100 * e.shape[1])
    r = e @ u - f
    return float(np.linalg.norm(-r[:3] / r[3]))


def pieces(points, axis, ends):
    """The corners of the triangular columns that a prism is made of."""
    columns = []
    for triangle in shapely.constrained_delaunay_triangles(Polygon(points)).geoms:
        corners = []
        for first, second in list(triangle.exterior.coords)[:3]:
            for end in ends:
                corner = [first, second]
                corner.insert(axis, end)
                corners.append(corner)
        columns.append(np.array(corners))
    return columns


def distance(some, others):
    return min(
        shortest_vector((p[:, None, :] - q[None, :, :]).reshape(-1, 3)) for p in some for q in others
    )


def random_prism(reach):
    axis = int(RANDOM.integers(0, 3))
    points = polygon(int(RANDOM.integers(3, 8)), RANDOM.uniform(-reach, reach, 2), 0.4)
    low = RANDOM.uniform(-reach, reach)
    return {"axis": axis, "points": points, "ends": [low, low + RANDOM.uniform(0.1, 0.5)]}


def solid_cases():
    with_box, with_prism = [], []
    while len(with_box) < 20:
        prism = random_prism(0.6)
        low = RANDOM.uniform(-0.8, 0.6, 3)
        high = low + RANDOM.uniform(0.1, 0.4, 3)
        corners = np.array([[x, y, z] for x in (low[0], high[0]) for y in (low[1], high[1]) for z in (low[2], high[2])])
        apart = distance(pieces(**prism), [corners])
        with_box.append({"prism": prism, "low": list(low), "high": list(high), "distance": apart})
    while len(with_prism) < 24:
        first, second = random_prism(0.4), random_prism(0.4)
        apart = distance(pieces(**first), pieces(**second))
        with_prism.append({"first": first, "second": second, "distance": apart})
    return {"with_box": with_box, "with_prism": with_prism}


def write(name, what, content):
    text = json.dumps({"what": what, "versions": VERSIONS, **content}, indent=1)
    (HERE / name).write_text(text + "\n")


write(
    "shapely.json",
    "Plane distances, ways and areas by Shapely/GEOS; metres and degrees.",
    {"flat": flat_cases(), "swing": swing_cases(), "cut": cut_cases()},
)
write(
    "polytopes.json",
    "Distances in space by Qhull and non-negative least squares; metres.",
    solid_cases(),
)
