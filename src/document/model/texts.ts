/** Which fields of a cell hold text in which names stand, by stored path. */

const FORMULA =
  /^(?:(?:outputs\.[^.]+\.)?(?:limits\.(?:lower|upper|wear)|measured\.(?:entry|at))|entry|tolerance|at|issued|example|(?:inputs|examples)\.[^.]+)$/;
const NAME = /^(?:(?:outputs\.[^.]+\.)?measured\.(?:gauge|material)|gauge|material)$/;
const INPUT = /^(?:inputs|examples)\.[^.]+$/;

/**
 * `formula`: an entry, names in it are references. `name`: the whole text is the name of a cell. `input`: an entry, or
 * the bare name of a library cell whose outputs it takes as a record.
 */
export type TextKind = 'formula' | 'name' | 'input';

export function textKind(path: string): TextKind | undefined {
  if (NAME.test(path)) return 'name';
  if (INPUT.test(path)) return 'input';
  return FORMULA.test(path) ? 'formula' : undefined;
}
