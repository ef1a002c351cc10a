"""The same verdict as bench/proving.bench.ts in numpy: prints seconds and figures as JSON."""

import json
import sys
import time

import numpy as np

G = 9.80665
NAMES = ["speed", "suction", "discharge", "flow"]


def curve(points, flow):
    # A parabola stands for the points, which were made from one.
    a, b = points
    return a + b * flow * flow


def one(case, reading, draws, rng):
    x = {name: rng.normal(reading[name], case["u"][name], draws) for name in NAMES}
    area = [np.pi / 4 * (bore / 1000) ** 2 for bore in case["bores"]]
    v1, v2 = [x["flow"] / 3600 / one_area for one_area in area]
    pressure = 1000 * (x["discharge"] - x["suction"]) / (case["density"] * G)
    head = pressure + case["rise"] + (v2**2 - v1**2) / (2 * G)
    ratio = case["curveSpeed"] / x["speed"]
    there, flow = head * ratio**2, x["flow"] * ratio
    wanted = curve(case["parabola"], flow)
    npsh = 1000 * (x["suction"] + 101.325 - case["vapour"]) / (case["density"] * G) + v1**2 / (2 * G)
    outputs = [head, there, flow, (there - wanted) / wanted, npsh]
    return [
        [float(o.std(ddof=1)), *map(float, np.quantile(o, [0.025, 0.975]))] for o in outputs
    ]


def main():
    asked = json.load(sys.stdin)
    seconds, figures = [], None
    for _ in range(asked["times"]):
        rng = np.random.default_rng(asked["seed"])
        start = time.perf_counter()
        figures = [one(asked["case"], r, asked["draws"], rng) for r in asked["readings"]]
        seconds.append(time.perf_counter() - start)
    print(json.dumps({"version": np.__version__, "seconds": min(seconds), "figures": figures}))


main()
