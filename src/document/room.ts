import { type Problem, problem } from '../../shared/problem.ts';
import { MAX_CHARACTERS, MAX_LINES, type SheetFile } from '../../shared/sheet/format.ts';
import { writeSheet } from '../../shared/sheet/write.ts';

/** What can be made can be read: no sheet is made that a reader would refuse for its size. */

const shown = (n: number): string => n.toLocaleString('en');

const MOST = `A sheet has at most ${shown(MAX_LINES)} lines`;

/** Fewer characters than these are not worth writing the whole sheet out for. */
const FEW = 100_000;

const tooLong = (characters: number, remedy: string): Problem | undefined =>
  characters > MAX_CHARACTERS
    ? problem(
        'too-big',
        `A sheet has at most ${MAX_CHARACTERS / 1e6} MB as a file; this one would have ${(characters / 1e6).toFixed(1)} MB. ${remedy}`,
      )
    : undefined;

interface Sheet {
  order(): readonly unknown[];
  toFile(): SheetFile;
}

/** Why so many more lines, with so many characters in all, do not go into the sheet; asked before they are put in. */
export const roomFor = (sheet: Sheet, lines: number, characters = 0): Problem | undefined => {
  const here = sheet.order().length;
  const remedy = 'Put them into a sheet of their own.';
  if (here + lines > MAX_LINES)
    return problem(
      'too-big',
      `${MOST}; this one has ${shown(here)}, and ${shown(lines)} more do not go in. ${remedy}`,
    );
  return characters > FEW ? tooLong(writeSheet(sheet.toFile()).length + characters, remedy) : undefined;
};

/** Why a sheet put together out of two is not made. */
export const roomIn = (file: SheetFile): Problem | undefined => {
  const lines = file.cells.length;
  const remedy = 'Take fewer of them.';
  return lines > MAX_LINES
    ? problem('too-big', `${MOST}; with these it would have ${shown(lines)}. ${remedy}`)
    : tooLong(writeSheet(file).length, remedy);
};

/** What two tabs or devices made together and neither could be told before: a sheet that no reader takes as a file. */
export const overfull = (lines: number): string | undefined =>
  lines > MAX_LINES
    ? `${MOST}, and this one has ${shown(lines)}: two tabs or devices added to it at once. It is kept here, but no file or code of it can be read. Cut ${shown(lines - MAX_LINES)} of its lines and paste them into a sheet of their own.`
    : undefined;
