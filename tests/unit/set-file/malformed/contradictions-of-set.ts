import { changed, type Row } from './row.ts';

const coilByValues = { kind: 'electrical', inductance: '120 nH', q: 200, frequency: '100 MHz', turns: 5 };
const link = { kind: 'link', turns: 1, innerDiameter: '12 mm', wireDiameter: '1 mm' };
const coilAerial = { kind: 'coil', axis: 'vertical' };
const given = { kind: 'electrical', impedance: '75 ohm', orientation: 'vertical' };
const loop = { kind: 'loop', diameter: '10 cm', turns: 5, wireDiameter: '2 mm', windingLength: '5 mm', axis: 'vertical' };
const law = (angle: string[], capacitance: string[]) => ({ 'tank.capacitor.law': { kind: 'table', angle, capacitance } });
const measured = (voltage: unknown[], current: unknown[]) => ({ detector: { kind: 'table', voltage, current } });
const tight = {
  ratio: '20:1',
  primaryInductance: '2 H',
  primaryResistance: '500 ohm',
  secondaryResistance: '1 ohm',
  leakageInductance: '3 H',
};
const inCoil = '{\n      "kind": "geometry"';

export const contradictionsOfSet: readonly Row[] = [
  // tank
  changed(
    'a tap outside the coil',
    { 'tank.detectorCoupling.turns': '7 1/4' },
    'tank.detectorCoupling.turns',
    '"7 1/4"',
    /outside the coil, which has 5.5 turns/,
    /earthed end/,
  ),
  changed(
    'wire thicker than the pitch',
    { 'tank.coil.wireDiameter': '2.2 mm' },
    'tank.coil.pitch',
    '"2 mm"',
    /lie in each other/,
    /wire diameter/,
  ),
  changed(
    'a winding too short',
    { 'tank.coil.pitch': undefined, 'tank.coil.length': '5 mm' },
    'tank.coil.length',
    '"5 mm"',
    /do not fit/,
    /5\.5 mm or more/,
  ),
  changed('pitch and length', { 'tank.coil.length': '11 mm' }, 'tank.coil.length', '"11 mm"', /given as well/, /one of the two/),
  changed('neither pitch nor length', { 'tank.coil.pitch': undefined }, 'tank.coil.pitch', inCoil, /missing/, /length of the winding/),
  changed('no wire', { 'tank.coil.wireDiameter': undefined }, 'tank.coil.wireDiameter', inCoil, /missing/, /"18 AWG"/),
  changed(
    'wire that cannot be bent',
    { 'tank.coil.wireDiameter': '13 mm', 'tank.coil.pitch': '20 mm' },
    'tank.coil.wireDiameter',
    '"13 mm"',
    /cannot be bent/,
    /former/,
  ),
  changed(
    'a capacitor upside down',
    { 'tank.capacitor': { minimum: '20 pF', maximum: '4 pF' } },
    'tank.capacitor.maximum',
    '"4 pF"',
    /not above the minimum of 20 pF/,
    /Exchange/,
  ),
  changed(
    'a dial that turns back',
    law(['0°', '90°', '60°'], ['4 pF', '9 pF', '20 pF']),
    'tank.capacitor.law.angle[2]',
    '"60°"',
    /above the one before it, 90°/,
    /Sort/,
  ),
  changed(
    'a dial half given',
    law(['0°', '90°'], ['4 pF']),
    'tank.capacitor.law.capacitance',
    '[\n          "4 pF"',
    /each point/,
    /every angle/,
  ),
  changed('a dial of one point', law(['0°'], ['4 pF']), 'tank.capacitor.law.angle', '[\n          "0°"', /two points/, /ends/),
  changed('no way into the tank', { 'tank.aerialCoupling': undefined }, 'tank.aerialCoupling', '{\n    "coil"', /must join/, /"direct"/),
  changed(
    'a link to a coil that is the aerial',
    { aerial: coilAerial, 'tank.aerialCoupling': link },
    'tank.aerialCoupling',
    '{\n      "kind": "link"',
    /coil itself is the aerial/,
    /Leave it out/,
  ),
  changed(
    'a coil by values as the aerial',
    { aerial: coilAerial, 'tank.aerialCoupling': undefined, 'tank.coil': coilByValues },
    'tank.coil.kind',
    '"electrical"',
    /by its shape/,
    /geometry/,
  ),
  changed(
    'a link to a coil by values',
    { 'tank.coil': coilByValues, 'tank.aerialCoupling': link },
    'tank.aerialCoupling.kind',
    '"link"',
    /given by values/,
    /tap/,
  ),
  changed(
    'a link wound into itself',
    { 'tank.aerialCoupling': { ...link, turns: 3, pitch: '0.5 mm' } },
    'tank.aerialCoupling.pitch',
    '"0.5 mm"',
    /lie in each other/,
    /wire diameter/,
  ),
  changed(
    'direct current with no way back',
    { 'tank.detectorCoupling': { kind: 'series-capacitor', capacitance: '2 pF' } },
    'tank.detectorReturn',
    '{\n    "coil"',
    /blocks the direct current/,
    /470 k/,
  ),
  // aerial
  changed(
    'a feeder to a coil in the set',
    { aerial: { ...coilAerial, feeder: { length: '3 m' } }, 'tank.aerialCoupling': undefined },
    'aerial.feeder',
    '{\n      "length"',
    /stands in the set/,
    /feeder out/,
  ),
  changed('a rod thicker than long', { 'aerial.diameter': '0.4 m' }, 'aerial.diameter', '"0.4 m"', /no wire at that thickness/, /fifth/),
  changed(
    'gain and effective length',
    { aerial: { ...given, gain: '2 dBi', effectiveLength: '1 m' } },
    'aerial.effectiveLength',
    '"1 m"',
    /gain is given as well/,
    /one of the two/,
  ),
  changed('an aerial that picks up nothing', { aerial: given }, 'aerial.gain', '{\n    "kind": "electrical"', /how much/, /dBi/),
  changed('a gain over nothing', { aerial: { ...given, gain: '2 dB' } }, 'aerial.gain', '"2 dB"', /over what/, /dBi/),
  changed(
    'a front without a bearing',
    { aerial: { ...given, gain: '2 dBi', frontToBack: '10 dB' } },
    'aerial.frontToBack',
    '"10 dB"',
    /no front/,
    /Leave it out/,
  ),
  changed('a loop wound too tight', { aerial: loop }, 'aerial.windingLength', '"5 mm"', /do not fit/, /10 mm or more/),
  changed(
    'a loop of wire too thick',
    { aerial: { ...loop, windingLength: '1 m', wireDiameter: '30 mm' } },
    'aerial.wireDiameter',
    '"30 mm"',
    /cannot be wound/,
    /quarter/,
  ),
  // detector
  changed(
    'a measured law that falls',
    {
      detector: {
        kind: 'table',
        points: [
          ['-0.1 V', '-1 uA'],
          ['-0.05 V', '-0.9 uA'],
          [0, 0],
          ['0.1 V', '9 uA'],
          ['0.2 V', '5 uA'],
        ],
      },
    },
    'detector.points[4][1]',
    '"5 uA"',
    /row 5 falls/,
    /again/,
  ),
  changed(
    'a measured law of four rows',
    measured(['-0.1 V', 0, '0.1 V', '0.2 V'], ['-1 uA', 0, '2 uA', '3 uA']),
    'detector.voltage[0]',
    '"-0.1 V"',
    /5 rows at least/,
    /10 mV/,
  ),
  changed(
    'a measured law of one side',
    measured([0, '0.1 V', '0.2 V', '0.3 V', '0.4 V'], [0, '1 uA', '2 uA', '3 uA', '4 uA']),
    'detector.voltage[0]',
    '0,\n',
    /both sides/,
    /other direction/,
  ),
  changed(
    'a detector that delivers power',
    measured(['-0.1 V', '-0.05 V', 0, '0.1 V', '0.2 V'], ['-1 uA', '-0.9 uA', '0.1 uA', '2 uA', '3 uA']),
    'detector.current[2]',
    '"0.1 uA"',
    /deliver power/,
    /offset/,
  ),
  changed('nothing measured', { detector: { kind: 'table' } }, 'detector.voltage', '{\n    "kind": "table"', /what was measured/, /csv/),
  changed(
    'measured twice',
    { detector: { kind: 'table', voltage: [0], current: [0], points: [[0, 0]] } },
    'detector.points',
    '[\n      [',
    /as well/,
    /one of the two/,
  ),
  changed(
    'a barrier without its exponent',
    { 'detector.energyGap': '0.69 eV' },
    'detector.temperatureExponent',
    '{\n    "kind": "junction"',
    /go together/,
    /both/,
  ),
  // phones and ear
  changed(
    'a transformer that couples nothing',
    { 'phones.transformer': tight },
    'phones.transformer.leakageInductance',
    '"3 H"',
    /nothing would be coupled/,
    /shorted/,
  ),
  changed(
    'a response out of order',
    {
      'phones.earpiece.sensitivity': [
        { frequency: '1 kHz', level: 98 },
        { frequency: '500 Hz', level: 90 },
      ],
    },
    'phones.earpiece.sensitivity[1].frequency',
    '"500 Hz"',
    /above the one before it, 1 kHz/,
    /Sort/,
  ),
  changed(
    'an audiogram out of order',
    {
      ear: {
        hearingLevel: [
          { frequency: '2 kHz', level: 10 },
          { frequency: '2 kHz', level: 20 },
        ],
      },
    },
    'ear.hearingLevel[1].frequency',
    '"2 kHz",\n        "level": 20',
    /above the one before it/,
    /Sort/,
  ),
  changed(
    'a room of one band',
    { ear: { room: { kind: 'bands', bands: [{ frequency: '1 kHz', level: 30 }] } } },
    'ear.room.bands',
    '[\n        {\n          "frequency": "1 kHz"',
    /too little/,
    /./,
  ),
];
