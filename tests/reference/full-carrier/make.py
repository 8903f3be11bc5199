"""Complete slope receivers integrated in time with the carrier itself, by a general ODE library. Writes cases.json beside this file.

Run:      python3 make.py            (a quarter of an hour on one core; the tests of the project do not need it, they read cases.json)
          python3 check.py           compares cases.json with the quasi-static calculation of quasi_static.py (some minutes)
Made with Python 3.11.7, numpy 2.4.6, scipy 1.17.1 (scipy.integrate.odeint: LSODA of ODEPACK).

States: voltage of the tank capacitor, currents of the coil parts, output voltage; the junction is memoryless. Every carrier is a whole
multiple of the modulating frequency, so an audio period sampled evenly gives the spectrum exactly: mean, fundamental, 2nd and 3rd
harmonic of the output, and the envelope of the tank voltage from the band of one half to one and a half times the carrier.
The last audio period is reported, with its change from the period before as a proof of steadiness.
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


def junction_current(detector):
    i_s, r_s, t = detector['saturationCurrent'], detector['seriesResistance'], thermal(detector)
    exp = math.exp
    if r_s == 0:
        return lambda v: i_s * (exp(v / t) - 1)
    a = i_s * r_s / t
    shift, scale = a + math.log(a), t / r_s
    return lambda v: scale * float(wrightomega(v / t + shift)) - i_s


def source_voltage(case):
    m, emf = case['modulation'], case['source']['emf']
    wc, wm = 2 * math.pi * m['carrierFrequency'], 2 * math.pi * m['frequency']
    cos, sin = math.cos, math.sin
    if m['kind'] == 'FM':
        index = m['deviation'] / m['frequency']
        return lambda t: emf * cos(wc * t + index * sin(wm * t))
    depth = m['depth']
    return lambda t: emf * (1 + depth * cos(wm * t)) * cos(wc * t)


def equations(case):
    """right-hand side and the number of states; state 0 is the tank voltage, the last the output voltage"""
    tank, source = case['tank'], case['source']['resistance']
    current, emf = junction_current(case['detector']), source_voltage(case)
    load, bypass, c = case['load']['resistance'], case['load']['capacitance'], tank['capacitance']
    if tank['kind'] == 'parallel':
        inductance, r = tank['inductance'], tank['coilResistance']

        def rhs(t, y):
            v, i, vo = y
            d = current(v - vo)
            return ((emf(t) - v) / source - i - d) / c, (v - r * i) / inductance, (d - vo / load) / bypass

        return rhs, 3
    if tank['kind'] == 'tapped':
        l1, l2, m, r1, r2 = tank['upper'], tank['lower'], tank['mutual'], tank['upperResistance'], tank['lowerResistance']
        det = l1 * l2 - m * m

        def rhs(t, y):
            v, i1, i2, vo = y
            d = current(v - vo)
            tap = emf(t) - source * (i2 - i1)
            e1, e2 = v - tap - r1 * i1, tap - r2 * i2
            return (-i1 - d) / c, (l2 * e1 - m * e2) / det, (l1 * e2 - m * e1) / det, (d - vo / load) / bypass

        return rhs, 4
    l1, l2, m, r2 = tank['link'], tank['inductance'], tank['mutual'], tank['coilResistance']
    det = l1 * l2 - m * m

    def rhs(t, y):
        v, i1, i2, vo = y
        d = current(v - vo)
        e1, e2 = emf(t) - source * i1, v - r2 * i2
        return (-i2 - d) / c, (l2 * e1 - m * e2) / det, (l1 * e2 - m * e1) / det, (d - vo / load) / bypass

    return rhs, 4


def reduce_period(case, y):
    ratio = round(case['modulation']['carrierFrequency'] / case['modulation']['frequency'])
    n = len(y)
    bins = np.fft.rfft(y[:, -1])[:4] / n * np.array([1, 2, 2, 2])
    spectrum = np.fft.fft(y[:, 0])
    kept = np.zeros_like(spectrum)
    kept[ratio // 2:ratio + ratio // 2] = spectrum[ratio // 2:ratio + ratio // 2]
    return bins, float(np.abs(2 * np.fft.ifft(kept)).mean())


def integrate(case, relative=RELATIVE):
    rhs, states = equations(case)
    m = case['modulation']
    ratio = round(m['carrierFrequency'] / m['frequency'])
    n = ratio * SAMPLES_PER_CYCLE
    period = 1 / m['frequency']
    constants = period / (case['load']['resistance'] * case['load']['capacitance'])
    periods = 3 if constants > 10 else 2 + math.ceil(25 / constants)  # exp(-25) of the start is left at the last period but one
    scale = case['source']['emf']
    tolerance = [relative * 1e-3 * scale] * states
    tolerance[-1] = relative * 1e-4 * scale
    state, results, calls = np.zeros(states), [], 0
    for p in range(periods):
        t = (p + np.arange(n + 1) / n) * period
        y, info = odeint(rhs, state, t, tfirst=True, rtol=relative, atol=tolerance, full_output=True, mxstep=20000)
        if info['message'] != 'Integration successful.':
            raise RuntimeError(case['name'] + ': ' + info['message'])
        state, calls = y[-1], calls + int(info['nfe'][-1])
        results.append(reduce_period(case, y[:-1]))
    (before, _), (bins, tank) = results[-2:]
    return {
        'meanOutput': float(bins[0].real),
        # output = mean + sum amplitude cos(k 2 pi fm t + phase), k = 1, 2, 3
        'audio': [{'harmonic': k, 'amplitude': float(abs(bins[k])), 'phase': float(np.angle(bins[k]))} for k in (1, 2, 3)],
        'meanTankAmplitude': tank,
    }, {
        'relativeTolerance': relative, 'audioPeriods': periods, 'evaluations': calls,
        'changeFromPeriodBefore': float(np.abs(bins - before).max() / abs(bins[1])),
    }


def main():
    made = []
    for case in cases():
        start = time.time()
        result, integration = integrate(case)
        print(case['name'], f'{time.time() - start:.0f} s', result, integration, flush=True)
        made.append({**case, 'result': result, 'integration': integration})
    # the same case at a tolerance thirty times coarser: what the integration itself is uncertain by
    case = next(c for c in cases() if c['name'] == 'parallel-hard')
    coarse, _ = integrate(case, 3e-8)
    fine = next(c for c in made if c['name'] == case['name'])['result']
    by_name = {c['name']: c['result'] for c in made}
    full, half = by_name['parallel-middle'], by_name['parallel-middle-half-rate']
    document = {
        'about': __doc__.strip().splitlines()[0],
        'versions': {'python': sys.version.split()[0], 'numpy': np.__version__, 'scipy': scipy.__version__},
        'conventions': 'SI; amplitudes peak; phases rad against cos(2 pi fm t); circuits as described at the head of circuits.py',
        'integrationError': {
            'how': 'parallel-hard again at relative tolerance 3e-8: relative change of mean, audio harmonics 1 to 3',
            'relative': [coarse['meanOutput'] / fine['meanOutput'] - 1]
            + [a['amplitude'] / b['amplitude'] - 1 for a, b in zip(coarse['audio'], fine['audio'])],
        },
        'quasiStaticError': {
            'how': 'parallel-middle against parallel-middle-half-rate (half the modulating frequency): relative change of mean, audio harmonics 1 '
            'to 3. What is left out by standing still falls with the square of the frequency, so the error at full rate is about 4/3 of this',
            'relative': [full['meanOutput'] / half['meanOutput'] - 1]
            + [a['amplitude'] / b['amplitude'] - 1 for a, b in zip(full['audio'], half['audio'])],
        },
        'cases': made,
    }
    (HERE / 'cases.json').write_text(json.dumps(document, indent=1) + '\n')


if __name__ == '__main__':
    main()
