import { term } from '../../figure.ts';
import { freeSpaceLevel, landCurveField } from '../land-curves.ts';
import { nearness } from '../path.ts';
import { CLUTTER_HEIGHT, heightGainFactor, receivingHeightCorrection, seenClutter, shortUrbanPath } from '../receiving-height.ts';
import { freeSpaceStep, HORIZONTAL_SHARE, type MethodField, type Situation, type WorkedStep } from './method-field.ts';

const REC = 'ITU-R P.1546-6';

/**
 * Broadcast curves: the median of what was measured over ordinary land, 50 % of time and places.
 *
 * Nearer than 1 km each correction found at 1 km is drawn in to free space at 40 m, by the logarithm of the straight distance.
 */
export function broadcastCurvesMethod(situation: Situation): MethodField {
  const { station, site, path } = situation;
  const f = station.frequency;
  const near = nearness(path.distance, station.mastHeight - site.height);
  const distance = Math.max(path.distance, 1e3);
  const height = transmittingHeight(station.mastHeight, station.effectiveHeight ?? station.mastHeight, distance);
  const curve = landCurveField(distance, height, f);
  const shortPath = shortUrbanPath(distance, station.mastHeight, site.surroundings, f);
  // the open-country law counts from 10 m whatever the ray's slope
  const clutter = site.surroundings === 'open' ? 10 : seenClutter(CLUTTER_HEIGHT[site.surroundings], distance, height);
  const receiving = receivingHeightCorrection(site.height, site.surroundings, clutter, f);
  const drawnIn = near === 1 ? '' : ', found at 1 km and drawn in to free space at 40 m';
  const weight = term('w', 'share of it that applies so near', near, '1');
  const step = (name: string, label: string, decibels: number, clause: string, working: WorkedStep['working']): WorkedStep => ({
    name,
    label,
    decibels: near * decibels,
    source: `${REC} ${clause}${drawnIn}`,
    working,
  });
  const atFrequency = term('f', 'carrier', f, 'Hz');
  const steps: WorkedStep[] = [
    freeSpaceStep(situation),
    step(
      'landCurve',
      'land, by the 100 MHz curve',
      curve.at100MHz - freeSpaceLevel(distance / 1e3),
      'Annex 5 secs 3, 4; equations of P.1546-1 sec. 16',
      () => ({
        formula: 'w (E_curve - (106.9 - 20 log10 d))',
        terms: [
          term('E_curve', '1 kW e.r.p., receiving aerial 10 m high', curve.at100MHz, 'dB re 1 uV/m'),
          term('d', 'distance', distance / 1e3, 'km'),
          term('h1', 'transmitting height', height, 'm'),
          weight,
        ],
        source: `${REC} Annex 5 secs 3, 4; equations of P.1546-1 Annex 5 sec. 16`,
        holds: '1 to 1000 km, 50 % of time and places; h1 below 37.5 m reads 0.2 to 0.5 dB high',
      }),
    ),
    step('frequency', 'carrier away from 100 MHz', curve.frequencyStep, 'Annex 5 sec. 6', () => ({
      formula: 'w (E_600 - E_100) log(f/100)/log(600/100)',
      terms: [atFrequency, weight],
      source: `${REC} Annex 5 sec. 6`,
      holds: '100 to 600 MHz; carried on below to 30 MHz',
    })),
  ];
  if (site.surroundings !== 'open') {
    steps.push(
      step('shortPath', 'short path over roofs', shortPath, 'Annex 5 sec. 10', () => ({
        formula: 'w (-3.3 log10 f (1 - 0.85 log10 d)(1 - 0.46 log10(1 + h_a - R)))',
        terms: [
          atFrequency,
          term('d', 'distance', distance / 1e3, 'km'),
          term('h_a', 'mast aerial above ground', station.mastHeight, 'm'),
          term('R', 'height of the roofs', CLUTTER_HEIGHT[site.surroundings], 'm'),
          weight,
        ],
        source: `${REC} Annex 5 sec. 10`,
        holds: 'below 15 km, level and evenly built-up ground, masts up to 150 m over the roofs',
      })),
    );
  }
  steps.push(
    step('receivingHeight', 'receiving aerial not 10 m high', receiving, 'Annex 5 sec. 9', () => ({
      formula:
        site.surroundings === 'open'
          ? 'w K log10(h2/10)'
          : "w (6.03 - J(0.0108 sqrt(f (R' - h2) arctan((R' - h2)/27)))) below the roofs, w K log10(h2/R') above",
      terms: [
        term('h2', 'receiving aerial above ground', site.height, 'm'),
        term("R'", 'height of what stands around, as the ray sees it', clutter, 'm'),
        term('K', '3.2 + 6.2 log10 f', heightGainFactor(f), 'dB'),
        atFrequency,
        weight,
      ],
      source: `${REC} Annex 5 sec. 9`,
      holds: 'aerials 1 m high and more; below, carried down to 0.3 m',
    })),
  );
  const excess = steps.reduce((sum, s) => sum + s.decibels, 0) - steps[0]!.decibels;
  if (excess > 0) {
    steps.push({
      name: 'cap',
      label: 'no more than free space',
      decibels: -excess,
      source: `${REC} Annex 5 sec. 2`,
      working: () => ({ formula: '-(sum of the corrections)', terms: [], source: `${REC} Annex 5 sec. 2` }),
    });
  }
  return {
    method: 'broadcast-curves',
    steps,
    horizontalShare: HORIZONTAL_SHARE[station.polarisation],
    elevation: path.elevation,
    nearness: near,
    remarks: remarksOn(situation),
  };
}

/**
 * Height that chooses the curve [m].
 *
 * h1 = h_a up to 3 km; h_a + (h_eff - h_a)(d - 3)/12 to 15 km; h_eff beyond.
 *
 * Source: ITU-R P.1546-6 Annex 5 sections 3.1.1, 3.2.
 */
function transmittingHeight(mast: number, effective: number, distance: number): number {
  const share = Math.max(0, Math.min(1, (distance / 1e3 - 3) / 12));
  return mast + (effective - mast) * share;
}

function remarksOn({ station, site, path }: Situation): string[] {
  const remarks: string[] = [];
  if (path.distance < 1e3) remarks.push('Nearer than 1 km the curves end: their loss is drawn in to free space at 40 m.');
  else remarks.push('Hills are in the curves only on average: a terrain profile would say more.');
  if (station.frequency < 87e6) remarks.push('The curves are drawn for 100 MHz and above and are carried on downwards in frequency.');
  if (station.frequency > 300e6) remarks.push('Far above the FM band only the 100 and 600 MHz curves are used.');
  if (site.height < 1) remarks.push('The curves know no aerial lower than 1 m above ground: the figure is carried on downwards.');
  return remarks;
}
