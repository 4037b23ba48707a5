import { existsSync } from 'node:fs';
import { isIP } from 'node:net';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { isKey } from '../../document/sharing/wire.ts';
import { readPort } from '../../setup/listen.mjs';

/** Where the server is found when nothing else is asked for: a bookmark and a printed code lead there again. */
export const SHOP_PORT = 4900;

/** What a shop's server was asked for. */
export interface Options {
  data: string;
  port: number;
  /** The address of this machine that is listened on; every one where it is absent. */
  address?: string;
  /** Further names by which browsers reach it, the first of them printed. */
  names: string[];
  /** Key of the printed link, chosen by the shop; a fresh one where it is absent. */
  key?: string;
  /** Whether a link with a key is printed at all. */
  link: boolean;
  certificate?: { file: string; key: string };
  /** Address of a PostgreSQL database, in place of the file in the data folder. */
  postgres?: string;
  /** Address of a Redis, over which several servers tell each other of edits. */
  redis?: string;
}

export type Asked =
  | { kind: 'serve'; options: Options }
  | { kind: 'backup' | 'restore'; file: string; options: Options }
  | { kind: 'help' }
  | { kind: 'misuse'; message: string };

type Environment = Readonly<Record<string, string | undefined>>;

/** The folder where programs of a user keep their data, as the system has it. */
const dataFolder = (environment: Environment): string => {
  if (process.platform === 'win32')
    return join(environment.LOCALAPPDATA ?? join(homedir(), 'AppData', 'Local'), 'fitwright-shop');
  if (process.platform === 'darwin')
    return join(homedir(), 'Library', 'Application Support', 'fitwright-shop');
  return join(environment.XDG_DATA_HOME || join(homedir(), '.local', 'share'), 'fitwright-shop');
};

class Misuse extends Error {}

const NAME = /^(?=.{1,253}$)[a-z\d](?:[a-z\d-]*[a-z\d])?(?:\.[a-z\d](?:[a-z\d-]*[a-z\d])?)*$/;

const nameIn = (text: string): string => {
  const name = text.trim().toLowerCase().replace(/\.$/, '');
  if (!NAME.test(name) && isIP(name) === 0)
    throw new Misuse(
      `"${text.slice(0, 60)}" is no name of a machine: give the bare name, as in --name mill.example, without http:// and without a port.`,
    );
  return name;
};

/** What a value came from, for a message about it. */
interface Given {
  value: string;
  from: string;
}

const portIn = ({ value, from }: Given): number => {
  const port = readPort(value);
  if (port === null)
    throw new Misuse(
      `${from} is "${value.slice(0, 60)}", which is no port: give 1 to 65535, or 0 for any free one.`,
    );
  return port;
};

const addressIn = ({ value, from }: Given): string => {
  if (isIP(value) === 0 && value !== 'localhost')
    throw new Misuse(
      `${from} is "${value.slice(0, 60)}", which is no address of a machine: give digits, as in 192.168.1.20 or ::1. A name by which browsers reach the server goes behind --name.`,
    );
  return value;
};

const keyIn = ({ value, from }: Given): string => {
  if (!isKey(value))
    throw new Misuse(
      `${from} is no key: a key is 22 letters, digits, - and _, drawn at random. One is made by: node -p "crypto.randomBytes(16).toString('base64url')"`,
    );
  return value;
};

const linkTo = ({ value, from }: Given, schemes: readonly string[]): string => {
  if (!URL.canParse(value) || !schemes.includes(new URL(value).protocol))
    throw new Misuse(`${from} must begin with ${schemes.map((scheme) => `${scheme}//`).join(' or ')}.`);
  return value;
};

const fileIn = ({ value, from }: Given): string => {
  const file = resolve(value);
  if (!existsSync(file)) throw new Misuse(`${from} names ${file}, and there is no such file.`);
  return file;
};

/** A key may begin with a dash, and is the value of its flag all the same. */
const withKeys = (argv: readonly string[]): string[] =>
  argv.flatMap((one, i) => {
    const next = argv[i + 1];
    if (one === '--key' && next?.startsWith('-') && isKey(next)) return [`--key=${next}`];
    return argv[i - 1] === '--key' && one.startsWith('-') && isKey(one) ? [] : [one];
  });

const read = (argv: readonly string[], environment: Environment): Asked => {
  const { values, positionals } = parseArgs({
    args: withKeys(argv),
    allowPositionals: true,
    options: {
      data: { type: 'string' },
      port: { type: 'string' },
      address: { type: 'string' },
      name: { type: 'string', multiple: true },
      key: { type: 'string' },
      'no-link': { type: 'boolean' },
      certificate: { type: 'string' },
      'certificate-key': { type: 'string' },
      backup: { type: 'string' },
      restore: { type: 'string' },
      help: { type: 'boolean', short: 'h' },
    },
  });
  if (values.help) return { kind: 'help' };
  if (positionals.length > 0)
    throw new Misuse(`"${positionals[0]!.slice(0, 60)}" stands alone: everything asked for begins with --.`);
  /** A flag goes before the environment. What is empty counts as not given. */
  const given = (flag: string | undefined, name: string, variable?: string): Given | undefined => {
    if (flag !== undefined) {
      if (flag === '') throw new Misuse(`--${name} is empty.`);
      return { value: flag, from: `--${name}` };
    }
    const value = variable && environment[variable];
    return value ? { value, from: variable } : undefined;
  };
  const port = given(values.port, 'port', 'PORT');
  const address = given(values.address, 'address', 'FITWRIGHT_ADDRESS');
  const key = given(values.key, 'key', 'FITWRIGHT_KEY');
  const data = given(values.data, 'data', 'FITWRIGHT_DATA');
  const certificate = given(values.certificate, 'certificate', 'FITWRIGHT_CERTIFICATE');
  const certificateKey = given(values['certificate-key'], 'certificate-key', 'FITWRIGHT_CERTIFICATE_KEY');
  const postgres = given(undefined, '', 'FITWRIGHT_POSTGRES');
  const redis = given(undefined, '', 'FITWRIGHT_REDIS');
  const backup = given(values.backup, 'backup');
  const restore = given(values.restore, 'restore');
  const names = values.name ?? (environment.FITWRIGHT_NAMES ? [environment.FITWRIGHT_NAMES] : []);
  if (!certificate !== !certificateKey)
    throw new Misuse(
      certificate
        ? 'A certificate needs its key too: --certificate-key FILE.'
        : 'The key of a certificate needs the certificate too: --certificate FILE.',
    );
  if (key && values['no-link'])
    throw new Misuse(
      '--no-link prints no link, and --key chooses the key of the one that is printed: give one of them.',
    );
  if (redis && !postgres)
    throw new Misuse(
      'FITWRIGHT_REDIS is for several servers, which share a database: give FITWRIGHT_POSTGRES too.',
    );
  if (backup && restore) throw new Misuse('Give --backup or --restore, not both.');
  const options: Options = {
    data: resolve(data?.value ?? dataFolder(environment)),
    port: port ? portIn(port) : SHOP_PORT,
    ...(address && { address: addressIn(address) }),
    names: names
      .flatMap((list) => list.split(','))
      .filter((name) => name.trim() !== '')
      .map(nameIn),
    ...(key && { key: keyIn(key) }),
    link: values['no-link'] !== true,
    ...(certificate &&
      certificateKey && { certificate: { file: fileIn(certificate), key: fileIn(certificateKey) } }),
    ...(postgres && { postgres: linkTo(postgres, ['postgres:', 'postgresql:']) }),
    ...(redis && { redis: linkTo(redis, ['redis:', 'rediss:']) }),
  };
  if (backup) return { kind: 'backup', file: resolve(backup.value), options };
  if (restore) return { kind: 'restore', file: fileIn(restore), options };
  return { kind: 'serve', options };
};

/** Node's parser of arguments tells what a programmer would want to know: here what to type instead. */
const parseWords = (code: string | undefined, message: string): string => {
  const flag = /'(?:-\w, )?(-{1,2}[^' =]*)/.exec(message)?.[1] ?? '';
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') return `There is no ${flag}.`;
  if (/does not take an argument/.test(message)) return `${flag} stands alone: nothing belongs behind it.`;
  return `${flag} needs a value behind it.`;
};

/** Reads what stands behind `npm run shop --`, and the environment. */
export const readOptions = (argv: readonly string[], environment: Environment): Asked => {
  try {
    return read(argv, environment);
  } catch (error) {
    const { message, code } = error as Error & { code?: string };
    if (error instanceof Misuse) return { kind: 'misuse', message };
    if (code?.startsWith('ERR_PARSE_ARGS')) return { kind: 'misuse', message: parseWords(code, message) };
    throw error;
  }
};

export const HELP = `npm run shop -- [what is wanted]

Serves the page, and the sheets that are shared, to the devices of the shop's network. The link it prints joins a device.

  --data FOLDER            where sheets and keys are kept           FITWRIGHT_DATA
                           (${dataFolder(process.env)})
  --port N                 ${SHOP_PORT}, or N; 0 for any free one           PORT
  --address ADDRESS        listens on this address of the machine   FITWRIGHT_ADDRESS
                           alone; otherwise on each
  --name NAME              a name by which browsers reach it;       FITWRIGHT_NAMES
                           may be given again, or a list with commas
  --certificate FILE       serves HTTPS: the certificate, with      FITWRIGHT_CERTIFICATE
                           those between it and its root, in PEM
  --certificate-key FILE   the key of the certificate, in PEM       FITWRIGHT_CERTIFICATE_KEY
  --key KEY                the key of the printed link; otherwise   FITWRIGHT_KEY
                           a fresh one at each start, and those of
                           earlier starts that nobody used end
  --no-link                prints no link, as for a log that
                           others read

  --backup FILE            writes all sheets and keys into a new file, also while a server runs, and ends
  --restore FILE           takes such a file into a store that has no sheet, and ends
  --help                   this

Several servers share their sheets through FITWRIGHT_POSTGRES, the address of a PostgreSQL database
(postgres://...), and tell each other of edits through FITWRIGHT_REDIS (redis://...).

HTTPS adds what browsers keep from a page that came over plain HTTP from another machine: keys and sheets are read by nobody
on the way, the page opens without the network, the camera reads codes live, the screen stays on at the machine, and the
browser can be asked not to drop what it keeps.
`;
