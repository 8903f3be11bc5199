"""Medium-wave AM through a tank so sharp that it cuts the sidebands, the envelope followed in time. Writes cases.json beside this file.

Run: python3 make.py     (some seconds; the tests of the project do not need it, they read cases.json)
Made with Python 3.11.7, numpy 2.4.6, scipy 1.17.1 (scipy.integrate.solve_ivp, LSODA).

A parallel tank in resonance with the carrier (L, its loss as a resistance across it, a source with resistance Rs) is fed by an AM current; a
junction hangs across it, its mean current into a resistor with a capacitor. In step with the carrier the envelope a(t) and the output v(t) obey

    2 C da/dt + G a + I1(a, v) = J (1 + m cos wt),     Cb dv/dt = i(a, v) - v/R

mean i and fundamental I1 by modified Bessel functions. No sidebands, no quasi-static step: a rival to both. Reported: fundamental of the output
[V peak], mean of the envelope and of the output, after they have settled.
"""
import json
import pathlib

import numpy as np
from scipy.integrate import solve_ivp
from scipy.special import ive

HERE = pathlib.Path(__file__).parent
CARRIER, INDUCTANCE = 1e6, 200e-6
REACTANCE = 2 * np.pi * CARRIER * INDUCTANCE
CAPACITANCE = 1 / (2 * np.pi * CARRIER * REACTANCE)
SATURATION, IDEALITY, TEMPERATURE = 2e-7, 1.3, 300
VOLTS = IDEALITY * 1.380649e-23 * TEMPERATURE / 1.602176634e-19


def law(a, v):
    x = a / VOLTS
    e = SATURATION * np.exp(x - v / VOLTS)
    return e * ive(0, x) - SATURATION, 2 * e * ive(1, x)


def settle(case, n=2048, periods=60):
    g = 1 / (case['q'] * REACTANCE) + 1 / case['source']
    j, w = case['openCircuit'] * g, 2 * np.pi * case['tone']

    def rhs(t, y):
        i, f = law(max(y[0], 0.0), y[1])
        return [(j * (1 + case['depth'] * np.cos(w * t)) - g * y[0] - f) / (2 * CAPACITANCE), (i - y[1] / case['load']) / case['bypass']]

    period = 1 / case['tone']
    grid = (periods - 1 + np.arange(n) / n) * period
    y = solve_ivp(rhs, [0, periods * period], [0, 0], method='LSODA', rtol=1e-9, atol=1e-16, t_eval=grid).y
    return {'output': float(abs(np.fft.rfft(y[1])[1]) / n * 2), 'amplitude': float(y[0].mean()), 'mean': float(y[1].mean())}


def main():
    made = []
    for open_circuit, depth, tone in [(2e-3, 0.3, 1000), (2e-3, 0.3, 3000), (0.2, 0.3, 3000), (1.0, 0.3, 3000), (0.4, 0.8, 3000), (4.0, 0.3, 3000)]:
        case = {'q': 300, 'source': 377e3, 'load': 100e3, 'bypass': 200e-12, 'openCircuit': open_circuit, 'depth': depth, 'tone': tone}
        made.append({**case, 'result': settle(case)})
        print(made[-1], flush=True)
    document = {
        'about': __doc__.strip().splitlines()[0],
        'conventions': 'SI; amplitudes peak',
        'tank': {'carrier': CARRIER, 'inductance': INDUCTANCE, 'capacitance': CAPACITANCE},
        'junction': {'saturationCurrent': SATURATION, 'ideality': IDEALITY, 'temperature': TEMPERATURE},
        'cases': made,
    }
    (HERE / 'cases.json').write_text(json.dumps(document, indent=1) + '\n')


if __name__ == '__main__':
    main()
