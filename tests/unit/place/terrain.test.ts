import { describe, expect, test } from 'vitest';
import {
  bullington,
  deltaBullington,
  fresnelParameter,
  type GroundPath,
  knifeEdgeApproximation,
  knifeEdgeLoss,
  receive,
  smoothEarthDiffraction,
} from '#engine';
import { placeOf, station } from './given.ts';

const ground = { permittivity: 22, conductivity: 0.003 };
const wavelength = 3;
const path: GroundPath = {
  distance: 20e3,
  height1: 60,
  height2: 10,
  frequency: 299_792_458 / wavelength,
  ground,
  polarisation: 'horizontal',
  earthRadius: 8.5e6,
};
const distances = Array.from({ length: 101 }, (_, i) => i * 200);

describe('knife edge', () => {
  test('limit: half the field at grazing, whole far above, nu sqrt(2) pi in deep shadow', () => {
    expect(knifeEdgeLoss(0)).toBeCloseTo(20 * Math.log10(2), 9);
    expect(Math.abs(knifeEdgeLoss(-20))).toBeLessThan(0.1);
    expect(knifeEdgeLoss(20)).toBeCloseTo(20 * Math.log10(20 * Math.SQRT2 * Math.PI), 2);
  });

  test('rival: the approximation stays within 0.15 dB of the Fresnel integrals from nu = -0.7 up', () => {
    for (let nu = -0.7; nu < 10; nu += 0.05) expect(Math.abs(knifeEdgeApproximation(nu) - knifeEdgeLoss(nu))).toBeLessThan(0.15);
  });

  test('rival: Fresnel integrals summed step by step', () => {
    // (1 - j)/2 (C + jS) from nu to infinity; the tail by its asymptotic series' first term
    for (const nu of [-1.3, 0.4, 1.7]) {
      let re = 0;
      let im = 0;
      const n = 200_000;
      const end = 60;
      const h = (end - nu) / n;
      for (let i = 0; i < n; i++) {
        const t = nu + (i + 0.5) * h;
        re += h * Math.cos((Math.PI / 2) * t * t);
        im += h * Math.sin((Math.PI / 2) * t * t);
      }
      re -= Math.sin((Math.PI / 2) * end * end) / (Math.PI * end);
      im += Math.cos((Math.PI / 2) * end * end) / (Math.PI * end);
      expect(knifeEdgeLoss(nu)).toBeCloseTo(-20 * Math.log10(Math.hypot(re, im) / Math.SQRT2), 4);
    }
  });
});

describe('terrain profile', () => {
  test('limit: level ground at sea level is the smooth earth of P.526, or its edge where that is worse', () => {
    for (const distance of [10e3, 20e3, 60e3]) {
      const level = distances.map((d) => (d * distance) / 20e3);
      const profile = { distance: level, height: level.map(() => 0) };
      const own = { ...path, distance };
      const { loss, smooth, effectiveHeight1 } = deltaBullington(profile, own, wavelength);
      expect(effectiveHeight1).toBeCloseTo(60, 9);
      expect(loss).toBeCloseTo(Math.max(smoothEarthDiffraction(own), smooth.loss), 9);
    }
  });

  test('limit: raising the whole country changes nothing', () => {
    const hills = distances.map((d) => 40 * Math.sin(d / 1700) ** 2 + d / 400);
    const low = deltaBullington({ distance: distances, height: hills }, path, wavelength);
    const high = deltaBullington({ distance: distances, height: hills.map((h) => h + 800) }, path, wavelength);
    expect(high.loss).toBeCloseTo(low.loss, 6);
  });

  test('limit: the loss is the same both ways', () => {
    const hills = distances.map((d) => 150 * Math.exp(-(((d - 13e3) / 900) ** 2)) + 60 * Math.exp(-(((d - 4e3) / 500) ** 2)));
    const back = hills.toReversed();
    const there = deltaBullington({ distance: distances, height: hills }, path, wavelength);
    const here = deltaBullington({ distance: distances, height: back }, { ...path, height1: 10, height2: 60 }, wavelength);
    expect(here.loss).toBeCloseTo(there.loss, 8);
    expect(there.loss).toBeGreaterThan(15);
  });

  test('rival: one sharp ridge by the exact knife edge, plus what P.526 adds for the ground around it', () => {
    const ridge = distances.map((d) => (d === 8000 ? 200 : 0));
    const edge = bullington({ distance: distances, height: ridge }, 60, 10, wavelength, Number.POSITIVE_INFINITY);
    const nu = fresnelParameter(200 - (60 * 12 + 10 * 8) / 20, 8e3, 12e3, wavelength);
    expect(Math.abs(edge.edgeLoss - knifeEdgeLoss(nu))).toBeLessThan(0.15);
    expect(edge.loss - edge.edgeLoss).toBeCloseTo((1 - Math.exp(-edge.edgeLoss / 6)) * 10.4, 9);
  });

  test('limit: a higher hill never lets more past its edge; the whole loss follows within the half decibel that the delta method gives back', () => {
    let lastEdge = -1;
    let last = -1;
    for (let top = 0; top <= 400; top += 20) {
      const hill = distances.map((d) => top * Math.exp(-(((d - 9e3) / 1500) ** 2)));
      const { loss, actual } = deltaBullington({ distance: distances, height: hill }, path, wavelength);
      expect(actual.loss).toBeGreaterThanOrEqual(lastEdge);
      expect(loss).toBeGreaterThanOrEqual(last - 0.5);
      lastEdge = actual.loss;
      last = loss;
    }
    expect(last).toBeGreaterThan(25);
  });

  test('limit: the whole stage takes the profile by itself, and the wave comes over the hill', () => {
    const hill = distances.map((d) => 300 * Math.exp(-(((d - 18e3) / 400) ** 2)));
    const behind = { ...station, mastHeight: 60, position: { distance: 20e3, bearing: 0 }, terrain: { distance: distances, height: hill } };
    const site = { height: 10 };
    const received = receive(placeOf({ site, stations: [behind] }), behind);
    expect(received.method).toBe('terrain');
    expect(received.elevation).toBeGreaterThan(0.1);
    expect(received.elevation).toBeLessThan(0.2);
    const open = { ...behind, terrain: { distance: distances, height: hill.map(() => 0) } };
    expect(receive(placeOf({ site, stations: [open] }), open).field).toBeGreaterThan(3 * received.field);
  });
});
