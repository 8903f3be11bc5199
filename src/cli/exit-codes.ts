/** Exit codes, as documented in the README and in `earshot --help`. */
export const DONE = 0;
/** something in the program itself went wrong: a fault to report */
export const FAULT = 1;
/** the command line was not understood */
export const USAGE = 2;
/** a file could not be read, or says something that cannot be */
export const BAD_FILE = 3;
