/** What an entry can be besides a formula, each read from its node of the grammar. */
import type { SyntaxNode } from '@lezer/common';
import { children, type Reading } from '../values/reading.ts';
import { readDesignation } from './designation.ts';
import type { ReadForm } from './form.ts';
import { readGaugeSetting } from './gauge-setting.ts';
import { readOffset } from './offset.ts';
import { readRange } from './range.ts';
import { readReadings } from './readings.ts';
import { readValue } from './value.ts';

export const readForm = (r: Reading, top: SyntaxNode): ReadForm | undefined => {
  const nodes = children(top);
  const named = (name: string) => nodes.find((node) => node.name === name);
  const drill = named('Drill');
  const thread = named('Thread');
  if (drill) return readDesignation(r, 'drill', drill);
  if (thread) return readDesignation(r, 'thread', thread);
  const within = named('Within');
  const range = named('Range');
  if (range) return readRange(r, range);
  const readings = named('Readings');
  if (readings) return readReadings(r, readings, within);
  const setting = named('Setting');
  if (setting) return readGaugeSetting(r, setting, within);
  const value = named('Value');
  if (!value) return undefined;
  const side = named('Side');
  return side ? readOffset(r, value, side) : readValue(r, value, nodes);
};
