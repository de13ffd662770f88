"""Writes pchip.json: curves through points as SciPy's PchipInterpolator draws them."""
import json
import random

import numpy
import scipy
from scipy.interpolate import PchipInterpolator

random.seed(1984)


def curve(name, x, y, samples=41):
    spline = PchipInterpolator(x, y)
    at = sorted({float(v) for v in numpy.linspace(x[0], x[-1], samples)} | {float(v) for v in x})
    at = [v for v in at if x[0] <= v <= x[-1]]
    return {
        "name": name, "x": x, "y": y, "at": at,
        "value": [float(v) for v in spline(at)],
        "slope": [float(v) for v in spline.derivative()(at)],
    }


def walk(points, least, most):
    """Points whose steps scatter widely, up only or up and down."""
    x, y = [0.0], [0.0]
    for _ in range(points - 1):
        x.append(x[-1] + 10 ** random.uniform(-2, 1))
        y.append(y[-1] + random.uniform(least, most))
    return x, y


curves = [
    curve("two points", [0.0, 2.0], [1.0, 5.0]),
    curve("three points", [0.0, 1.0, 4.0], [0.0, 3.0, 4.0]),
    curve("end slope held to three secants", [0.0, 1.0, 1.1], [0.0, 1.0, -3.0]),
    curve("end slope held to zero", [0.0, 1.0, 2.0], [0.0, 1.0, 9.0]),
    curve("flat piece and turns", [-1.0, 0.0, 1.5, 2.0, 3.0, 5.0], [2.0, 2.0, 2.0, 5.0, 1.0, 1.0]),
    curve("Fritsch and Carlson 1980, RPN 15A", [7.99, 8.09, 8.19, 8.7, 9.2, 10.0, 12.0, 15.0, 20.0],
          [0.0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.943740, 0.998636, 0.999919, 0.999994]),
    curve("ring angle over 1/mm, infinity to 0.6 m", [0.0, 1 / 5000, 1 / 2500, 1 / 1500, 1 / 1000, 1 / 800, 1 / 600],
          [0.0, 31.0, 67.0, 112.0, 171.0, 214.0, 290.0]),
    curve("ring angle falling, five marks", [0.0, 1 / 4000, 1 / 2000, 1 / 1200, 1 / 700], [180.0, 141.0, 105.5, 62.0, 8.0]),
]
curves += [curve(f"rising at random {k}", *walk(random.randint(3, 12), 0.01, 5.0)) for k in range(12)]
curves += [curve(f"turning at random {k}", *walk(random.randint(3, 12), -4.0, 4.0)) for k in range(12)]

with open("pchip.json", "w", encoding="utf-8") as out:
    lines = ",\n".join("  " + json.dumps(one) for one in curves)
    out.write(f'{{\n "scipy": "{scipy.__version__}",\n "curves": [\n{lines}\n ]\n}}\n')
