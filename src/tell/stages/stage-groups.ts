import {
  chainFigures,
  detectorFigures,
  detectorModel,
  hearingFigures,
  phonesFigures,
  phonesModel,
  type ReceivedField,
  type Reception,
  receivedFigures,
  type StationReport,
  tankFigures,
} from '#engine';
import type { SetFile, UsedPart } from '#set-file';
import { formatFigure } from '#units';
import type { Group } from '../group.ts';
import { dialGroup } from './dial-group.ts';

/** Field strength of each station where the aerial stands, with its spread, noise and exposure. */
export function placeGroups(fields: readonly ReceivedField[]): readonly Group[] {
  return fields.map((f) => ({ heading: f.station.name, figures: receivedFigures(f), remarks: f.remarks }));
}

/** Coil, capacitor, losses, dial and sharpness, where the dial stands for each station. */
export function tankGroups({ receiver: { tank } }: Reception, reports: readonly StationReport[]): readonly Group[] {
  const stations = reports.map((report) => {
    const angle = report.heard?.at.angle ?? tank.rotation / 2;
    const own = chainFigures(report).filter((x) => x.name.startsWith('tank.') || x.name.startsWith('dial.'));
    return {
      heading: report.station,
      figures: [...tankFigures(tank, report.signal.received.station.frequency, angle), ...own],
      remarks: tank.remarks,
    };
  });
  return [dialGroup(tank), ...stations];
}

/** What the detector is at rest, and how it turns radio into audio. */
export function detectorGroups({ detector }: Pick<SetFile, 'detector'>, parts: readonly UsedPart[]): readonly Group[] {
  const model = detectorModel(detector);
  return [{ heading: model.method, figures: detectorFigures(model), remarks: [...model.remarks, ...partRemarks(parts, 'detector')] }];
}

/** Audio network and earpiece. */
export function phonesGroups({ phones }: Pick<SetFile, 'phones'>, parts: readonly UsedPart[]): readonly Group[] {
  const model = phonesModel(phones);
  return [{ heading: phones.earpiece.name, figures: phonesFigures(model), remarks: [...model.remarks, ...partRemarks(parts, 'phones')] }];
}

/** What is heard of each station: headroom by band, loudness, intelligibility. */
export function earGroups(reports: readonly StationReport[]): readonly Group[] {
  return reports.map((report) => ({
    heading: report.station,
    figures: report.heard ? hearingFigures(report.heard.evaluation.hearing) : chainFigures(report),
    remarks: report.heard ? [] : ['The dial does not reach this station.'],
  }));
}

/** Where the values of named parts are from, and how far they may be out. */
function partRemarks(parts: readonly UsedPart[], section: string): string[] {
  return parts
    .filter((p) => p.path.startsWith(section))
    .map((p) => {
      const bands = p.band.map((b) => `${b.key} ${formatFigure(b.low, b.unit || '1', 2)} to ${formatFigure(b.high, b.unit || '1', 2)}`);
      return `${p.title} (${p.name}). ${p.source}${bands.length > 0 ? ` Likely: ${bands.join(', ')}.` : ''}`;
    });
}
