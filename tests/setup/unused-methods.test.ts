import { expect, test } from 'vitest';
import { withoutUnusedMethods } from '../../src/setup/unused-methods.mjs';

/** Methods that are left, in the order they stand in. */
const left = (code: string, called: string[] = [], only: Record<string, string[]> = {}) =>
  [...withoutUnusedMethods(code, { called, only }).code.matchAll(/\b(\w+)(?:\(\) \{| = function)/g)].map(
    ([, name]) => name,
  );

test('a method goes when nothing that stays reads its name, and what only it called goes with it', () => {
  const code = 'class A { used() { this.inner(); } inner() {} gone() { this.deeper(); } deeper() {} }';
  expect(left(code, ['used'])).toEqual(['used', 'inner']);
  expect(withoutUnusedMethods(code, { called: ['used'] }).left).toBe(2);
});

test.each([
  ['as a member', 'x.name;'],
  ['in a pattern', 'const { name } = x;'],
  ['in a string, which may be used as one', "x['name'];"],
  ['by its start', `x[\`nam\${y}\`];`],
  ['by its start, put together', "x['nam' + y];"],
])('a name read %s keeps every method of that name', (_, reading) => {
  const code = `class A { name() {} other() {} } class B { name() {} } ${reading}`;
  expect(left(code)).toEqual(['name', 'name']);
});

test('what is written or deleted under a made-up name is not read', () => {
  expect(left(`class A { name1() {} } x['name' + y] = z; delete x[\`name\${y}\`];`)).toEqual([]);
});

test('what a class reads of itself is asked of its own line of classes, up and down', () => {
  const classes = `
    class Base { start() { this.step(); } step() {} }
    class Low extends Base { step() {} }
    class Other { step() {} }`;
  expect(left(classes, ['start'])).toEqual(['start', 'step', 'step']);
  // Where its own have no such name it may have been mixed in from anywhere.
  expect(left('class A { go() { this.step(); } } class B { step() {} }', ['go'])).toEqual(['go', 'step']);
  // In a function of its own, `this` may be anything.
  expect(
    left(`class A { go() { return function () { this.step(); }; } step() {} } class B { step() {} }`, ['go']),
  ).toEqual(['go', 'step', 'step']);
});

test('functions put on a prototype are methods too', () => {
  const code =
    'A.prototype.used = function () { this.b(); }; A.prototype.b = function () {}; A.prototype.gone = function () {};';
  expect(left(code, ['used'])).toEqual(['used', 'b']);
});

test('of a class told apart stay the methods told, and what is read off its name', () => {
  const code =
    'class Api { wanted() {} add() {} static make() {} } class Inner { add() {} } x.add(); Api.make();';
  expect(left(code, [], { Api: ['wanted'] })).toEqual(['wanted', 'make', 'add']);
});

test('constructors, and methods under names worked out, stay', () => {
  const code = 'class A { constructor() { this.x = 1; } [Symbol.iterator]() {} gone() {} }';
  expect(withoutUnusedMethods(code, { called: [] })).toMatchObject({ left: 1 });
});
