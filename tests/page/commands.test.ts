import { expect, test } from 'vitest';
import { isKey } from '../../src/page/state/key.ts';
import { linesBetween } from '../../src/page/state/selection.ts';

const press = (key: string, held: string[] = []) => ({
  key,
  ctrlKey: held.includes('Ctrl'),
  metaKey: held.includes('Meta'),
  altKey: held.includes('Alt'),
  shiftKey: held.includes('Shift'),
});

test('a key is the one printed, with Ctrl or Command', () => {
  expect(isKey('Ctrl+Z', press('z', ['Ctrl']))).toBe(true);
  expect(isKey('Ctrl+Z', press('z', ['Meta']))).toBe(true);
  expect(isKey('Ctrl+Z', press('Z', ['Ctrl', 'Shift']))).toBe(false);
  expect(isKey('Ctrl+Shift+Z', press('Z', ['Ctrl', 'Shift']))).toBe(true);
  expect(isKey('Shift+Space', press(' ', ['Shift']))).toBe(true);
  expect(isKey('Alt+↑', press('ArrowUp', ['Alt']))).toBe(true);
  expect(isKey('F9', press('F9'))).toBe(true);
  expect(isKey('F9', press('F9', ['Ctrl']))).toBe(false);
});

test('a sign is itself whatever the keyboard needs for it', () => {
  expect(isKey('?', press('?', ['Shift']))).toBe(true);
  expect(isKey('?', press('?'))).toBe(true);
  expect(isKey('?', press('?', ['Ctrl', 'Shift']))).toBe(false);
});

test('lines between two are the same from either side', () => {
  expect(linesBetween(['a', 'b', 'c', 'd'], 'b', 'd')).toEqual(['b', 'c', 'd']);
  expect(linesBetween(['a', 'b', 'c', 'd'], 'd', 'b')).toEqual(['b', 'c', 'd']);
  expect(linesBetween(['a'], 'a', 'gone')).toEqual([]);
});
