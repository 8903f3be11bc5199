"""Reference values for the mathematics under the detector. Writes values.json beside this file.

Run: python3 make.py     (a minute; the tests of the project do not need it, they read values.json)
Made with Python 3.11.7, mpmath 1.3.0, numpy 2.4.6, scipy 1.17.1.

besselScaled:  exp(-x) I_k(x), k = 0, 1, 2, and I0(x) - 1, mpmath at 40 digits.
wrightOmega:   z + ln z = y, mpmath lambertw(exp(y)) at 40 digits.
exponential:   exp(x), exp(x) - 1, mpmath at 40 digits.
splineSlopes:  slopes of scipy.interpolate.CubicSpline(bc_type='not-a-knot').
seriesJunction, channel: mean current and in-phase fundamental of the law under A cos(wt) - V, by scipy.integrate.quad over half a cycle
  (absolute error 1e-12 of the peak current). Junction: i = Is (exp((v - i Rs) / nVt) - 1), i by scipy.optimize.brentq. Channel:
  i = 2 n^2 beta Vt^2 (ln^2(1 + exp(a / (2 n Vt))) - ln^2(1 + exp(b / (2 n Vt)))), a = gate - threshold, b = a - v + i Rs,
  gate = bias + share A cos(wt); i by brentq where Rs is not zero.
"""
import json
import math
import pathlib

import mpmath as mp
import numpy as np
from scipy.integrate import quad
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

mp.mp.dps = 40
VT = 1.380649e-23 * 300 / 1.602176634e-19


def exact(x):
    return float(mp.nstr(x, 20))


def bessel():
    rows = []
    for x in [0, 1e-6, 4e-5, 1e-3, 0.01, 0.1, 0.5, 0.9, 0.999, 1, 1.01, 1.5, 2, 3.3, 5, 7.49, 10, 15, 20.07, 31.99, 32, 40, 75, 100, 500, 1e4]:
        z = mp.mpf(x)
        rows.append([x] + [exact(mp.besseli(k, z) * mp.exp(-z)) for k in range(3)] + [exact(mp.besseli(0, z) - 1) if x <= 1 else None])
    return rows


def omega():
    rows = []
    for y in [-600, -50, -10, -3, -1.01, -1, -0.5, 0, 0.3, 1, 1.9, 2, 2.1, 5, 10, 30, 100, 1e4, 1e6]:
        rows.append([y, exact(mp.lambertw(mp.exp(mp.mpf(y))).real)])
    return rows


def exponential():
    return [[x, exact(mp.exp(mp.mpf(x))), exact(mp.expm1(mp.mpf(x)))]
            for x in [-700, -300.3, -20, -1.7, -0.3, -5e-3, -1e-5, -1e-12, 0, 1e-12, 1e-7, 3e-3, 0.02, 0.69, 1, 3.21, 22, 300.1, 700]]


def spline():
    sets = []
    for x, f in [(np.linspace(-0.1, 0.2, 13), lambda v: 1e-6 * np.expm1(v / 0.027)),
                 (np.array([-0.3, -0.2, -0.12, -0.05, 0.0, 0.02, 0.05, 0.11, 0.2]), lambda v: v + v**2 + 2 * v**3)]:
        y = f(x)
        sets.append({'x': x.tolist(), 'y': y.tolist(), 'slopes': CubicSpline(x, y, bc_type='not-a-knot')(x, 1).tolist()})
    return sets


def junction(i_s, t, r_s):
    def current(v):
        if r_s == 0:
            return i_s * math.expm1(v / t)
        f = lambda i: (i * r_s - v) + t * math.log1p(i / i_s)
        high = v / r_s + 1e-30 if v > 0 else 0.0
        low = 0.0 if v > 0 else -i_s * (1 - 1e-16)
        if f(low) >= 0:
            return low
        return brentq(f, low, high, xtol=1e-30, rtol=1e-15)
    return current


def average(current, amplitude):
    small = 1e-12 * max(abs(current(amplitude)), abs(current(-amplitude)))
    knee = [k * math.pi / 16 for k in range(1, 16)]
    mean = quad(lambda a: current(amplitude * math.cos(a)), 0, math.pi, epsabs=small, epsrel=0, limit=500, points=knee)[0] / math.pi
    first = quad(lambda a: current(amplitude * math.cos(a)) * math.cos(a), 0, math.pi, epsabs=0, epsrel=1e-12, limit=500, points=knee)[0]
    return mean, 2 * first / math.pi


def series_junction():
    rows = []
    for i_s, n, r_s in [(5e-6, 1.05, 20.0), (2e-7, 1.3, 7.0), (2e-6, 1.5, 2000.0)]:
        current = junction(i_s, n * VT, r_s)
        for amplitude, output in [(0.002, 0.0), (0.01, 0.0005), (0.05, 0.01), (0.2, 0.1), (0.5, 0.0), (1.0, 0.8), (1.0, 0.2), (0.3, -0.1)]:
            mean, first = average(lambda x: current(x - output), amplitude)
            rows.append({'Is': i_s, 'n': n, 'Rs': r_s, 'T': 300, 'A': amplitude, 'V': output, 'mean': mean, 'fundamental': first})
    return rows


def channel():
    rows = []
    for n, beta, threshold, bias, share, r_s in [(1.4, 4e-5, 0.0, 0.0, 0.0, 0.0), (1.4, 4e-5, 0.0, -0.3, 1.0, 0.0), (1.2, 2e-3, -2.0, -1.5, 1.0, 0.0),
                                                 (1.2, 2e-3, -2.0, -2.0, 0.5, 50.0), (1.1, 1e-3, 0.3, 0.35, -1.0, 0.0)]:
        t = n * VT
        k = 2 * n * n * beta * VT * VT

        def soft(q):
            z = q / (2 * t)
            return np.logaddexp(0, z) ** 2

        for amplitude, output in [(0.01, 0.0), (0.02, -0.001), (0.1, 0.02), (0.4, -0.1), (0.8, 0.3)]:
            def current(x):
                gate = bias - threshold + share * x
                v = x - output
                law = lambda i: k * (soft(gate) - soft(gate - v + i * r_s))
                if r_s == 0:
                    return law(0.0)
                high = law(0.0)
                return brentq(lambda i: i - law(i), min(0.0, high), max(0.0, high), xtol=1e-30, rtol=1e-15) if high != 0 else 0.0
            mean, first = average(current, amplitude)
            rows.append({'n': n, 'beta': beta, 'threshold': threshold, 'bias': bias, 'share': share, 'Rs': r_s, 'T': 300, 'A': amplitude, 'V': output,
                         'mean': mean, 'fundamental': first})
    return rows


made = {'besselScaled': bessel(), 'wrightOmega': omega(), 'exponential': exponential(), 'splineSlopes': spline(),
        'seriesJunction': series_junction(), 'channel': channel()}
pathlib.Path(__file__).with_name('values.json').write_text(json.dumps(made, indent=1) + '\n')
