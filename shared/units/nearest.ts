/** Edit distance with swapped neighbours counted as one (optimal string alignment). */
const distance = (a: string, b: string): number => {
  const rows = Array.from({ length: a.length + 1 }, (_, i) => [i, ...new Array<number>(b.length).fill(0)]);
  for (let j = 0; j <= b.length; j += 1) rows[0]![j] = j;
  for (let i = 1; i <= a.length; i += 1) {
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min(rows[i - 1]![j]! + 1, rows[i]![j - 1]! + 1, rows[i - 1]![j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, rows[i - 2]![j - 2]! + 1);
      rows[i]![j] = best;
    }
  }
  return rows[a.length]![b.length]!;
};

/** Up to three candidates close to `word`, closest first; those that differ in case alone come before all others. */
export const nearest = (word: string, candidates: Iterable<string>): string[] => {
  const lower = word.toLowerCase();
  const allowed = word.length <= 2 ? 0 : word.length <= 5 ? 1 : 2;
  return [...candidates]
    .map((candidate) => ({ candidate, d: distance(lower.slice(0, 40), candidate.toLowerCase()) }))
    .filter(({ d }) => d <= allowed)
    .sort((a, b) => a.d - b.d)
    .slice(0, 3)
    .map(({ candidate }) => candidate);
};
