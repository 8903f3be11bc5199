import { setFileJsonSchema } from '#set-file';
import { printJson } from './figures-json.ts';

/** `earshot schema`: the JSON Schema (2020-12) that set files follow. */
export const schemaCommand = (): void => printJson(setFileJsonSchema());
