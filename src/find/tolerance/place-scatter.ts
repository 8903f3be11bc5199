import type { Place, ReceivedField, SetDescription } from '#engine';
import type { Draft, Scatter } from './draft.ts';
import { USUAL_HAND } from './hand-scatter.ts';

/** What place, earpiece and ear leave uncertain: the spreads that `verdict` makes odds of, and that of hearing. */
export function placeScatter(
  place: Place,
  fields: readonly ReceivedField[],
  set: SetDescription,
  hearing = USUAL_HAND.hearing,
): readonly Scatter[] {
  const decibels = (sd: number): string => `${Number(sd.toFixed(1))} dB`;
  const { earpiece } = set.phones;
  return [
    ...place.stations.map(
      ({ name }, k): Scatter => ({
        key: `place.stations.${k}.field`,
        label: `field of ${name}`,
        extent: decibels(fields[k]!.spread),
        ofTheSet: false,
        apply: (draft, z) => ({ ...draft, fields: draft.fields.map((f, i) => (i === k ? f + fields[k]!.spread * z : f)) }),
      }),
    ),
    {
      key: 'phones.earpiece.sensitivity',
      label: 'sensitivity of the earpiece',
      extent: decibels(earpiece.sensitivitySpread),
      ofTheSet: true,
      apply: (draft, z) => {
        const { phones } = draft.set;
        const sensitivity = phones.earpiece.sensitivity.map((p) => ({ ...p, level: p.level + earpiece.sensitivitySpread * z }));
        return { ...draft, set: { ...draft.set, phones: { ...phones, earpiece: { ...phones.earpiece, sensitivity } } } };
      },
    },
    {
      key: 'ear.hearingLevel',
      label: 'hearing of who listens',
      extent: `${decibels(hearing)} between ears that count as normal (of that order in ISO 28961, from memory)`,
      ofTheSet: false,
      apply: (draft, z) => hears(draft, hearing * z),
    },
  ];
}

/** The lowest and highest tone of an audiogram [Hz]. */
const AUDIOGRAM = [125, 8000] as const;

function hears(draft: Draft, worse: number): Draft {
  const { ear } = draft.listener;
  const levels = ear.hearingLevel.length > 0 ? ear.hearingLevel : AUDIOGRAM.map((frequency) => ({ frequency, level: 0 }));
  return {
    ...draft,
    listener: { ...draft.listener, ear: { ...ear, hearingLevel: levels.map((p) => ({ ...p, level: p.level + worse })) } },
  };
}
