import { EXIT } from './exit.ts';
import { nodeIo } from './node-io.ts';
import { run } from './run.ts';

// A reader such as `head` may close the pipe before everything is written: that is no error of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') return;
  process.exitCode = EXIT.error;
  nodeIo.err(`fitwright: what was to be printed could not be written: ${error.message}\n`);
});

// The exit code is set, not exited with, so that long output still reaches a pipe.
try {
  const exit = await run(process.argv.slice(2), nodeIo);
  // Not over the code of an output that failed meanwhile.
  process.exitCode ??= exit;
} catch (error) {
  process.exitCode = EXIT.error;
  nodeIo.err(`fitwright: this is a fault of the program, not of your sheet: ${(error as Error).stack}\n`);
}
