"""Receivers for the time engine that the circuits of ../full-carrier do not hold. SI units throughout; voltages and currents are peak.

Junctions i = Is (exp((v - i Rs)/(n Vt)) - 1), Vt = k T/q. Every frequency is a whole multiple of `base`, so one period 1/base holds everything.

tank kind `parallel`:  as in ../full-carrier/circuits.py.
tank kind `pair`:      two tanks coupled by their coils (`inductance` each, `mutual`): the source's resistance goes to the top of the first (`firstCapacitance`),
                       the detector hangs on the second (`capacitance`); `coilResistance` in series with each coil.
tank kind `balanced`:  two tanks that are not coupled (`inductance`, `coilResistance` each; `highCapacitance`, `lowCapacitance`), each with a source resistance of
                       its own to the one e.m.f. A junction leads from the first to output `o1`, another from output `o2` to the second. Each output has the bypass
                       `capacitance` to earth and the resistance `resistance` to the common output, which has `commonCapacitance` and `commonResistance` to earth.
stations: e(t) = sum over stations of E (1 + depth cos(2 pi f t)) cos(2 pi fc t + (deviation/f) sin(2 pi f t)).
"""
import math

BOLTZMANN = 1.380649e-23
CHARGE = 1.602176634e-19
TEMPERATURE = 300.0


def coil_resistance(inductance, q, frequency):
    return 2 * math.pi * frequency * inductance / q


def junction(saturation, ideality, series):
    return {'saturationCurrent': saturation, 'ideality': ideality, 'seriesResistance': series, 'temperature': TEMPERATURE}


def thermal(detector):
    return detector['ideality'] * BOLTZMANN * detector['temperature'] / CHARGE


def station(emf, carrier, base, tone=1, deviation=0.0, depth=0.0):
    """carrier and tone in whole multiples of base"""
    return {'emf': emf, 'carrierFrequency': carrier * base, 'frequency': tone * base, 'deviation': deviation, 'depth': depth}


def resonant(inductance, frequency):
    return 1 / ((2 * math.pi * frequency) ** 2 * inductance)


def parallel(inductance, frequency, q):
    return {'kind': 'parallel', 'inductance': inductance, 'capacitance': resonant(inductance, frequency), 'coilResistance': coil_resistance(inductance, q, frequency)}


def pair(k, q):
    c = resonant(100e-9, 99.6e6)
    return {'kind': 'pair', 'inductance': 100e-9, 'mutual': k * 100e-9, 'firstCapacitance': c, 'capacitance': c, 'coilResistance': coil_resistance(100e-9, q, 100e6)}


def cases():
    vhf = 5000.0
    slow = 200.0
    quick = 5000.0
    made = []
    for name, emf in (('coupled-pair-middle', 0.6), ('coupled-pair-hard', 4.0)):
        made.append({'name': name, 'base': vhf, 'stations': [station(emf, 20000, vhf, deviation=75e3)], 'source': {'resistance': 30e3}, 'tank': pair(0.008, 150),
                     'detector': junction(5e-7, 1.05, 5.0), 'load': {'resistance': 50e3, 'capacitance': 20e-12}})
    two = 2500.0
    for name, emf in (('two-stations-weak-neighbour', 0.1), ('two-stations-strong-neighbour', 0.9)):
        made.append({'name': name, 'base': two,
                     'stations': [station(0.35, 40000, two, 2, deviation=75e3), station(emf, 40160, two, 3, deviation=60e3)],
                     'source': {'resistance': 30e3}, 'tank': parallel(100e-9, 99.8e6, 200), 'detector': junction(5e-7, 1.05, 0.0),
                     'load': {'resistance': 50e3, 'capacitance': 100e-12}})
    made.append({'name': 'low-tone', 'base': slow, 'stations': [station(0.3, 100000, slow, deviation=30e3)], 'source': {'resistance': 60e3},
                 'tank': parallel(1e-6, 19.9e6, 150), 'detector': junction(1e-6, 1.1, 10.0), 'load': {'resistance': 100e3, 'capacitance': 300e-12}})
    made.append({'name': 'high-tone', 'base': quick, 'stations': [station(0.3, 2000, quick, deviation=12e3)], 'source': {'resistance': 300e3},
                 'tank': parallel(4e-6, 9.99e6, 400), 'detector': junction(2e-7, 1.1, 10.0), 'load': {'resistance': 300e3, 'capacitance': 50e-12}})
    made.append({'name': 'high-tone-am', 'base': 4000.0, 'stations': [station(0.5, 250, 4000.0, depth=0.5)], 'source': {'resistance': 300e3},
                 'tank': parallel(200e-6, 1.0e6, 150), 'detector': junction(2e-7, 1.3, 7.0), 'load': {'resistance': 100e3, 'capacitance': 200e-12}})
    made.append({'name': 'strong-am-narrow-tank', 'base': 200.0, 'stations': [station(30.0, 5000, 200.0, depth=0.5)], 'source': {'resistance': 1.5e6},
                 'tank': parallel(240e-6, 1.001e6, 300), 'detector': junction(2e-6, 1.05, 20.0), 'load': {'resistance': 500e3, 'capacitance': 1e-9}})
    made.append({'name': 'balanced', 'base': vhf, 'stations': [station(0.5, 20000, vhf, deviation=75e3)], 'source': {'resistance': 30e3},
                 'tank': {'kind': 'balanced', 'inductance': 100e-9, 'coilResistance': coil_resistance(100e-9, 150, 100e6),
                          'highCapacitance': resonant(100e-9, 100.3e6), 'lowCapacitance': resonant(100e-9, 99.72e6)},
                 'detector': junction(5e-7, 1.05, 5.0),
                 'load': {'resistance': 50e3, 'capacitance': 20e-12, 'commonResistance': 200e3, 'commonCapacitance': 30e-12}})
    return made
