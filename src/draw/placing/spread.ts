/**
 * Places along a line for things that each want one, none nearer to the next than both need, all as near to their wishes as that allows.
 *
 * Neighbours that would touch become one block, which sits where its members' wishes are best met on average, until no two blocks touch.
 *
 * @param wishes - wanted middle and size of each
 * @returns middles in the order given; kept within `from` and `to` where all fit there
 */
export function spread(wishes: readonly { readonly at: number; readonly size: number }[], from: number, to: number): readonly number[] {
  interface Block {
    readonly members: readonly number[];
    readonly size: number;
    readonly start: number;
  }
  const total = wishes.reduce((sum, w) => sum + w.size, 0);
  const limit = Math.max(to, from + total);
  const placed = (members: readonly number[]): Block => {
    let offset = 0;
    let sum = 0;
    for (const m of members) {
      sum += wishes[m]!.at - offset - wishes[m]!.size / 2;
      offset += wishes[m]!.size;
    }
    const start = Math.max(from, Math.min(limit - offset, sum / members.length));
    return { members, size: offset, start };
  };
  const blocks: Block[] = [];
  const order = wishes.map((_, i) => i).sort((a, b) => wishes[a]!.at - wishes[b]!.at || a - b);
  for (const i of order) {
    let next = placed([i]);
    for (let before = blocks.at(-1); before && before.start + before.size > next.start; before = blocks.at(-1)) {
      blocks.pop();
      next = placed([...before.members, ...next.members]);
    }
    blocks.push(next);
  }
  const out = wishes.map(() => 0);
  for (const b of blocks) {
    let at = b.start;
    for (const m of b.members) {
      out[m] = at + wishes[m]!.size / 2;
      at += wishes[m]!.size;
    }
  }
  return out;
}
