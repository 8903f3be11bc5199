// straight from its file: what stands behind the index is large, and the first screen only asks whether a link carries a set
export { isShared, MARK } from '../../set-file/share-mark.ts';
