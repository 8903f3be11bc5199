/** One line on a terminal's error channel that is written over; nothing where no person looks on. */
export function progress(): { show(text: string): void; clear(): void } {
  const { stderr } = process;
  if (stderr.isTTY !== true) return { show: () => {}, clear: () => {} };
  let shown = 0;
  const put = (text: string): void => {
    stderr.write(`\r${text.padEnd(shown)}\r`);
    shown = text.length;
  };
  let last = 0;
  return {
    show(text) {
      const now = performance.now();
      if (now - last < 100) return;
      last = now;
      put(text.slice(0, (stderr.columns ?? 80) - 1));
    },
    clear: () => put(''),
  };
}
