"""The same sums as bench/tightening.bench.ts in numpy: prints seconds and figures as JSON."""

import json
import sys
import time

import numpy as np


def per_force(pitch, d2, bearing, thread, head):
    return 0.16 * pitch + 0.58 * d2 * thread + bearing / 2 * head


def torsion(pitch, d2, area, thread):
    d0 = np.sqrt(4 * area / np.pi)
    return np.sqrt(1 + 3 * (1.5 * d2 / d0 * (pitch / (np.pi * d2) + 1.155 * thread)) ** 2)


def scatter(one, draws, seed):
    rng = np.random.default_rng(seed)
    torque = one["torqueNm"] * (1 + one["toolScatter"] * rng.uniform(-1, 1, draws))
    thread = rng.uniform(one["frictionLow"], one["frictionHigh"], draws)
    head = rng.uniform(one["frictionLow"], one["frictionHigh"], draws)
    parts = one["parts"]
    pitch, d2, bearing = (
        parts["pitchMm"],
        parts["pitchDiameterMm"],
        parts["bearingDiameterMm"],
    )
    force = torque / per_force(pitch, d2, bearing, thread, head)
    area = one["stressAreaMm2"]
    share = force * torsion(pitch, d2, area, thread) / (area * one["yieldMPa"] / 1000)
    taken = (1 - one["loadShare"]) * one["loadKN"] + one["embeddingLossKN"]
    return {
        "mean": float(force.mean()),
        "sd": float(force.std(ddof=1)),
        "top": float(np.quantile(share, 0.975)),
        "bottom": float(np.quantile(force, 0.025) - taken),
        "overYield": float((share > 1).mean()),
    }


def plain(cases):
    c = {name: np.array(values) for name, values in cases.items()}
    force = c["share"] * c["yield"] * c["area"] / torsion(c["pitch"], c["d2"], c["area"], c["mu"])
    torque = force / 1000 * per_force(c["pitch"], c["d2"], c["bearing"], c["mu"], c["mu"])
    return float(torque.sum())


def best(run, times):
    seconds = []
    for _ in range(times):
        start = time.perf_counter()
        value = run()
        seconds.append(time.perf_counter() - start)
    return min(seconds), value


def main():
    asked = json.load(sys.stdin)
    times = asked["times"]
    drawn, figures = best(lambda: scatter(asked["case"], asked["draws"], asked["seed"]), times)
    # Turned into arrays before the clock starts, as the numbers of the other side are.
    cases = {name: np.array(values) for name, values in asked["cases"].items()}
    evaluated, total = best(lambda: plain(cases), times)
    print(
        json.dumps(
            {
                "version": np.__version__,
                "scatterSeconds": drawn,
                "figures": figures,
                "plainSeconds": evaluated,
                "torqueSum": total,
            }
        )
    )


main()
