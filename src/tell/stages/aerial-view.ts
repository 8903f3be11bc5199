import {
  type AerialModel,
  aerialModel,
  C,
  type Place,
  type ReceivedField,
  receiveAll,
  type SeparateAerial,
  type WireAerial,
  type WiresDescription,
  wireAerial,
} from '#engine';

/** An aerial at a place as one looks at it: over which band, toward which stations, and at which station's frequency. */
export interface AerialView {
  /** seen through its feeder */
  readonly model: AerialModel;
  /** of one made of wires: these, and what they do without a feeder */
  readonly wires: { readonly description: WiresDescription; readonly bare: WireAerial } | null;
  /** [Hz] */
  readonly range: { readonly from: number; readonly to: number };
  readonly fields: readonly ReceivedField[];
  /** the stations looked at */
  readonly chosen: readonly ReceivedField[];
  /** the one whose frequency the pattern is for */
  readonly at: ReceivedField;
}

/** @param chosen - stations of the place, by index */
export function aerialView(place: Place, aerial: SeparateAerial, chosen: readonly number[]): AerialView {
  const fields = receiveAll(place);
  const looked = chosen.map((k) => fields[k]!);
  const range = bandOf(place);
  const model = aerialModel(aerial);
  if (aerial.kind !== 'wires') return { model, wires: null, range, fields, chosen: looked, at: looked[0]! };
  const { feeder, ...description } = aerial;
  const bare = feeder ? wireAerial(description) : (model as WireAerial);
  return { model, wires: { description, bare }, range, fields, chosen: looked, at: bestHeard(bare, looked) };
}

/** The FM band where all stations are in it, else what they cover and a little more [Hz]. */
function bandOf({ stations }: Place): { readonly from: number; readonly to: number } {
  const all = stations.map((s) => s.frequency);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return low >= 87.5e6 && high <= 108e6 ? { from: 87.5e6, to: 108e6 } : { from: 0.95 * low, to: 1.05 * high };
}

/** The station that the aerial makes most of: the one it was put up for, as a rule. */
function bestHeard(bare: WireAerial, fields: readonly ReceivedField[]): ReceivedField {
  const emf = (f: ReceivedField): number => {
    const { horizontal, vertical } = bare.at(f.station.frequency, arrivalOf(f));
    return Math.hypot(C.abs(horizontal) * f.horizontal, C.abs(vertical) * f.vertical);
  };
  return fields.reduce((best, f) => (emf(f) > emf(best) ? f : best));
}

export const arrivalOf = ({ bearing, elevation }: ReceivedField) => ({ azimuth: bearing, elevation });
