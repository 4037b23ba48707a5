import { expect, test } from 'vitest';
import { Hosts } from '../../src/shop/http/hosts.ts';

const hosts = new Hosts(['millpc', 'shop.example']);
const fault = (host?: string, origin?: string) =>
  hosts.fault({ headers: { ...(host !== undefined && { host }), ...(origin !== undefined && { origin }) } });

test.each([
  ['192.168.1.20:4900'],
  ['[fe80::1]:4900'],
  ['localhost:4900'],
  ['millpc:4900'],
  ['MILLPC.local.'],
  ['shop.example'],
])('%s is this server', (host) => expect(fault(host)).toBeUndefined());

test.each([
  [undefined, /does not say/],
  ['', /does not say/],
  ['evil.example:4900', /does not go by the name "evil.example"/],
  ['shop.example.evil.example', /does not go by/],
  ['192.168.1.20.evil.example', /does not go by/],
  ['a b', /does not say/],
  ['shop.example:4900/x', /does not say/],
  ['shop.example"><script>', /does not say/],
])('%s is not', (host, words) => expect(fault(host)).toMatch(words));

test('a page of another origin is turned away, with or without something in between that takes the certificate off', () => {
  expect(fault('shop.example:4900', 'http://shop.example:4900')).toBeUndefined();
  expect(fault('shop.example', 'https://shop.example')).toBeUndefined();
  expect(fault('shop.example:443', 'https://shop.example')).toBeUndefined();
  for (const origin of ['null', '', 'http://evil.example', 'http://shop.example', 'http://shop.example:81'])
    expect(fault('shop.example:4900', origin), origin).toMatch(/page of another server/);
});
