import { expect, test } from 'vitest';
import { capacitanceLoss, detectorModel, EARTH, Network, powers } from '#engine';
import { CHANNEL, SCHOTTKY } from './cycle.ts';

test('rival: power that reaches the law past capacitance and series resistance, by solving the network, is 1/(1 + w²C²Rs R)', () => {
  const description = { ...SCHOTTKY, seriesResistance: 20 };
  const model = detectorModel(description);
  for (const frequency of [100e6, 915e6]) {
    const network = new Network([
      { kind: 'voltage', name: 'port', a: 'top', b: EARTH, re: 1, im: 0 },
      { kind: 'resistor', name: 'law', a: 'top', b: EARTH, resistance: model.zeroBiasResistance },
      ...model.elements('top'),
    ]);
    const taken = new Map(powers(network, network.solveAt(frequency)!, frequency).map((p) => [p.name, p.watts]));
    const law = taken.get('law')!;
    expect(law / (law + taken.get('detector resistance')!)).toBeCloseTo(
      capacitanceLoss(frequency, 1.4e-13, 20, model.zeroBiasResistance),
      4,
    );
  }
});
test('limit: no capacitance, no elements; no series resistance, the capacitor alone', () => {
  expect(detectorModel({ ...SCHOTTKY, junctionCapacitance: 0 }).elements('top')).toEqual([]);
  expect(detectorModel(SCHOTTKY).elements('top')).toEqual([
    { kind: 'capacitor', name: 'detector capacitance', a: 'top', b: EARTH, capacitance: 1.4e-13 },
  ]);
});
test('limit: a gate adds its capacitance by the square of its share of the RF, as its energy does', () => {
  const seen = (gateDrive: number) => {
    const [c] = detectorModel({ ...CHANNEL, gateDrive }).elements('top');
    return c?.kind === 'capacitor' ? c.capacitance : 0;
  };
  expect(seen(0)).toBeCloseTo(3e-12, 20);
  expect(seen(1)).toBeCloseTo(5e-12, 20);
  expect(seen(-0.5)).toBeCloseTo(3.5e-12, 20);
});
