import type * as z from 'zod/mini';
import { writeForPeople } from '#units';
import { pitchOf } from '../assemble/tank.ts';
import type { capacitorForm, TankForm } from '../forms/tank-form.ts';
import type { Path } from '../json/positions.ts';
import type { Report } from '../problem.ts';
import { mustAscend } from './ascending.ts';

type Geometry = Extract<TankForm['coil'], { kind: 'geometry' }>;
type Link = Extract<TankForm['detectorCoupling'], { kind: 'link' }>;

const mm = (x: number): string => writeForPeople(x, 'length');
/** Lengths written in inches may miss each other by a bit. */
const HAIR = 1 - 1e-6;

/** Finds what cannot be together in a tank. A tank that merely does not tune to the band is not found here: the dial says so. */
export function checkTank(form: TankForm, aerialIsCoil: boolean, report: Report): void {
  const { coil } = form;
  if (coil.kind === 'geometry') checkWinding(coil, report);
  checkCapacitor(form.capacitor, ['tank', 'capacitor'], report);
  if (aerialIsCoil) {
    if (coil.kind === 'electrical')
      report(
        ['tank', 'coil', 'kind'],
        '"electrical"',
        'a coil that is the aerial must be given by its shape',
        'Give its geometry, or describe another aerial.',
      );
    if (form.aerialCoupling !== undefined)
      report(
        ['tank', 'aerialCoupling'],
        kindOf(form.aerialCoupling),
        'the coil itself is the aerial',
        'Leave it out, or describe another aerial.',
      );
  } else if (form.aerialCoupling === undefined)
    report(
      ['tank', 'aerialCoupling'],
      'nothing',
      'the aerial must join the tank somewhere',
      'Write "direct", or { "kind": "tap", "turns": 1 }, or a link or series-capacitor.',
    );
  else checkCoupling(form.aerialCoupling, ['tank', 'aerialCoupling'], form, report);
  checkCoupling(form.detectorCoupling, ['tank', 'detectorCoupling'], form, report);
  if (kindOf(form.detectorCoupling) === 'series-capacitor' && form.detectorReturn === undefined)
    report(
      ['tank', 'detectorReturn'],
      'nothing',
      'a series capacitor blocks the direct current of the detector',
      'Give a resistance such as "470 k", or join the detector directly or to a tap.',
    );
}

function kindOf(coupling: TankForm['detectorCoupling']): string {
  return coupling === 'direct' ? 'direct' : coupling.kind;
}

function checkWinding(coil: Geometry, report: Report): void {
  const path = ['tank', 'coil'];
  const { wireDiameter, innerDiameter } = coil;
  if (wireDiameter === undefined)
    report(
      [...path, 'wireDiameter'],
      'nothing',
      'it is missing',
      'Give it, such as "1 mm" or "18 AWG", or name a wire: "wire": { "part": ... }.',
    );
  if (coil.pitch !== undefined && coil.length !== undefined)
    report([...path, 'length'], mm(coil.length), 'the pitch is given as well', 'Give one of the two.');
  if (pitchOf(coil) === undefined)
    report([...path, 'pitch'], 'nothing', 'it is missing', 'Give the pitch, such as "2 mm", or the length of the winding.');
  if (wireDiameter === undefined) return;
  if (wireDiameter > innerDiameter)
    report(
      [...path, 'wireDiameter'],
      mm(wireDiameter),
      `it cannot be bent around ${mm(innerDiameter)}`,
      'Give a wire no thicker than the former.',
    );
  mustLieSideBySide(coil, wireDiameter, path, report);
}

/** Turns cannot lie in each other. */
function mustLieSideBySide(winding: Geometry | Link, wireDiameter: number, path: Path, report: Report): void {
  const pitch = pitchOf(winding);
  if (pitch === undefined || winding.turns <= 1 || pitch >= wireDiameter * HAIR) return;
  if (winding.pitch !== undefined)
    report(
      [...path, 'pitch'],
      mm(winding.pitch),
      `turns of ${mm(wireDiameter)} wire would lie in each other`,
      'Give at least the wire diameter.',
    );
  else
    report(
      [...path, 'length'],
      mm(winding.length!),
      `${winding.turns} turns of ${mm(wireDiameter)} wire do not fit into it side by side`,
      `Give ${mm(winding.turns * wireDiameter)} or more, or a thinner wire.`,
    );
}

function checkCoupling(coupling: TankForm['detectorCoupling'], path: Path, tank: TankForm, report: Report): void {
  if (coupling === 'direct') return;
  const { coil } = tank;
  if (coupling.kind === 'tap' && coupling.turns > coil.turns)
    report(
      [...path, 'turns'],
      writeForPeople(coupling.turns, 'turns'),
      `the tap lies outside the coil, which has ${writeForPeople(coil.turns, 'turns')} turns`,
      'Count from the earthed end, at most to the top.',
    );
  if (coupling.kind !== 'link') return;
  if (coupling.pitch !== undefined && coupling.length !== undefined)
    report([...path, 'length'], mm(coupling.length), 'the pitch is given as well', 'Give one of the two.');
  if (coupling.wireDiameter > coupling.innerDiameter)
    report(
      [...path, 'wireDiameter'],
      mm(coupling.wireDiameter),
      `it cannot be bent around ${mm(coupling.innerDiameter)}`,
      'Give a wire no thicker than the former.',
    );
  mustLieSideBySide(coupling, coupling.wireDiameter, path, report);
  if (coil.kind === 'electrical')
    report(
      [...path, 'kind'],
      '"link"',
      'its coupling comes from the shapes of both windings, and the coil is given by values',
      'Give the coil by geometry, or use a tap.',
    );
}

/** Also used for parts of the library, which stand elsewhere. */
export function checkCapacitor(form: z.core.output<typeof capacitorForm>, path: Path, report: Report): void {
  const farads = (x: number): string => writeForPeople(x, 'capacitance');
  if (form.maximum <= form.minimum)
    report(
      [...path, 'maximum'],
      farads(form.maximum),
      `it is not above the minimum of ${farads(form.minimum)}`,
      'Exchange the two, or correct one.',
    );
  const { law } = form;
  if (typeof law === 'string' || law.kind !== 'table') return;
  const { angle, capacitance } = law;
  const list = [...path, 'law', 'angle'];
  if (angle.length < 2) report(list, `${angle.length} points`, 'a table needs two points or more', 'Give the ends at least.');
  else if (angle.length !== capacitance.length)
    report(
      [...path, 'law', 'capacitance'],
      `${angle.length} angles and ${capacitance.length} capacitances`,
      'each point needs both',
      'Give a capacitance for every angle.',
    );
  else mustAscend(angle, 'angle', (i) => [...list, i], report);
}
