export const USAGE = `fitwright works job sheets out without a page.

  fitwright check FILE... [options]   work sheets out and print every cell with its spread, limits and check;
                                      - for FILE reads standard input
  fitwright window FILE --of NAME     work out how far an input may go with every check below it still holding, spread
                                      and all
  fitwright cells [KIND]              list the cells of the library, or the inputs and outputs of one kind
  fitwright --help                    this text
  fitwright --version

Options of check:
  --set NAME="ENTRY"       use this entry in place of the sheet's, for this run; NAME.INPUT for an input of a
                           library cell; a list of readings too: --set journal="1.7481 in; 1.7479 in"
  --measured NAME="ENTRY"  what the part came out at; NAME.OUTPUT for an output of a library cell
  --example                fill the emptied cells of a template with its examples
  --json                   print JSON by cell name and NAME.OUTPUT, figures in SI units, with questions, cautions and
                           problems; by file where there are several

Options of window:
  --of NAME                the input: a cell, or NAME.INPUT of a library cell
  --between "A .. B"       the range to look through, where the usual one will not do
  --set, --example         as of check
  --json                   print JSON, figures in SI units

Exit status of window: 0 there is a window; 1 there is none, and why; 2 as of check

Exit status of check:
  0  every check holds or is proven in limits, near the edge or not, and no question is open
  1  some check may miss, misses, is not proven, is out of limits or waits for a value, a question is open, or
     the sheet holds fields that this edition passes over
  2  a file, an entry or the command is in error
`;
