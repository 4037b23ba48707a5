/** Value below which a share of the numbers lies. */
export const quantile = (numbers: readonly number[], share: number): number => {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] as number;
};

export const round = (x: number): number => Number(x.toFixed(1));
