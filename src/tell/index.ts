export { cautions } from './cautions.ts';
export { rangeText, valueText, workingText } from './figure-text.ts';
export { ladderRows, type RungText } from './ladder-rows.ts';
export { problemText } from './problem-text.ts';
export { gainWords, verdictSentence } from './verdict-sentence.ts';
