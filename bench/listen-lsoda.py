"""The time engine's own equations by SciPy's LSODA, for the benchmark only. Reads JSON from standard input: poles, what drives them and what they give, the
audio side, the junction; prints the time for a second of programme [s] and the audio fundamental [V peak] at each tolerance asked for."""
import json
import math
import sys
import time

import numpy as np
from scipy.integrate import odeint
from scipy.special import i0e, i1e

p = json.load(sys.stdin)
pole, source, into, out = (np.array([complex(*z) for z in p[k]]) for k in ('poles', 'source', 'into', 'outOf'))
rest_e, rest_u = complex(*p['restSource']), complex(*p['restInto'])
decay, gain, direct = np.array(p['audioPoles']), np.array(p['audioGain']), p['audioDirect']
saturation, slope, g0, emf, tone, index = p['saturation'], p['slope'], p['conductance'], p['emf'], p['tone'], p['deviation'] / p['tone']
modes = len(pole)


def law(a, v):
    x = a / slope
    e = saturation * math.exp(x - v / slope)
    return e * i0e(x) - saturation, 2 * e * i1e(x)


def rhs(t, y):
    z = y[:modes] + 1j * y[modes:2 * modes]
    s = y[2 * modes:]
    e = emf * complex(math.cos(index * math.sin(2 * math.pi * tone * t)), math.sin(index * math.sin(2 * math.pi * tone * t)))
    open_voltage = complex(out @ z) + rest_e * e
    volts = float(gain @ s)
    u = rhs.u
    # what answers within the instant is small: a few rounds settle it
    for _ in range(3):
        v = open_voltage + rest_u * u
        a = abs(v)
        i, i1 = law(a, volts + direct * rhs.i)
        u, rhs.i = (i1 / a - g0) * v, i
    rhs.u = u
    dz = pole * z + source * e + into * u
    return np.concatenate([dz.real, dz.imag, decay * s + i])


duration = p['duration']
for relative in p['tolerances']:
    rhs.u, rhs.i = 0j, p['current']
    start = np.concatenate([np.zeros(2 * modes), -p['current'] / decay])
    z = -emf * source / pole
    start[:modes], start[modes:2 * modes] = z.real, z.imag
    samples = round(duration * 48000)
    t = np.arange(samples + 1) / 48000
    scale = np.concatenate([np.full(2 * modes, abs(z).max()), -p['current'] / decay])
    begin = time.perf_counter()
    y = odeint(rhs, start, t, tfirst=True, rtol=relative, atol=relative * 1e-2 * scale, mxstep=100000)
    took = time.perf_counter() - begin
    x = y[:-1, 2 * modes:] @ gain
    # whole periods from the middle on, when all has settled
    x = x[samples // 2:]
    line = 2 * abs(np.mean(x * np.exp(-2j * math.pi * tone * np.arange(len(x)) / 48000)))
    print(relative, took / duration, repr(float(line)))
