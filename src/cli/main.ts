import { readFileSync } from 'node:fs';
import { Command, CommanderError, Option } from 'commander';
import { BadFile } from './bad-file.ts';
import { BAD_FILE, FAULT, USAGE } from './exit-codes.ts';
import { hearCommand } from './hear.ts';
import { readPort } from './read-port.ts';
import { STAGES, type StageOptions, stageCommand } from './stage.ts';

const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string };

const program = new Command('earshot')
  .description('From mast to ear: will a radio that has no battery be heard here, and what should change?')
  .version(version)
  .showHelpAfterError('(earshot --help says more)')
  .addHelpText(
    'after',
    `
Exit codes: 0 done, whatever the answer (a set that hears nothing is an answer); 1 a fault in the program; 2 the command line was
not understood; 3 a file could not be read or says something that cannot be; 130 stopped by Ctrl-C: what was made by then is
in its file, finished.
Colours appear on a terminal only; NO_COLOR turns them off.`,
  )
  .exitOverride();

program
  .command('hear')
  .description('every station of the place through the set: ladder, verdict, and what would help most')
  .argument('<file>', 'set file (JSON)')
  .option('--station <name>', 'this station only')
  .option('--json', 'one JSON object; each figure with value, unit and method')
  .option('--working <name>', 'how a figure came about: formula, numbers, source')
  .option('--no-advice', 'do not try changes')
  .action(hearCommand);

for (const stage of STAGES) {
  const command = program
    .command(stage.name)
    .description(stage.description)
    .argument('<file>', 'set file (JSON)')
    .option('--station <name>', 'this station only')
    .option('--json', 'one JSON object; each figure with value, unit and method')
    .option('--working <name>', 'how a figure came about: formula, numbers, source')
    .action((file: string, options: StageOptions) => stageCommand(stage, file, options));
  for (const [flags, what] of stage.options ?? []) command.option(flags, what);
}

program
  .command('listen')
  .description('what the set will give to hear, as a sound file: programme, neighbours, distortion, room, limit of hearing')
  .argument('[file]', 'set file (JSON); none with --calibrate')
  .requiredOption('-o, --out <wav>', 'sound file to be written')
  .option('--station <name>', 'the wanted one; where not given the one nearest to --dial, or the one heard best')
  .option('--dial <where>', 'best, a frequency ("98.2 MHz") or an angle ("41°"); best where not given')
  .option('--seconds <time>', 'length of the sound; 10 s where not given')
  .option(
    '--programme <what>',
    'sentences, music, speech-noise, tone, silence, "400 Hz", or a WAV file; as the station sends where not given',
  )
  .option('--neighbours <what>', 'the same for all other stations')
  .option('--without <parts>', 'what to leave out, with commas: neighbours, noise (of the set), room, hearing (its limit)')
  .option('--turn <time>', 'turns the dial across the station in this time')
  .option('--picture <svg>', 'writes what was heard while it turned')
  .option('--spectrum <svg>', 'writes the spectrum of the sound, over the threshold of hearing and the room')
  .option('--measure', 'measures with test programmes: level, distortion, response, what leaks in, intelligibility')
  .option('--gain <dB>', 'make-up gain, written into the file; never chosen by the sound', '0 dB')
  .option('--depth <bits>', '16, 24 or float', '24')
  .option('--seed <n>', 'of all noise; the same seed gives the same bytes', '1')
  .option('--calibrate', 'writes a reference tone by which playback is set to the true level')
  .option('--json', 'one JSON object; each figure with value, unit and method')
  .option('--working <name>', 'how a figure came about: formula, numbers, source')
  .action(async (file: string | undefined, options: import('./listen/options.ts').ListenOptions) =>
    (await import('./listen/command.ts')).listenCommand(file, options),
  );

program
  .command('beam')
  .description('design a beam for a boom: what to cut, what it does, and what 2 mm of cutting do to it')
  .requiredOption('--frequency <f>', 'to be heard best: 98MHz')
  .requiredOption('--boom <length>', 'first element to last: "1.7 m"')
  .option('--diameter <d>', 'of the elements', '8 mm')
  .option('--elements <n>', 'how many; as the published beams of that boom where not given')
  .option('--for <goal>', 'gain: the greatest; impedance: the most power into a load', 'impedance')
  .option('--impedance <ohm>', 'of that load', '75 ohm')
  .option('--folded <spacing>', 'a folded driven element, its conductors so far apart')
  .option('--metal <metal>', 'of the elements', 'aluminium')
  .option('--polarisation <p>', 'horizontal or vertical', 'horizontal')
  .option('--bearing <b>', 'where the boom points', 'N')
  .option('--draw <svg>', 'writes a drawing to scale')
  .option('--json', 'one JSON object; its "aerial" is a section of a set file')
  .option('--working <name>', 'how a figure came about: formula, numbers, source')
  .action(async (options: import('./beam.ts').BeamOptions) => (await import('./beam.ts')).beamCommand(options));

program
  .command('sweep')
  .description('vary one number of a set file over a range, to a table')
  .argument('<file>', 'set file (JSON)')
  .argument('<path>', 'what to vary: tank.coil.turns, place.stations.0.distance')
  .argument('<from>', 'first value, with its unit: "5 mm"')
  .argument('<to>', 'last value')
  .option('--steps <n>', 'number of values', '9')
  .option('--log', 'in equal ratios')
  .option('--station <name>', 'this station; the first of the place where not given')
  .option('--show <names>', 'figures to show, by name, with commas')
  .option('--json', 'one JSON object')
  .option('--csv', 'comma-separated, in SI units')
  .action(async (...args: Parameters<typeof import('./sweep.ts').sweepCommand>) => (await import('./sweep.ts')).sweepCommand(...args));

program
  .command('find')
  .description('the best sets that a drawer holds the parts of, for its place')
  .argument('<file>', 'file with a drawer and a place (JSON); a set in it is left aside')
  .option(
    '--aim <aim>',
    'speech, loudness, clean (least distortion at a level that is heard) or stations (most of them); or shares: speech=2,clean=1',
    'speech',
  )
  .option('--station <name...>', 'must be on the dial, and counts; whichever is heard best where not given')
  .option('--band <range>', 'that the dial must cover, as in "87.5 MHz to 108 MHz"')
  .option('--seconds <s>', 'how long to look, 20 where not given; Ctrl-C gives the best so far')
  .option('--trials <n>', 'looks until so many sets are tried and the heat is over: the same answer on every machine')
  .option('--threads <n>', 'threads that search; as many as the machine has, up to 4, where not given')
  .option('--seed <n>', 'another seed, another way through', '1')
  .option('--most <n>', 'how many different sets to show', '3')
  .option('--builds <n>', 'how often each is built on paper for its odds; 0 leaves them out', '256')
  .option('--state <file>', 'keeps where the search stands, and goes on from there the next time')
  .option('--out <folder>', 'writes the set files')
  .option('--picture <svg>', 'writes a picture: loudness against distortion against ease of tuning')
  .option('--json', 'one JSON object')
  .action(async (...args: Parameters<typeof import('./find/command.ts').findCommand>) =>
    (await import('./find/command.ts')).findCommand(...args),
  );

program
  .command('tolerance')
  .description('what becomes of a set in many hands: odds, what matters most, how to trim it')
  .argument('<file>', 'set file (JSON)')
  .option('--station <name>', 'this station; the one heard best where not given')
  .option('--samples <n>', 'sets built on paper', '512')
  .option('--seed <n>', 'another seed, other errors', '1')
  .option('--picture <svg>', 'writes a picture: a dot for each set built')
  .option('--json', 'one JSON object')
  .action(async (...args: Parameters<typeof import('./tolerance.ts').toleranceCommand>) =>
    (await import('./tolerance.ts')).toleranceCommand(...args),
  );

program
  .command('sheet')
  .description('a build sheet as a PDF file, true to scale: circuit, wiring, parts, coil, aerial, assembly, dial, trimming')
  .argument('<file>', 'set file (JSON)')
  .requiredOption('-o, --out <pdf>', 'file to be written')
  .option('--station <name>', 'built for this station; the one heard best where not given')
  .addOption(new Option('--paper <size>', 'paper to print on').choices(['a4', 'letter']).default('a4'))
  .action(async (...args: Parameters<typeof import('./sheet.ts').sheetCommand>) => (await import('./sheet.ts')).sheetCommand(...args));

program
  .command('drawings')
  .description('every drawing of a set as an SVG file: circuit, wiring, coil, strip to wind by, dial, aerial, ruler')
  .argument('<file>', 'set file (JSON)')
  .requiredOption('--to <folder>', 'where they are written; made if it is not there')
  .option('--station <name>', 'dial drawn for this station; the one heard best where not given')
  .option('--json', 'one JSON object')
  .action(async (...args: Parameters<typeof import('./drawings.ts').drawingsCommand>) =>
    (await import('./drawings.ts')).drawingsCommand(...args),
  );

program
  .command('schema')
  .description('the JSON Schema of set files')
  .action(async () => (await import('./schema.ts')).schemaCommand());

program
  .command('serve')
  .description('the app in a browser of this machine, until Ctrl-C')
  .option('--port <n>', 'this one and no other; 0: any free one', readPort)
  .action(async (options: import('./serve.ts').ServeOptions) => (await import('./serve.ts')).serveCommand(options));

try {
  await program.parseAsync();
} catch (e) {
  if (e instanceof CommanderError) process.exitCode = e.exitCode === 0 ? 0 : USAGE;
  else if (e instanceof BadFile) {
    console.error(e.message);
    process.exitCode = BAD_FILE;
  } else {
    console.error(e instanceof Error ? e.stack : e);
    process.exitCode = FAULT;
  }
}
