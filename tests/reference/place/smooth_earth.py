"""Reference fields over a smooth earth.

Two routes that share no code with the engine:
  contour: Fock's attenuation function by numerical integration along a contour, no roots (mpmath, 30 digits), one end on the ground;
           W = exp(i pi/4) sqrt(pi x) / (2 pi i) int exp(i x t) w1(t - y) / (w1'(t) - q w1(t)) dt, around the first quadrant's poles;
  modes:   residue series with 400 modes, roots led from q = 0 in small steps (scipy's scaled Airy functions), both ends raised.
Earth radius 8500 km, speed of light exact, surface impedance at grazing. Run in this folder:
    python3 smooth_earth.py > smooth-earth.json
"""

import json
import sys

import mpmath as mp
import numpy as np
from scipy.special import ai_zeros, airye

C0, EPS0, RADIUS = 299792458.0, 8.8541878128e-12, 8.5e6
mp.mp.dps = 30


def units(f, eps, sigma, vertical):
    k = 2 * np.pi * f / C0
    permittivity = eps + 1j * sigma / (2 * np.pi * f * EPS0)
    impedance = np.sqrt(permittivity - 1) / (permittivity if vertical else 1)
    scale = (k * RADIUS / 2) ** (1 / 3)
    return 1j * scale * impedance, scale, k


def contour(x, q, y):
    turn = mp.expjpi(mp.mpf(2) / 3)
    front = 2 * mp.sqrt(mp.pi) * mp.expjpi(mp.mpf(1) / 6)
    w = lambda t: front * mp.airyai(t * turn)
    dw = lambda t: front * turn * mp.airyai(t * turn, derivative=1)
    q = mp.mpc(q)
    f = lambda t: mp.exp(1j * x * t) * w(t - y) / (dw(t) - q * w(t))
    low, high = mp.expjpi(mp.mpf(1) / 9), mp.expjpi(mp.mpf(11) / 18)
    start = mp.mpf(-0.4)
    reach = mp.mpf(60) / x + 40
    # Re-entrant corners are avoided by starting left of the origin
    points = [reach * mp.mpf(n) / 24 for n in range(25)]
    out = mp.quad(lambda r: f(start + r * low) * low, points)
    back = mp.quad(lambda r: f(start + r * high) * high, points)
    return complex(mp.expjpi(mp.mpf(1) / 4) * mp.sqrt(mp.pi * x) * (out - back) / (2j * mp.pi))


def ratio(t):
    turn = np.exp(2j * np.pi / 3)
    a = airye(t * turn)
    return turn * a[1] / a[0]


def roots(q, count):
    t = -ai_zeros(count)[1] * np.exp(1j * np.pi / 3)
    steps = np.concatenate([np.linspace(0, min(8, abs(q)), 1600)[1:], np.geomspace(8, abs(q), 400)[1:] if abs(q) > 8 else []])
    last = 0
    for at in steps / abs(q) * q:
        t = t + (at - last) / (t - last * last)
        for _ in range(3):
            r = ratio(t)
            t = t - (r - at) / (t - r * r)
        last = at
    return t


def scaled(t):
    """w1 without exp(exponent), and the exponent (complex)."""
    z = t * np.exp(2j * np.pi / 3)
    return airye(z)[0], -2 / 3 * z * np.sqrt(z)


def modes(x, q, y1, y2, t):
    base, e0 = scaled(t)
    total = np.exp(0j * t) / (t - q * q)
    exponent = 1j * x * t
    for y in (y1, y2):
        if y > 0:
            value, e = scaled(t - y)
            total = total * value / base
            exponent = exponent + e - e0
    terms = total * np.exp(exponent)
    assert abs(terms[-1]) < 1e-4 * abs(terms.sum()), (x, y1, y2)
    return np.sqrt(np.pi * x) * abs(terms.sum())


out = {"contour": [], "modes": []}
grounds = [(22, 0.003), (80, 5), (15, 0.001), (40, 0.03)]
for f, (eps, sigma), vertical in [
    (1e6, grounds[0], True), (1e6, grounds[2], True), (540e3, grounds[1], True), (200e3, grounds[3], True),
    (15e6, grounds[1], True), (98e6, grounds[0], True), (98e6, grounds[0], False), (1e6, grounds[3], True)]:
    q, scale, k = units(f, eps, sigma, vertical)
    for x, height in [(0.15, 0), (0.3, 0), (0.6, 0), (1.5, 0), (3.0, 0), (0.6, 50), (1.5, 200)]:
        y = k * height / scale
        if y > 3:
            continue
        w = contour(x, q, y)
        out["contour"].append({
            "frequency": f, "permittivity": eps, "conductivity": sigma, "vertical": vertical,
            "distance": x * RADIUS / scale, "height": height, "decibels": 20 * np.log10(abs(w)),
        })
for f, (eps, sigma), vertical in [
    (98e6, grounds[0], False), (98e6, grounds[0], True), (66e6, grounds[1], True), (106e6, grounds[2], True), (300e6, grounds[0], False)]:
    q, scale, k = units(f, eps, sigma, vertical)
    t = roots(q, 400)
    for x in (0.15, 0.22, 0.28, 0.32, 0.4, 0.7, 1.2):
        for angle in (0.3, 1.0, 1.6, 2.0, 2.4, 3.0):
            for share in (0.5, 0.1):
                heights = [2 * x * angle * s * scale / k for s in (1 - share, share)]
                try:
                    w = modes(x, q, *[k * h / scale for h in heights], t)
                except AssertionError:
                    continue
                out["modes"].append({
                    "frequency": f, "permittivity": eps, "conductivity": sigma, "vertical": vertical,
                    "distance": x * RADIUS / scale, "height1": heights[0], "height2": heights[1],
                    "decibels": 20 * np.log10(2 * w),
                })
json.dump(out, sys.stdout, indent=1)
print()
