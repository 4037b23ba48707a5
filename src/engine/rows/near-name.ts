/** What to do about a name that leads nowhere: the one that was probably meant. */
export function nearName(name: string, all: readonly string[]): string {
  const low = name.toLowerCase();
  const close = [...all].sort().filter((other) => {
    const o = other.toLowerCase();
    return (
      o === low ||
      o.startsWith(low) ||
      low.startsWith(o) ||
      (Math.abs(o.length - low.length) <= 1 && differences(o, low) <= 1)
    );
  });
  return close.length > 0 ? ` Is \`${close[0]}\` meant?` : ' Add it, or choose another name.';
}

/** Characters in which two words of nearly one length differ, place by place from both ends. */
function differences(a: string, b: string): number {
  let front = 0;
  while (front < a.length && front < b.length && a[front] === b[front]) front++;
  let back = 0;
  while (
    back < a.length - front &&
    back < b.length - front &&
    a[a.length - 1 - back] === b[b.length - 1 - back]
  )
    back++;
  return Math.max(a.length, b.length) - front - back;
}
