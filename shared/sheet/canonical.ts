/**
 * Canonical form of JSON data by RFC 8785: no white space, members sorted by UTF-16 code units, numbers and strings as
 * ECMAScript writes them. Members that are undefined are left out, as JSON does. Throws a TypeError on what JSON
 * cannot hold: NaN, infinities, lone surrogates, functions.
 */
export const canonical = (value: unknown): string => {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new TypeError(`${value} has no canonical form`);
    return JSON.stringify(value);
  }
  if (typeof value === 'string') {
    if (/\p{Surrogate}/u.test(value)) throw new TypeError('a lone surrogate has no canonical form');
    return JSON.stringify(value);
  }
  if (value === null || typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object') throw new TypeError(`${typeof value} has no canonical form`);
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    .map(([key, member]) => `${canonical(key)}:${canonical(member)}`);
  return `{${members.join(',')}}`;
};
