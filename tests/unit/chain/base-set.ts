import type { Listener, Place, SetDescription, Station } from '#engine';

/** Invented sets and places for the tests of the chain; values in SI. */

export const station = (over: Partial<Station> = {}): Station => ({
  name: 'Lantern Hill',
  frequency: 98e6,
  power: 10e3,
  polarisation: 'horizontal',
  mastHeight: 150,
  position: { distance: 5000, bearing: 0 },
  modulation: { kind: 'fm', deviation: 75e3, preEmphasis: 50e-6, stereo: false },
  programme: 'speech',
  ...over,
});

export const place = (...stations: Station[]): Place => ({
  name: 'Test Common',
  site: { height: 5, surroundings: 'open', ground: { permittivity: 15, conductivity: 1e-3 }, radioNoise: 'rural' },
  method: 'auto',
  stations: stations.length > 0 ? stations : [station()],
});

export const listener: Listener = {
  ear: { hearingLevel: [], room: { kind: 'noise-criterion', rating: 20 } },
  programme: { tone: 1000, level: 0 },
};

/** A small coil, an air variable, a dipole on a tap, a low-barrier junction and a piezo earpiece. */
export const set: SetDescription = {
  aerial: { kind: 'dipole', length: 1.45, diameter: 4e-3, metal: 'copper', orientation: { kind: 'horizontal', broadside: 0 } },
  tank: {
    coil: {
      kind: 'geometry',
      turns: 5,
      innerDiameter: 10e-3,
      wireDiameter: 1e-3,
      pitch: 2e-3,
      metal: 'copper',
      surfaceFactor: 1,
      leadLength: 5e-3,
    },
    capacitor: {
      minimum: 3e-12,
      maximum: 20e-12,
      rotation: Math.PI,
      law: { kind: 'capacitance-linear' },
      lossTangent: 2e-4,
      contactResistance: 0.02,
      leadInductance: 3e-9,
    },
    wiring: { length: 0.01, diameter: 1e-3 },
    joints: { count: 4, resistance: 0.5e-3 },
    strayCapacitance: 1.5e-12,
    aerialCoupling: { kind: 'tap', turns: 0.5 },
    detectorCoupling: { kind: 'direct' },
  },
  detector: {
    kind: 'junction',
    saturationCurrent: 2e-6,
    ideality: 1.05,
    seriesResistance: 20,
    junctionCapacitance: 0.2e-12,
    nominalTemperature: 300,
    temperature: 300,
  },
  phones: {
    bypass: 470e-12,
    load: 500e3,
    earpiece: {
      name: 'piezo plug',
      coupling: 'insert',
      sensitivity: [
        { frequency: 100, level: 95 },
        { frequency: 1000, level: 110 },
        { frequency: 3000, level: 115 },
        { frequency: 8000, level: 95 },
      ],
      sensitivityAt: '1 V',
      coupler: 'IEC 60318-4',
      sensitivitySpread: 5,
      ears: 1,
      kind: 'piezo',
      capacitance: 15e-9,
      lossTangent: 0.02,
      leakResistance: 50e6,
    },
  },
};

/** Sixty turns on a 75 mm tube. */
export const mediumWaveCoil: SetDescription['tank']['coil'] = {
  kind: 'geometry',
  turns: 60,
  innerDiameter: 75e-3,
  wireDiameter: 0.6e-3,
  pitch: 0.9e-3,
  metal: 'copper',
  surfaceFactor: 1,
  leadLength: 0.05,
};
