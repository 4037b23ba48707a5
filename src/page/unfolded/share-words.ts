/** A share of many draws as a percentage with the digits the number of draws supports; never a bare 0 or 100 % for some. */
export const shareWords = (share: number, draws: number): string => {
  if (share === 0) return `none of ${draws.toLocaleString('en-GB').replaceAll(',', '\u202f')}`;
  if (share === 1) return `all of ${draws.toLocaleString('en-GB').replaceAll(',', '\u202f')}`;
  const percent = share * 100;
  // As many places as its own standard error leaves standing.
  const places = Math.max(0, Math.ceil(-Math.log10(100 * Math.sqrt((share * (1 - share)) / draws))));
  return `${percent.toFixed(places)} %`;
};
