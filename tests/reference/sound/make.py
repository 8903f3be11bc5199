"""Reference values for minimum phase and for the earpiece as a filter.

Made with numpy and scipy, which share no code with the engine. Run in this folder:
    python3 make.py > values.json

minimumPhase  impulse responses whose magnitude is known in closed form: the minimum-phase partner of a short filter with zeros outside the circle is
              the filter with those zeros reflected (numpy.roots, numpy.poly); and that of a linear-phase low-pass by scipy.signal.minimum_phase, homomorphic,
              half=False, for the same magnitude
earpiece      phase [rad] of the response to a curve of straight lines in dB over log f, from its magnitude by the integral that joins the two (Hilbert
              transform on the circle by adaptive quadrature, scipy.integrate.quad), with the fall of 12 dB per octave outside the points as far as 24 kHz
"""

import json
import math
import sys

import numpy as np
from scipy import integrate, signal

RATE = 48000
out = {"minimumPhase": [], "lowPass": {}, "earpiece": []}

random = np.random.RandomState(20261)
for zeros in ([1.5], [0.3, -2.0], [1.2 * np.exp(1j), 1.2 * np.exp(-1j), 0.5], [-1.4, 0.9 * np.exp(2j), 0.9 * np.exp(-2j), 3.0]):
    given = np.real(np.poly(zeros))
    inside = [1 / np.conj(z) if abs(z) > 1 else z for z in zeros]
    gain = np.prod([abs(z) for z in zeros if abs(z) > 1])
    out["minimumPhase"].append({"given": given.tolist(), "minimum": (gain * np.real(np.poly(inside))).tolist()})

low_pass = signal.firwin(65, 6000, fs=RATE, window=("kaiser", 6))
low_pass[32] += 0.02  # no zero on the circle
out["lowPass"] = {
    "given": low_pass.tolist(),
    "minimum": signal.minimum_phase(low_pass, method="homomorphic", n_fft=1 << 16, half=False).tolist(),
}

CURVES = [
    {"points": [[200, 94], [500, 96], [1000, 98], [2000, 104], [3000, 106], [4000, 98], [6000, 82]]},
    {"points": [[50, 100], [12000, 100]]},
    {"points": [[100, 60], [800, 96], [6400, 60]]},
]


def level(points, f):
    x = np.log([p[0] for p in points])
    y = [p[1] for p in points]
    low, high = math.log(min(points[0][0], 300)), math.log(max(points[-1][0], 3400))
    at = math.log(f)
    return float(np.interp(at, x, y)) - 12 / math.log(2) * (max(0, low - at) + max(0, at - high))


for curve in CURVES:
    points = curve["points"]

    def log_magnitude(w):
        return level(points, w * RATE / (2 * math.pi)) * math.log(10) / 20

    rows = []
    for f in [60, 150, 440, 1000, 2500, 3300, 7000, 14000]:
        w = 2 * math.pi * f / RATE
        here = log_magnitude(w)
        # phase = -(1/2 pi) P integral over -pi..pi of ln|H(v)| cot((w - v)/2) dv, folded onto 0..pi; what is constant gives nothing
        def integrand(v):
            return (log_magnitude(v) - here) * (1 / math.tan((w - v) / 2) + 1 / math.tan((w + v) / 2)) if v != w else 0.0
        kinks = sorted({2 * math.pi * k / RATE for k in [p[0] for p in points] + [300, 3400]} | {w})
        edges = [1e-9] + kinks + [math.pi]
        total = sum(integrate.quad(integrand, a, b, limit=400, epsabs=1e-10)[0] for a, b in zip(edges, edges[1:]))
        rows.append([f, -total / (2 * math.pi)])
    out["earpiece"].append({"points": points, "phase": rows})

json.dump(out, sys.stdout, indent=None, separators=(",", ":"))
