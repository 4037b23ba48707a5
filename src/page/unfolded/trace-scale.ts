/** A round step that parts a span into about `wanted` pieces: 1, 2 or 5 times a power of ten. */
export const roundStep = (span: number, wanted: number): number => {
  if (!(span > 0)) return 1;
  const rough = span / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const share = rough / power;
  return (share > 5 ? 10 : share > 2 ? 5 : share > 1 ? 2 : 1) * power;
};

/** Round numbers from nothing up to and just past `most`. */
export const ticksTo = (most: number, wanted: number): number[] => {
  const step = roundStep(most, wanted);
  const count = Math.max(1, Math.ceil(most / step - 1e-9));
  return Array.from({ length: count + 1 }, (_, i) => Number((i * step).toPrecision(12)));
};
