export const USAGE = `fitwright works job sheets out without a page.

  fitwright check FILE... [options]   work sheets out and print every cell with its spread, limits and check;
                                      - for FILE reads standard input
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

Exit status:
  0  every check holds or is proven in limits, near the edge or not, and no question is open
  1  some check may miss, misses, is not proven, is out of limits or waits for a value, a question is open, or
     the sheet holds fields that this edition passes over
  2  a file, an entry or the command is in error
`;
