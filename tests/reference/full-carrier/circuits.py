"""The receivers that make.py integrates and check.py works out again. SI units throughout; voltages and currents are peak.

Every receiver: a voltage source with resistance, a parallel tank (coil with series resistance, loss-free capacitor from its top to
earth), a junction from the top of the tank to the output, and a resistor with a bypass capacitor from the output to earth.

tank kind `parallel`: the source resistance goes straight to the top of the coil.
tank kind `tapped`:   the source joins a tap; `upper` and `lower` are the two parts of the coil (self-inductances, mutual `mutual`,
                      winding the same way), lower part to earth.
tank kind `link`:     the source drives a primary of its own (`link`), coupled to the coil by `mutual`.
detector:             i = Is (exp((v - i Rs) / (n Vt)) - 1), v from tank top to output, Vt = k T / q.
modulation FM:        source e(t) = E cos(2 pi fc t + (deviation / fm) sin(2 pi fm t)): instantaneous frequency fc + deviation cos(2 pi fm t).
modulation AM:        source e(t) = E (1 + depth cos(2 pi fm t)) cos(2 pi fc t).
describingFunctionHolds: a steady calculation with the carrier standing still at each instant, the junction's voltage a sinusoid, the bypass a
                      short at RF and nothing at audio, owes mean 1 %, audio fundamental 0.1 dB, 2nd and 3rd harmonic 1 dB; else `note`.
"""
import math

BOLTZMANN = 1.380649e-23
CHARGE = 1.602176634e-19
TEMPERATURE = 300.0


def resonance(inductance, capacitance):
    return 1 / (2 * math.pi * math.sqrt(inductance * capacitance))


def coil_resistance(inductance, q, frequency):
    return 2 * math.pi * frequency * inductance / q


def fm(carrier, ratio, deviation):
    return {'kind': 'FM', 'carrierFrequency': carrier, 'frequency': carrier / ratio, 'deviation': deviation}


def am(carrier, ratio, depth):
    return {'kind': 'AM', 'carrierFrequency': carrier, 'frequency': carrier / ratio, 'depth': depth}


def junction(saturation, ideality, series):
    return {'saturationCurrent': saturation, 'ideality': ideality, 'seriesResistance': series, 'temperature': TEMPERATURE}


def thermal(detector):
    return detector['ideality'] * BOLTZMANN * detector['temperature'] / CHARGE


VHF = 100e6
PARALLEL = {'kind': 'parallel', 'inductance': 100e-9, 'capacitance': 25.45e-12, 'coilResistance': coil_resistance(100e-9, 200, VHF)}
TAPPED = {'kind': 'tapped', 'upper': 78e-9, 'lower': 3e-9, 'mutual': 8.4e-9, 'capacitance': 25.6e-12,
          'upperResistance': coil_resistance(86.4e-9, 220, VHF), 'lowerResistance': coil_resistance(11.4e-9, 220, VHF)}
LINK = {'kind': 'link', 'link': 20e-9, 'inductance': 100e-9, 'mutual': 7e-9, 'capacitance': 25.4e-12,
        'coilResistance': coil_resistance(100e-9, 250, VHF)}
MEDIUM_WAVE = {'kind': 'parallel', 'inductance': 200e-6, 'capacitance': 1 / ((2 * math.pi * 1e6) ** 2 * 200e-6),
               'coilResistance': coil_resistance(200e-6, 150, 1e6)}

# name, tank, source resistance, detector, load (R, C), then for each level its e.m.f. and carrier. The carriers keep away from the
# detunings at which the 2nd or the 3rd harmonic vanishes (x near 0.58 to 0.71, and 1.0 to 1.22): near a null it is not a quasi-static figure.
SLOPES = [
    ('parallel', PARALLEL, 30e3, junction(5e-7, 1.05, 0.0), (50e3, 20e-12),
     {'weak': (0.035, 100.10e6), 'middle': (0.35, 100.10e6), 'hard': (2.5, 99.95e6)}),
    ('tapped', TAPPED, 300.0, junction(2e-6, 1.05, 20.0), (50e3, 20e-12),
     {'weak': (0.0045, 100.36e6), 'middle': (0.05, 100.36e6), 'hard': (0.45, 100.36e6)}),
    ('link', LINK, 75.0, junction(2e-7, 1.08, 10.0), (200e3, 5e-12),
     {'weak': (0.0012, 100.05e6), 'middle': (0.013, 100.05e6), 'hard': (0.10, 100.05e6)}),
]


def cases():
    made = []
    for name, tank, source, detector, (r, c), levels in SLOPES:
        for level, (emf, carrier) in levels.items():
            made.append({'name': f'{name}-{level}', 'describingFunctionHolds': True, 'modulation': fm(carrier, 20000, 75e3),
                         'source': {'emf': emf, 'resistance': source}, 'tank': tank, 'detector': detector,
                         'load': {'resistance': r, 'capacitance': c}})
    made.append(dict(made[1], name='parallel-middle-half-rate', modulation=fm(100.10e6, 40000, 75e3)))
    hard = next(c for c in made if c['name'] == 'tapped-hard')
    made.append(dict(hard, name='tapped-hard-heavy-load', describingFunctionHolds=False, load={'resistance': 10e3, 'capacitance': 100e-12},
                     note='the heavy load draws pulses whose RF harmonics meet some 1 % of the load in the tank: the voltage is no longer a '
                          'sinusoid, the fundamental current gets a part in quadrature, and the slope audio of a describing function is 0.5 dB off'))
    medium = {'source': {'emf': 0.5, 'resistance': 300e3}, 'tank': MEDIUM_WAVE, 'detector': junction(2e-7, 1.3, 7.0)}
    made.append({'name': 'medium-wave-am', 'describingFunctionHolds': True, 'modulation': am(1e6, 20000, 0.5), **medium,
                 'load': {'resistance': 100e3, 'capacitance': 500e-12}})
    made.append({'name': 'medium-wave-am-clipped', 'describingFunctionHolds': False, 'modulation': am(1e6, 2000, 0.8), **medium,
                 'load': {'resistance': 100e3, 'capacitance': 6e-9},
                 'note': 'bypass too slow for the modulation: the output cannot follow the trough (diagonal clipping). For a method that '
                         'keeps the audio load; the tank follows to a few per cent only'})
    return made
