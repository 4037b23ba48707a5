import { parseArgs } from 'node:util';

/** `name=entry` or `name.part=entry` as typed. */
export interface Assignment {
  name: string;
  /** Input or output of a library cell. */
  part?: string;
  entry: string;
}

export interface CheckCommand {
  kind: 'check';
  files: string[];
  set: Assignment[];
  measured: Assignment[];
  example: boolean;
  json: boolean;
}

export interface WindowCommand {
  kind: 'window';
  path: string;
  /** A cell, or an input of a library cell as NAME.INPUT. */
  of: string;
  between?: string;
  set: Assignment[];
  example: boolean;
  json: boolean;
}

export interface WorkBackCommand {
  kind: 'work-back';
  path: string;
  want: Assignment;
  change?: string;
  between?: string;
  steps?: string;
  set: Assignment[];
  example: boolean;
  json: boolean;
}

export type Command =
  | CheckCommand
  | WindowCommand
  | WorkBackCommand
  | { kind: 'cells'; wanted?: string }
  | { kind: 'help' }
  | { kind: 'version' }
  | { kind: 'misuse'; message: string };

const misuse = (message: string): Command => ({ kind: 'misuse', message });

class Misuse extends Error {}

const assignment = (option: string, text: string): Assignment => {
  const at = text.indexOf('=');
  // A name typed on some systems comes in pieces, letter and mark; sheets have it in one.
  const target = text.slice(0, Math.max(at, 0)).trim().normalize('NFC');
  if (at < 0 || target === '')
    throw new Misuse(
      `${option} ${text.slice(0, 60)}: write a cell's name, an equals sign and the entry, as in ${option} journal="1.7480 in".`,
    );
  const dot = target.indexOf('.');
  const entry = text.slice(at + 1);
  return dot < 0
    ? { name: target, entry }
    : { name: target.slice(0, dot), part: target.slice(dot + 1), entry };
};

const assignments = (option: string, texts: readonly string[]): Assignment[] => {
  const list = texts.map((text) => assignment(option, text));
  const seen = new Set<string>();
  for (const { name, part } of list) {
    const key = part === undefined ? name : `${name}.${part}`;
    if (seen.has(key)) throw new Misuse(`${option} ${key} is given twice: give it once.`);
    seen.add(key);
  }
  return list;
};

interface WindowValues {
  of?: string | undefined;
  between?: string | undefined;
  set: string[];
  example: boolean;
  json: boolean;
}

interface WorkBackValues {
  want?: string[] | undefined;
  change?: string | undefined;
  between?: string | undefined;
  steps?: string | undefined;
  set: string[];
  example: boolean;
  json: boolean;
}

const windowCommandOf = (files: readonly string[], values: WindowValues): Command => {
  const [path, more] = files;
  if (path === undefined) return misuse('window needs a file.');
  if (more !== undefined) return misuse('window takes one file.');
  const { of, between, example, json } = values;
  if (!of?.trim()) return misuse('window needs to be told of which input, as in --of bush_outside.');
  return {
    kind: 'window',
    path,
    of: of.trim().normalize('NFC'),
    ...(between ? { between } : {}),
    set: assignments('--set', values.set),
    example,
    json,
  };
};

const workBackOf = (files: readonly string[], values: WorkBackValues): Command => {
  const [path, more] = files;
  if (path === undefined) return misuse('work-back needs a file.');
  if (more !== undefined) return misuse('work-back takes one file.');
  const [want, another] = assignments('--want', values.want ?? []);
  if (!want || want.entry.trim() === '')
    return misuse('work-back needs to be told what is wanted, as in --want "clearance = 3 thou".');
  if (another) return misuse('work-back takes one --want.');
  const { change, between, steps, example, json } = values;
  return {
    kind: 'work-back',
    path,
    want: { ...want, entry: want.entry.trim() },
    ...(change?.trim() ? { change: change.trim() } : {}),
    ...(between ? { between } : {}),
    ...(steps ? { steps } : {}),
    set: assignments('--set', values.set),
    example,
    json,
  };
};

const read = (argv: readonly string[]): Command => {
  const { values, positionals } = parseArgs({
    args: [...argv],
    allowPositionals: true,
    options: {
      set: { type: 'string', multiple: true, default: [] },
      measured: { type: 'string', multiple: true, default: [] },
      of: { type: 'string' },
      want: { type: 'string', multiple: true },
      change: { type: 'string' },
      between: { type: 'string' },
      steps: { type: 'string' },
      example: { type: 'boolean', default: false },
      json: { type: 'boolean', default: false },
      help: { type: 'boolean', short: 'h', default: false },
      version: { type: 'boolean', default: false },
    },
  });
  if (values.help) return { kind: 'help' };
  if (values.version) return { kind: 'version' };
  const [command, ...rest] = positionals;
  if (command === undefined) return misuse('Say what to do.');
  if (command === 'cells') {
    const [wanted, more] = rest;
    if (more !== undefined) return misuse('cells takes one kind.');
    return wanted === undefined ? { kind: 'cells' } : { kind: 'cells', wanted };
  }
  if (command === 'window') return windowCommandOf(rest, values);
  if (command === 'work-back') return workBackOf(rest, values);
  if (command !== 'check') return misuse(`There is no command "${command}".`);
  if (rest.length === 0) return misuse('check needs a file.');
  return {
    kind: 'check',
    files: rest,
    set: assignments('--set', values.set),
    measured: assignments('--measured', values.measured),
    example: values.example,
    json: values.json,
  };
};

/** The parser of arguments tells what a programmer would want to know: here what to type instead. */
const parseWords = (code: string, message: string): string => {
  const option = /'(-{1,2}[^' ]*)/.exec(message)?.[1] ?? '';
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION')
    return `There is no option "${option}". A file whose name begins with a dash stands behind --.`;
  if (/does not take an argument/.test(message)) return `${option} stands alone: nothing belongs behind it.`;
  if (/argument (?:missing|is ambiguous)/.test(message))
    return `${option} needs a name and an entry behind it, as in ${option} journal="1.7480 in".`;
  return message;
};

/** Reads the arguments behind the command's own name. */
export const readArguments = (argv: readonly string[]): Command => {
  try {
    return read(argv);
  } catch (error) {
    const { message, code } = error as Error & { code?: string };
    if (error instanceof Misuse) return misuse(message);
    if (code?.startsWith('ERR_PARSE_ARGS')) return misuse(parseWords(code, message));
    throw error;
  }
};
