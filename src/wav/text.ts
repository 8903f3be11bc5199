/** Four characters at a place, as chunk names are. */
export const fourCharacters = (view: DataView, at: number): string =>
  String.fromCharCode(view.getUint8(at), view.getUint8(at + 1), view.getUint8(at + 2), view.getUint8(at + 3));

/** Text as UTF-8. */
export function encodeText(text: string): Uint8Array {
  // the only encoder of the language itself is that of addresses: %XX for each byte that is not plain, and halves of characters refused
  const escaped = encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\ufffd'));
  const bytes: number[] = [];
  for (let k = 0; k < escaped.length; k++) {
    if (escaped[k] === '%') {
      bytes.push(Number.parseInt(escaped.slice(k + 1, k + 3), 16));
      k += 2;
    } else bytes.push(escaped.charCodeAt(k));
  }
  return Uint8Array.from(bytes);
}

/** Text of bytes up to the first zero: UTF-8, or Latin-1 where it is not that. */
export function decodeText(bytes: Uint8Array): string {
  const end = bytes.indexOf(0);
  const part = Array.from(end < 0 ? bytes : bytes.subarray(0, end));
  try {
    return decodeURIComponent(part.map((b) => `%${b.toString(16).padStart(2, '0')}`).join(''));
  } catch {
    return part.map((b) => String.fromCharCode(b)).join('');
  }
}
