import { type Arriving, HEARING_CAUTION, hearingCautionDue, type ListeningMeasures, playedLevel } from '#engine';
import { scaleSentence } from '#tell';
import { formatFigure } from '#units';
import { BadFile } from '../bad-file.ts';
import { bold } from '../colour.ts';
import { STOPPED } from '../exit-codes.ts';
import { printJson } from '../figures-json.ts';
import { groupsJson, groupsText } from '../group.ts';
import { checked, load } from '../load.ts';
import { Stop } from '../stop.ts';
import { wrap } from '../table.ts';
import { calibrate } from './calibrate.ts';
import { followed, soundLevelOf, soundOfSet } from './figures.ts';
import { measure } from './measure.ts';
import { type ListenOptions, type Plan, readPlan } from './options.ts';
import { writePass } from './picture.ts';
import { type Prepared, prepare } from './prepare.ts';
import { type Rendered, render } from './render.ts';
import { writeSpectrum } from './spectrum.ts';

const WIDTH = 96;

/** `earshot listen`: what the built set will give, as a sound file. */
export async function listenCommand(file: string | undefined, options: ListenOptions): Promise<void> {
  const plan = readPlan(options);
  if (options.calibrate) {
    calibrate(plan, options.json === true);
    return;
  }
  if (file === undefined)
    throw new BadFile('listen: there is no set file\n  Give one, or --calibrate for the tone by which playback is set.');
  const loaded = load(file);
  const stop = new Stop();
  try {
    const prepared = checked(loaded, () => prepare(loaded, plan, options));
    if ('sentence' in prepared) {
      if (options.json) printJson({ file, name: loaded.name, reached: false, sentence: prepared.sentence });
      else console.log(wrap(`${prepared.sentence} Nothing is written.`, WIDTH));
      return;
    }
    const rendered = await render(loaded.name, prepared, plan, stop, options.spectrum !== undefined);
    console.error(`written: ${plan.out}`);
    if (rendered.stopped) {
      process.exitCode = STOPPED;
      console.error(`stopped: the file is whole and holds the ${rendered.seconds.toFixed(2)} s that were made of ${plan.seconds} s`);
    }
    if (options.picture !== undefined) writePass(options.picture, loaded.name, prepared, rendered);
    if (options.spectrum !== undefined && rendered.kept) writeSpectrum(options.spectrum, loaded.name, prepared, rendered.kept);
    const measures = options.measure && !rendered.stopped ? await measure(prepared, plan, stop) : null;
    if (options.measure && !measures) {
      process.exitCode = STOPPED;
      console.error('stopped: nothing is measured');
    }
    tell(file, loaded.name, prepared, plan, rendered, measures, options);
  } finally {
    stop.release();
  }
}

function tell(
  file: string,
  name: string,
  prepared: Prepared,
  plan: Plan,
  rendered: Rendered,
  measures: ListeningMeasures | null,
  options: ListenOptions,
): void {
  const { station, place, programme, remarks } = prepared;
  const groups = [
    {
      heading: `${station.name}, ${formatFigure(station.frequency, 'Hz')}, at ${place.name}: ${name}`,
      figures: soundOfSet(prepared, plan, rendered),
      remarks: [`Programme: ${programme.words}.`, ...remarks, ...neighbourRemarks(prepared), ...soundRemarks(plan, rendered)],
    },
    ...(measures
      ? [{ heading: 'measured with test programmes, on the coupler of the earpiece', figures: measures.figures(), remarks: [] }]
      : []),
    { heading: 'how the set was followed', figures: followed(prepared), remarks: [] },
  ];
  const cautions = hearingCautions(plan, rendered);
  if (options.working !== undefined) console.log(groupsText(groups, options.working));
  else if (options.json) printJson(json(file, name, prepared, plan, rendered, { groups: groupsJson(groups), cautions }));
  else {
    console.log(groupsText(groups.slice(0, -1), undefined));
    if (cautions.length > 0) console.log(`\n${bold('Cautions')}\n${cautions.map((c) => wrap(`- ${c}`, WIDTH, '  ')).join('\n')}`);
  }
}

function json(file: string, name: string, prepared: Prepared, plan: Plan, rendered: Rendered, told: object): Record<string, unknown> {
  const { station, place, programme, dialled } = prepared;
  const { seconds, written, stopped, pass } = rendered;
  return {
    file,
    name,
    place: place.name,
    station: station.name,
    reached: true,
    wav: { path: plan.out, seconds, encoding: plan.encoding, frames: written.frames, clipped: written.clipped, stopped },
    programme: programme.words,
    scale: scaleSentence(plan.scale),
    ...told,
    ...(dialled.turn && pass
      ? {
          turn: {
            angle: { unit: 'rad', method: 'turned at a constant rate', values: pass.map((p) => p.angle) },
            level: {
              unit: 'dB SPL',
              method: programme.sent.tone === null ? 'rms of 50 ms' : 'line of the tone in 50 ms',
              values: pass.map(soundLevelOf),
            },
          },
        }
      : {}),
  };
}

/** Who else is in the sound, and who is not. */
function neighbourRemarks({ listening, dialled, reception, others }: Prepared): string[] {
  const strength = (level: number): string => `${level > 0 ? '+' : ''}${level.toFixed(0)} dB`;
  const besides = listening.heard.filter((h) => h.station !== dialled.station);
  const names = (list: readonly Arriving[]): string => list.map((h) => `${h.name} (${strength(h.level)})`).join(', ');
  const out: string[] = [];
  if (besides.length > 0)
    out.push(`Also in the sound, by their strength at the detector beside this station: ${names(besides)}; they send: ${others}.`);
  if (listening.leftOut.length > 0) out.push(`Too far off in frequency to be followed, left out: ${names(listening.leftOut)}.`);
  if (reception.signals.length === 1) out.push('No other station is in the sound.');
  return out;
}

function soundRemarks(plan: Plan, { written }: Rendered): string[] {
  const out = [scaleSentence(plan.scale)];
  if (plan.without.size > 0) out.push(`Left out: ${[...plan.without].join(', ')}.`);
  if (written.clipped > 0)
    out.push(`${written.clipped} samples were beyond full scale and are written as full scale: give a lower --gain.`);
  return out;
}

/** A file is as loud as it is played; at its calibration it may harm. */
function hearingCautions(plan: Plan, { all }: Rendered): string[] {
  if (all.loudestA === null || !hearingCautionDue(plan.scale, all.loudestA)) return [];
  const level = playedLevel(plan.scale, all.loudestA).toFixed(0);
  return [
    `Played at its calibration this sound reaches ${level} dB(A), over ${HEARING_CAUTION}: begin with the volume down, and listen briefly.`,
  ];
}
