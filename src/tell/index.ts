export { AIMS } from './aim-words.ts';
export { type Caution, cautions, cautionsWhere, SOLDERING } from './cautions.ts';
export { chanceWords, GIVE_OR_TAKE } from './chance-words.ts';
export { type Along, type Builds, dotsOfBuilds } from './dots-of-builds.ts';
export { rangeText, valueText, workingText } from './figure-text.ts';
export { advantageWords, NOTHING_FOUND, oddsSentence, pointsText } from './found-words.ts';
export { givenProblem } from './given-problem.ts';
export type { Group } from './group.ts';
export { ladderRows, type RungText } from './ladder-rows.ts';
export { problemText } from './problem-text.ts';
export { reasonWords } from './reason-words.ts';
export { scaleSentence } from './scale-sentence.ts';
export { setWords } from './set-words.ts';
export { type AerialBand, type AerialPattern, aerialBand, aerialPattern, modelPattern } from './stages/aerial-cuts.ts';
export { aerialGroups, viewGroups } from './stages/aerial-groups.ts';
export { type AerialView, aerialView, arrivalOf } from './stages/aerial-view.ts';
export { alongBoom, toCut } from './stages/cutting.ts';
export { detectorGroups, earGroups, phonesGroups, placeGroups, tankGroups } from './stages/stage-groups.ts';
export { stationFigures } from './stages/station-figures.ts';
export {
  type InfluenceRow,
  type InfluenceWords,
  influenceWords,
  NOT_SCATTERED,
  shareWords,
  type ToleranceFacts,
  type ToleranceLine,
  type TrimRow,
  toleranceLines,
  trimRows,
} from './tolerance-words.ts';
export { gainWords, verdictSentence } from './verdict-sentence.ts';
