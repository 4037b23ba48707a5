/** What a command is about; heads of the finder and of the list of keys. */
type CommandGroup = 'This line' | 'Chosen lines' | 'The sheet' | 'Look' | 'Moving about';

export interface Command {
  id: string;
  /** What it does, beginning with a verb. */
  label: string;
  group: CommandGroup;
  /** Keys as they are printed, `Ctrl+Z`; several ways with the first the usual one. */
  keys?: readonly string[];
  /**
   * Where its keys are heard: `page` everywhere but where text is typed; `always`, there too; `lines` only on the lines
   * of the sheet, which hear them themselves.
   */
  heard?: 'page' | 'always' | 'lines';
  /** Further words it is found by. */
  also?: string;
  /** Absent means always. */
  can?: () => boolean;
  /** Absent for keys that only make sense where they are pressed, such as the arrows. */
  run?: () => void;
}

export type RunnableCommand = Command & { run: () => void };

export const isRunnable = (command: Command): command is RunnableCommand => command.run !== undefined;
