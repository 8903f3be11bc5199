"""Receivers integrated in time with the carrier itself, by a general ODE library. Writes cases.json beside this file.

Run:      python3 make.py            (some ten minutes on one core; the tests of the project do not need it, they read cases.json)
Made with the versions of Python, numpy and scipy that cases.json names (scipy.integrate.odeint: LSODA of ODEPACK).

Everything is periodic in 1/base, so one period sampled evenly gives the spectrum of the output exactly: its lines at 0, 1, 2 ... times base. The
last of a few periods is reported, with its change from the one before as a proof of steadiness.
"""
import json
import math
import pathlib
import sys
import time

import numpy as np
import scipy
from scipy.integrate import odeint
from scipy.special import wrightomega

from circuits import cases, thermal

HERE = pathlib.Path(__file__).parent
SAMPLES_PER_CYCLE = 16
RELATIVE = 1e-9
LINES = 13


def junction_current(detector):
    i_s, r_s, t = detector['saturationCurrent'], detector['seriesResistance'], thermal(detector)
    exp = math.exp
    if r_s == 0:
        return lambda v: i_s * (exp(v / t) - 1)
    a = i_s * r_s / t
    shift, scale = a + math.log(a), t / r_s
    return lambda v: scale * float(wrightomega(v / t + shift)) - i_s


def source_voltage(case):
    cos, sin, tau = math.cos, math.sin, 2 * math.pi
    parts = [(s['emf'], tau * s['carrierFrequency'], tau * s['frequency'], s['deviation'] / s['frequency'], s['depth']) for s in case['stations']]

    def emf(t):
        total = 0.0
        for e, wc, wm, index, depth in parts:
            total += e * (1 + depth * cos(wm * t)) * cos(wc * t + index * sin(wm * t))
        return total

    return emf


def equations(case):
    """right-hand side, number of states, and the place of the output among them"""
    tank, source, load = case['tank'], case['source']['resistance'], case['load']
    current, emf = junction_current(case['detector']), source_voltage(case)
    resistance, bypass = load['resistance'], load['capacitance']
    if tank['kind'] == 'parallel':
        inductance, r, c = tank['inductance'], tank['coilResistance'], tank['capacitance']

        def rhs(t, y):
            v, i, vo = y
            d = current(v - vo)
            return ((emf(t) - v) / source - i - d) / c, (v - r * i) / inductance, (d - vo / resistance) / bypass

        return rhs, 3, 2
    if tank['kind'] == 'pair':
        inductance, m, r = tank['inductance'], tank['mutual'], tank['coilResistance']
        c1, c2, det = tank['firstCapacitance'], tank['capacitance'], tank['inductance'] ** 2 - tank['mutual'] ** 2

        def rhs(t, y):
            v1, v2, i1, i2, vo = y
            d = current(v2 - vo)
            e1, e2 = v1 - r * i1, v2 - r * i2
            return (((emf(t) - v1) / source - i1) / c1, (-i2 - d) / c2, (inductance * e1 - m * e2) / det, (inductance * e2 - m * e1) / det,
                    (d - vo / resistance) / bypass)

        return rhs, 5, 4
    inductance, r = tank['inductance'], tank['coilResistance']
    c1, c2 = tank['highCapacitance'], tank['lowCapacitance']
    rc, cc = load['commonResistance'], load['commonCapacitance']

    def rhs(t, y):
        v1, i1, v2, i2, o1, o2, vo = y
        d1, d2 = current(v1 - o1), current(o2 - v2)
        e = emf(t)
        p, q = (o1 - vo) / resistance, (o2 - vo) / resistance
        return (((e - v1) / source - i1 - d1) / c1, (v1 - r * i1) / inductance, ((e - v2) / source - i2 + d2) / c2, (v2 - r * i2) / inductance,
                (d1 - p) / bypass, (-d2 - q) / bypass, (p + q - vo / rc) / cc)

    return rhs, 7, 6


def slowest(case):
    load = case['load']
    if case['tank']['kind'] == 'balanced':
        return 2 * (load['resistance'] * load['capacitance'] + load['commonResistance'] * load['commonCapacitance'])
    return load['resistance'] * load['capacitance']


def integrate(case):
    rhs, states, out = equations(case)
    period = 1 / case['base']
    n = round(max(s['carrierFrequency'] for s in case['stations']) / case['base'] * SAMPLES_PER_CYCLE)
    # exp(-25) of the start is left at the last period but one
    periods = max(3, 2 + math.ceil(25 * slowest(case) / period))
    scale = max(s['emf'] for s in case['stations'])
    tolerance = [RELATIVE * 1e-3 * scale] * states
    tolerance[out] = RELATIVE * 1e-4 * scale
    state, results, calls = np.zeros(states), [], 0
    for p in range(periods):
        t = (p + np.arange(n + 1) / n) * period
        y, info = odeint(rhs, state, t, tfirst=True, rtol=RELATIVE, atol=tolerance, full_output=True, mxstep=20000)
        if info['message'] != 'Integration successful.':
            raise RuntimeError(case['name'] + ': ' + info['message'])
        state, calls = y[-1], calls + int(info['nfe'][-1])
        results.append(np.fft.rfft(y[:-1, out])[:LINES] / n)
    before, lines = results[-2:]
    return ({'meanOutput': float(lines[0].real), 'amplitudes': [float(2 * abs(x)) for x in lines[1:]]},
            {'relativeTolerance': RELATIVE, 'periods': periods, 'evaluations': calls, 'changeFromPeriodBefore': float(abs(lines - before).max() / abs(lines[1:]).max())})


def main():
    made = []
    for case in cases():
        start = time.time()
        result, integration = integrate(case)
        made.append(case | {'result': result, 'integration': integration})
        print(f"{case['name']:30} {time.time() - start:6.1f} s  mean {result['meanOutput']:.6g}  lines {' '.join(f'{a:.3g}' for a in result['amplitudes'][:6])}"
              f"  change {integration['changeFromPeriodBefore']:.1e}", flush=True)
    document = {
        'about': __doc__.splitlines()[0],
        'versions': {'python': sys.version.split()[0], 'numpy': np.__version__, 'scipy': scipy.__version__},
        'conventions': 'SI; amplitudes peak; amplitudes[k] is the line at (k + 1) base; circuits as described at the head of circuits.py',
        'cases': made,
    }
    HERE.joinpath('cases.json').write_text(json.dumps(document, indent=1) + '\n')


if __name__ == '__main__':
    main()
