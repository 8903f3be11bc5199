import { AIM_NAMES, type AimName } from '#find';

const WORDS: Readonly<Record<AimName, string>> = {
  speech: 'as much speech understood as can be: 100 points where every word comes through',
  loudness: 'as loud as can be: a point for each decibel of the best band over what the ear needs',
  clean: 'as little distortion as can be, once it is heard: a point for each decibel less',
  stations: 'as many stations heard as can be: 100 points where all of them are',
};

/** What a search can be for, by name, each with a line that says what it makes as large as it can. */
export const AIMS: readonly { readonly name: AimName; readonly words: string }[] = AIM_NAMES.map((name) => ({ name, words: WORDS[name] }));
