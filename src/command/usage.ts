export const USAGE = `fitwright works job sheets out without a page.

  fitwright check FILE... [options]   work sheets out and print every cell with its spread, limits and check;
                                      - for FILE reads standard input
  fitwright window FILE --of NAME     work out how far an input may go with every check below it still holding, spread
                                      and all
  fitwright work-back FILE --want "NAME = ENTRY" [--change NAME] [options]
                                      work a figure back to one of its inputs; without --change list the inputs
                                      that move it, the likeliest first
  fitwright cells [KIND]              list the cells of the library, or the inputs and outputs of one kind
  fitwright --help                    this text
  fitwright --version

Options of check:
  --set NAME="ENTRY"       use this entry in place of the sheet's, for this run; NAME.INPUT for an input of a
                           library cell; a list of readings too: --set journal="1.7481 in; 1.7479 in"
  --measured NAME="ENTRY"  what the part came out at; NAME.OUTPUT for an output of a library cell
  --example                fill the emptied cells of a template with its examples
  --json                   print JSON: the head line, then by cell name and NAME.OUTPUT figures in SI units, questions,
                           cautions and problems; by file where there are several

Options of window:
  --of NAME                the input: a cell, or NAME.INPUT of a library cell
  --between "A .. B"       the range to look through, where the usual one will not do
  --set, --example         as of check
  --json                   print JSON, figures in SI units

Exit status of window: 0 there is a window; 1 there is none, and why; 2 as of check

Options of work-back:
  --want "NAME = ENTRY"    where the figure is wanted; NAME.OUTPUT of a library cell. In place of an entry: middle (of
                           its limits), or the limit that is to be kept, spread and all: lower limit, upper limit,
                           wear limit
  --change NAME            what may move: a cell, NAME.INPUT of a library cell, or "NAME tolerance"
  --between "A .. B"       the range to search, where the usual one will not do
  --steps ENTRY            sizes that can be made: a step such as 0.0005in, drills, or those there are: "1 in; 1 1/4 in"
  --set, --example         as of check
  --json                   print JSON, figures in SI units

Exit status of work-back: 0 an answer was found; 1 there is none, and why; 2 as of check

Exit status of check:
  0  every check holds or is proven in limits, near the edge or not, and no question is open
  1  some check may miss, misses, is not proven, is out of limits or waits for a value, a question is open, or
     the sheet holds fields that this edition passes over
  2  a file, an entry or the command is in error
`;
