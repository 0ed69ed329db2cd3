"""Makes groups.json and plates.json: bolt groups as rigid bodies on equal springs, solved as
linear systems; plates by Levy's single series, which the code does not use."""
import json
import numpy, scipy
from numpy import pi, sinh, cosh, tanh

rng = numpy.random.default_rng(7)


def group(places, face, push, through, lever):
    """Displacements u, v and turn w of the body from equilibrium; forces of unit springs."""
    p = numpy.array(places)
    rows = numpy.zeros((3, 3))
    for x, y in p:
        # the spring at (x, y) moves by (u - w y, v + w x) and pushes back by as much
        b = numpy.array([[1, 0, -y], [0, 1, x]])
        rows += b.T @ b
    fx, fy, away = push
    load = numpy.array([fx, fy, fy * through[0] - fx * through[1]])
    u, v, w = scipy.linalg.lstsq(rows, load)[0]
    shear = [float(numpy.hypot(u - w * y, v + w * x)) for x, y in p]
    # tension: one unknown angle for each axis about the pressed edge, least squares of the energy
    tension = numpy.full(len(p), max(away, 0.0) / len(p))
    for axis, force in ((0, fx), (1, fy)):
        if force == 0:
            continue
        arm = face[axis] - p[:, axis] if force > 0 else p[:, axis]
        angle = scipy.linalg.lstsq(arm[None, :] @ arm[:, None], [abs(force) * lever])[0]
        tension += angle[0] * arm
    return {"places": places, "face": face, "push": push, "through": through, "lever": lever,
            "shear": shear, "tension": [float(t) for t in tension]}


cases = []
for count in (1, 2, 3, 4, 5, 6, 9, 12):
    for _ in range(3):
        face = [float(s) for s in rng.uniform(0.2, 1.2, 2)]
        places = [[float(rng.uniform(0, face[0])), float(rng.uniform(0, face[1]))] for _ in range(count)]
        push = [float(f) for f in rng.uniform(-900, 900, 3)]
        through = [face[0] / 2, face[1] / 2]
        if count == 1:
            through = places[0]
        cases.append(group(places, face, push, through, float(rng.uniform(0.05, 0.6))))
versions = f"numpy {numpy.__version__}, scipy {scipy.__version__}"
with open("groups.json", "w") as out:
    json.dump({"made_by": "generate.py", "versions": versions, "cases": cases}, out, indent=1)


def levy(r, nu=0.3, terms=60):
    """Timoshenko and Woinowsky-Krieger, section 30: alpha, beta, beta1 at the centre."""
    w = mx = my = 0.0
    for m in range(1, 2 * terms, 2):
        am = m * pi * r / 2
        s = (-1) ** ((m - 1) // 2)
        c = 1 / cosh(am) if am < 300 else 0.0
        w += 4 / pi**5 * s / m**5 * (1 - (am * tanh(am) + 2) / 2 * c)
        # at y = 0: d2w/dx2 and d2w/dy2 of Levy's solution, times the rigidity
        wxx = 4 / pi**3 * s / m**3 * (1 - (am * tanh(am) + 2) / 2 * c)
        wyy = 4 / pi**3 * s / m**3 * (-(am * tanh(am) + 2) / 2 * c + c)
        mx += wxx - nu * wyy
        my += nu * wxx - wyy
    return [float(v) for v in (w, mx, my)]


plates = [[r, *levy(r)] for r in (1.0, 1.07, 1.25, 1.5, 1.9, 2.4, 3.0, 4.0, 5.0)]
with open("plates.json", "w") as out:
    json.dump({"made_by": "generate.py", "versions": versions, "plates": plates}, out, indent=1)
