/** Where the build has put a document that it has read; null while developing. */
declare module '*?ahead' {
  const address: string | null;
  export default address;
}
