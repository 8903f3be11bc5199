/** Before the payload of a link, so that other fragments are told apart, and later forms of it too. */
export const MARK = 'set1=';

export const isShared = (fragment: string): boolean => fragment.replace(/^#/, '').startsWith(MARK);
