import { expect, test } from 'vitest';
import { spacedReadings } from '../../src/page/entry/spaced-readings.ts';

test('readings parted by blanks, tabs or line ends are a list', () => {
  expect(spacedReadings('1.7481 1.7480 1.7482 in')).toBe('1.7481; 1.7480; 1.7482 in');
  expect(spacedReadings('1.7481\n1.7480\n1.7482\n')).toBe('1.7481; 1.7480; 1.7482');
  expect(spacedReadings('44,912 44,913 mm')).toBe('44,912; 44,913 mm');
  expect(spacedReadings('44,912 mm 44,913 mm')).toBe('44,912; 44,913 mm');
  expect(spacedReadings('1.7481" 1.7480"')).toBe('1.7481; 1.7480"');
  expect(spacedReadings('1.7481, 1.7480, 1.7482')).toBe('1.7481; 1.7480; 1.7482');
  expect(spacedReadings('44,912, 44,913 mm')).toBe('44,912; 44,913 mm');
  expect(spacedReadings('12 13 12 thou')).toBe('12; 13; 12 thou');
  expect(spacedReadings('2 1/4 2 17/64 in')).toBe('2 1/4; 2 17/64 in');
  expect(spacedReadings('13 thou 12.5 thou')).toBe('13; 12.5 thou');
  expect(spacedReadings('1.7481 1.7480 ± .0001')).toBe('1.7481; 1.7480 ± .0001');
  expect(spacedReadings('1.7481 1.7480 in +/- 0.0001 in')).toBe('1.7481; 1.7480 in +/- 0.0001 in');
  expect(spacedReadings('1.7481 1.7480;')).toBe('1.7481; 1.7480');
});

test('lines of several readings are places along, and so is what a stroke parts', () => {
  expect(spacedReadings('1.7481\t1.7480\n1.7482\t1.7483')).toBe('1.7481; 1.7480 | 1.7482; 1.7483');
  expect(spacedReadings('1.7481 1.7480\n1.7482\n')).toBe('1.7481; 1.7480 | 1.7482');
  expect(spacedReadings('1.7481; 1.7480\n1.7482; 1.7483 in')).toBe('1.7481; 1.7480 | 1.7482; 1.7483 in');
  expect(spacedReadings('1.7481 | 1.7480 1.7482 | 1.7483')).toBe('1.7481 | 1.7480; 1.7482 | 1.7483');
});

test('one size, a doubt behind it, a list as it should be and units that differ stay as they are', () => {
  for (const text of [
    '2 1/4 in',
    '2.2513 in ± 0.0002 in',
    '1.7481; 1.7480 in',
    '1.7481 | 1.7480 in',
    '2.0010 +.0001 -.0002',
    '1.7481 in 44.4 mm',
    '=a + 1.5 mm',
    '1 1.5',
    '44 912 mm',
    '1 234.5',
    '1.7481;',
    '1.7481; 1.7480;',
    '1.7481 and 1.7480',
    '1.7481 ± 0.0001',
    '1.7481',
    'set 1.7500, +14 divisions of .0001',
  ])
    expect(spacedReadings(text)).toBe(text);
});
