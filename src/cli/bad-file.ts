/** A file that could not be read or says something that cannot be; its message is already what the user should see. */
export class BadFile extends Error {
  override readonly name = 'BadFile';
}
