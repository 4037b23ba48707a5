import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addressesOf } from '../../src/shop/start/addresses.ts';
import { HELP, readOptions, SHOP_PORT } from '../../src/shop/start/options.ts';

const KEY = 'abcdefghijklmnopqrstuv';
let folder: string;
let file: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'fitwright-options-'));
  file = join(folder, 'a.pem');
  writeFileSync(file, 'x');
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('what a shop’s server is asked for', () => {
  test('nothing asked: the usual port, every address, a folder of the user', () => {
    expect(readOptions([], { XDG_DATA_HOME: '/d' })).toMatchObject({
      kind: 'serve',
      options: { port: SHOP_PORT, names: [], link: true },
    });
  });

  test('flags go before the environment', () => {
    const environment = { PORT: '1', FITWRIGHT_DATA: '/elsewhere', FITWRIGHT_NAMES: 'a.example,b.example' };
    const asked = readOptions(
      ['--port=0', '--data', folder, '--name', 'Mill.Example', '--key', KEY],
      environment,
    );
    expect(asked).toEqual({
      kind: 'serve',
      options: { port: 0, data: folder, names: ['mill.example'], key: KEY, link: true },
    });
    expect(readOptions([], environment)).toMatchObject({
      options: { port: 1, data: '/elsewhere', names: ['a.example', 'b.example'] },
    });
  });

  test.each<[string[], Record<string, string>, RegExp]>([
    [['--prot', '1'], {}, /There is no --prot/],
    [['--port'], {}, /--port needs a value/],
    [['--port', '70000'], {}, /--port is "70000", which is no port/],
    [[], { PORT: 'x' }, /PORT is "x"/],
    [['--port='], {}, /--port is empty/],
    [['--no-link=yes'], {}, /--no-link stands alone/],
    [['4900'], {}, /"4900" stands alone/],
    [['--address', 'mill'], {}, /--address is "mill".*--name/],
    [['--name', 'http://mill:80/'], {}, /no name of a machine/],
    [['--key', 'short'], {}, /--key is no key/],
    [['--key', KEY, '--no-link'], {}, /give one of them/],
    [['--certificate', 'x'], {}, /needs its key too/],
    [['--certificate', 'gone.pem', '--certificate-key', 'gone.pem'], {}, /there is no such file/],
    [['--backup', 'a', '--restore', 'b'], {}, /not both/],
    [['--restore', 'gone.backup'], {}, /--restore names .*no such file/],
    [[], { FITWRIGHT_REDIS: 'redis://127.0.0.1' }, /give FITWRIGHT_POSTGRES too/],
    [[], { FITWRIGHT_POSTGRES: 'mysql://x' }, /must begin with postgres:\/\//],
  ])('%j %j is answered in words', (argv, environment, words) => {
    const asked = readOptions(argv, environment);
    expect(asked).toMatchObject({ kind: 'misuse', message: expect.stringMatching(words) });
  });

  test.each(['-', '--'])('a key may begin with %s', (dash) => {
    const key = `${dash}${KEY.slice(dash.length)}`;
    expect(readOptions(['--key', key, '--port', '0'], {})).toMatchObject({ options: { key, port: 0 } });
  });

  test('a key that is given is not repeated in a complaint', () => {
    expect(JSON.stringify(readOptions(['--key', `${KEY}!`], {}))).not.toContain(KEY);
  });

  test('every flag and variable is told by --help', () => {
    for (const name of [
      'data',
      'port',
      'address',
      'name',
      'certificate',
      'certificate-key',
      'key',
      'no-link',
    ])
      expect(HELP).toContain(`--${name} `);
    for (const name of ['DATA', 'ADDRESS', 'NAMES', 'CERTIFICATE', 'KEY', 'POSTGRES', 'REDIS'])
      expect(HELP).toContain(`FITWRIGHT_${name}`);
    expect(readOptions(['--help', '--port', 'x'], {}).kind).toBe('help');
    expect(Math.max(...HELP.split('\n').map((line) => line.length))).toBeLessThan(130);
  });
});

test('addresses: names first, then those of the network, in the form a browser takes', () => {
  const info = (address: string, family: 'IPv4' | 'IPv6', internal = false) =>
    ({ address, family, internal, netmask: '', mac: '', cidr: null, scopeid: 0 }) as never;
  const interfaces = {
    lo: [info('127.0.0.1', 'IPv4', true)],
    one: [info('192.168.1.20', 'IPv4'), info('fe80::1', 'IPv6'), info('169.254.3.4', 'IPv4')],
  };
  const of = (wish: object) => addressesOf({ port: 4900, secure: false, names: [], ...wish }, interfaces);
  expect(of({})).toEqual(['http://192.168.1.20:4900/']);
  expect(of({ names: ['mill.example'], secure: true, port: 443 })).toEqual([
    'https://mill.example/',
    'https://192.168.1.20/',
  ]);
  expect(of({ address: '::1' })).toEqual(['http://[::1]:4900/']);
});
