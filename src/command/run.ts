import { library } from '../../cells/catalogue.ts';
import { version } from '../../package.json' with { type: 'json' };
import { readArguments } from './arguments.ts';
import { listCells } from './cells.ts';
import { check } from './check.ts';
import { EXIT, type Exit } from './exit.ts';
import type { Io } from './io.ts';
import { USAGE } from './usage.ts';
import { windowCommand } from './window.ts';
import { workBackCommand } from './work-back.ts';

/** Does what the arguments behind the command's own name ask, and gives the exit status. */
export const run = async (argv: readonly string[], io: Io): Promise<Exit> => {
  const command = readArguments(argv);
  switch (command.kind) {
    case 'help':
      io.out(USAGE);
      return EXIT.holds;
    case 'version':
      io.out(`fitwright ${version}\n`);
      return EXIT.holds;
    case 'misuse':
      io.err(`fitwright: ${command.message}\n\n${USAGE}`);
      return EXIT.error;
    case 'cells':
      return listCells(command.wanted, library, io);
    case 'check':
      return check(command, library, io);
    case 'window':
      return windowCommand(command, library, io);
    case 'work-back':
      return workBackCommand(command, library, io);
  }
};
