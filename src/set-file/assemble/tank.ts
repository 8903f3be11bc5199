import type * as z from 'zod/mini';
import type { Metal, TankDescription } from '#engine';
import type { wireForm } from '../forms/drawer-form.ts';
import { type capacitorForm, JOINTS, SURFACES, type TankForm } from '../forms/tank-form.ts';

/** Pitch by the length of the winding, or as given. */
export function pitchOf(winding: {
  readonly pitch?: number | undefined;
  readonly length?: number | undefined;
  readonly turns: number;
}): number | undefined {
  return winding.pitch ?? (winding.length === undefined ? undefined : winding.length / winding.turns);
}

type CouplingForm = TankForm['detectorCoupling'];

function assembleCoupling(form: CouplingForm): TankDescription['detectorCoupling'] {
  if (form === 'direct') return { kind: 'direct' };
  if (form.kind !== 'link') return form;
  const { pitch: _, length: __, ...rest } = form;
  return { ...rest, pitch: pitchOf(form) ?? form.wireDiameter };
}

export function surface(given: keyof typeof SURFACES | number): number {
  return typeof given === 'string' ? SURFACES[given] : given;
}

/** The tank for the engine; the checks have made sure that wire and pitch are there. */
export function assembleTank(form: TankForm): TankDescription {
  const { coil, aerialCoupling, detectorReturn, joints } = form;
  return {
    coil:
      coil.kind === 'electrical'
        ? coil
        : {
            kind: 'geometry',
            turns: coil.turns,
            innerDiameter: coil.innerDiameter,
            wireDiameter: coil.wireDiameter!,
            pitch: pitchOf(coil)!,
            metal: coil.metal,
            surfaceFactor: surface(coil.surfaceFactor),
            leadLength: coil.leadLength,
            ...(coil.former && { former: coil.former }),
          },
    capacitor: assembleCapacitor(form.capacitor),
    wiring: form.wiring,
    joints: { count: joints.count, resistance: typeof joints.resistance === 'string' ? JOINTS[joints.resistance] : joints.resistance },
    strayCapacitance: form.strayCapacitance,
    ...(aerialCoupling !== undefined && { aerialCoupling: assembleCoupling(aerialCoupling) }),
    detectorCoupling: assembleCoupling(form.detectorCoupling),
    ...(detectorReturn !== undefined && { detectorReturn }),
  };
}

export function assembleCapacitor(form: z.core.output<typeof capacitorForm>): TankDescription['capacitor'] {
  return { ...form, law: typeof form.law === 'string' ? { kind: form.law } : form.law } as TankDescription['capacitor'];
}

/** A wire of the library. */
export interface WireOnShelf {
  readonly wireDiameter: number;
  readonly metal: Metal;
  readonly surfaceFactor: number;
}

export function assembleWire(form: z.core.output<typeof wireForm>): WireOnShelf {
  return { ...form, surfaceFactor: surface(form.surfaceFactor) };
}
