"""Two carriers on one tank and one junction, the envelope followed through their whole beat. Writes cases.json beside this file.

Run: python3 make.py     (two minutes; the tests of the project do not need it, they read cases.json)
Made with Python 3.11.7, numpy 2.4.6, scipy 1.17.1.

A parallel tank (G, C) is fed by two currents of unlike frequency; a junction hangs across it, its mean current into a resistor with a large
capacitor, so that the output stands still through a beat. In the frame of the first carrier the complex envelope a(t) obeys

    (G + 2 C (d/dt + j w)) a + I1(|a|, V) a/|a| = J1 + J2 exp(j d t)

which is solved as a periodic function of the beat, with all of its mixing products (harmonic balance over 128 points, Newton's method with the exact
slope of a complex describing function). mean i, I1 by modified Bessel functions. What is reported:

    output           V = R <i>, and the same with the first carrier alone
    first, second    amplitude of either carrier across the junction [V peak]
    leak             |d<i>/df2| / |d<i>/df1|, V held: both carriers moved by the same few kHz [dB]
    hush             |d<i>/df1| beside the second carrier over the same without it, each at its own output [dB]
"""
import json
import pathlib

import numpy as np
from scipy.optimize import brentq
from scipy.special import ive

HERE = pathlib.Path(__file__).parent
F0 = 98e6
SHIFT = 2e3
IDEALITY_VOLTS = 1.05 * 1.380649e-23 * 300 / 1.602176634e-19
SATURATION = 2e-6


def mean(a, v):
    x = a / IDEALITY_VOLTS
    return SATURATION * (np.exp(x - v / IDEALITY_VOLTS) * ive(0, x) - 1)


def fundamental(a, v):
    x = a / IDEALITY_VOLTS
    return 2 * SATURATION * np.exp(x - v / IDEALITY_VOLTS) * ive(1, x)


def slope(a, v):
    x = np.maximum(a / IDEALITY_VOLTS, 1e-12)
    return 2 * SATURATION / IDEALITY_VOLTS * np.exp(x - v / IDEALITY_VOLTS) * (ive(0, x) - ive(1, x) / x)


class Tank:
    def __init__(self, case):
        self.g = 1 / case['resistance']
        self.c = case['q'] * self.g / (2 * np.pi * F0)
        self.j = [case['first'] * self.g, case['second'] * self.g]
        self.d = case['offsets']

    def admittance(self, offset):
        return self.g + 2j * self.c * 2 * np.pi * offset

    def alone(self, v, shift=0.0):
        y = self.admittance(self.d[0] + shift)
        a = brentq(lambda a: abs(y * a + fundamental(a, v)) - self.j[0], 0, 1.0001 * self.j[0] / y.real, xtol=1e-18, rtol=1e-14)
        return mean(a, v)

    def beat(self, v, shifts=(0.0, 0.0), n=128):
        d1, d2 = self.d[0] + shifts[0], self.d[1] + shifts[1]
        y = self.admittance(d1 + np.fft.fftfreq(n, 1 / n) * (d2 - d1))
        kernel = np.fft.ifft((1 / y)[:, None] * np.fft.fft(np.eye(n), axis=0), axis=0)
        drive = np.zeros(n, complex)
        drive[:2] = self.j
        open_circuit = np.fft.ifft(drive / y) * n
        a = None
        for share in (0.02, 0.1, 0.3, 0.6, 1.0):
            target = share * open_circuit
            if a is None:
                a = np.fft.ifft(share * drive / (y + slope(0.0, v))) * n
            for _ in range(400):
                size = np.abs(a) + 1e-300
                chord, tangent = fundamental(size, v) / size, slope(size, v)
                miss = a + kernel @ (chord * a) - target
                plain = np.eye(n) + kernel * ((chord + tangent) / 2)
                turned = kernel * ((tangent - chord) / 2 * (a / size) ** 2)
                big = np.block([[plain.real + turned.real, -plain.imag + turned.imag], [plain.imag + turned.imag, plain.real - turned.real]])
                step = np.linalg.solve(big, -np.r_[miss.real, miss.imag])
                step = step[:n] + 1j * step[n:]
                part, worst = 1.0, np.abs(miss).max()
                while part > 1e-9:
                    new = a + part * step
                    if np.abs(new + kernel @ (fundamental(np.abs(new), v) / np.abs(new) * new) - target).max() < worst:
                        break
                    part /= 2
                a = a + part * step
                if np.abs(step).max() < 1e-12 * np.abs(a).max() or worst < 1e-13 * np.abs(target).max():
                    break
            else:
                raise RuntimeError('no steady beat')
        return a, mean(np.abs(a), v).mean()


def solve(case):
    tank, load = Tank(case), case['load']
    top = 2 * max(tank.j) / tank.g
    without = brentq(lambda v: v - load * tank.alone(v), 0, top, xtol=1e-15)
    output = brentq(lambda v: v - load * tank.beat(v)[1], 0, top, xtol=1e-12)
    a, _ = tank.beat(output)
    lines = np.abs(np.fft.fft(a)) / len(a)

    def moved(first, second):
        return (tank.beat(output, (first, second))[1] - tank.beat(output, (-first, -second))[1]) / (2 * SHIFT)

    ours, theirs = moved(SHIFT, 0), moved(0, SHIFT)
    alone = (tank.alone(without, SHIFT) - tank.alone(without, -SHIFT)) / (2 * SHIFT)
    return {
        'output': output, 'outputAlone': without, 'first': float(lines[0]), 'second': float(lines[1]),
        'leak': float(20 * np.log10(abs(theirs / ours))), 'hush': float(20 * np.log10(abs(ours / alone))),
    }


def case(name, resistance, q, load, first, second, offsets):
    return {'name': name, 'resistance': resistance, 'q': q, 'load': load, 'first': first, 'second': second, 'offsets': offsets}


# resistance of tank and source, their Q; load at the output; open-circuit amplitude of either carrier at resonance; offsets from resonance
CASES = [
    case('square law, source-damped', 5e3, 44, 500e3, 2e-3, 4e-3, [780e3, 3.78e6]),
    case('square law, detector-damped', 40e3, 200, 500e3, 2e-3, 2e-3, [171.5e3, 2.1715e6]),
    case('peak detector, weaker neighbour', 5e3, 44, 500e3, 0.2, 0.2, [780e3, 3.78e6]),
    case('peak detector, equal neighbour', 5e3, 44, 500e3, 0.2, 0.6, [780e3, 3.78e6]),
    case('peak detector, stronger neighbour', 5e3, 44, 500e3, 0.2, 2.0, [780e3, 3.78e6]),
    case('averaging detector, weaker neighbour', 300, 20, 1e3, 1.0, 0.3, [1.7e6, 2.5e6]),
    case('averaging detector, equal neighbour', 300, 20, 1e3, 1.0, 1.0, [1.7e6, 2.0e6]),
    case('weak station, strong one beyond', 5e3, 44, 500e3, 0.02, 0.2, [780e3, 3.78e6]),
    case('weak station, strong one below', 5e3, 44, 500e3, 0.1, 3.0, [780e3, -5.22e6]),
    case('detector-damped, weaker neighbour', 40e3, 200, 500e3, 0.2, 0.2, [171.5e3, 2.1715e6]),
    case('detector-damped, near neighbour', 40e3, 200, 500e3, 0.2, 0.2, [171.5e3, 671.5e3]),
    case('half damped, strong', 20e3, 100, 500e3, 0.5, 1.5, [343e3, 3.343e6]),
]


def main():
    made = [{**c, 'result': solve(c)} for c in CASES]
    for c in made:
        print(c['name'], {k: float(f'{v:.4g}') for k, v in c['result'].items()})
    document = {
        'about': __doc__.strip().splitlines()[0],
        'conventions': 'SI; amplitudes peak; levels dB; resonance at 98 MHz, admittance G + 2 j C w with C = Q G / (2 pi 98 MHz)',
        'junction': {'saturationCurrent': SATURATION, 'ideality': 1.05, 'temperature': 300},
        'cases': made,
    }
    (HERE / 'cases.json').write_text(json.dumps(document, indent=1) + '\n')


if __name__ == '__main__':
    main()
