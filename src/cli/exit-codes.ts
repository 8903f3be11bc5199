/** Exit codes other than 0 (done, whatever the answer), as documented in the README and in `earshot --help`. */

/** something in the program itself went wrong: a fault to report */
export const FAULT = 1;
/** the command line was not understood */
export const USAGE = 2;
/** a file could not be read, or says something that cannot be */
export const BAD_FILE = 3;
/** stopped by Ctrl-C or a request to end: what was made by then is in its file, finished. 128 and the number of the signal, as shells count */
export const STOPPED = 130;
