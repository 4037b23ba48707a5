import type { Command } from '../state/command.ts';

const key = (id: string, label: string, ...keys: string[]): Command => ({
  id: `moving.${id}`,
  label,
  group: 'Moving about',
  keys,
  heard: 'lines',
});

/** Keys that move the cursor on the lines; they do nothing when picked from a list, and are only shown. */
export const movingKeys: readonly Command[] = [
  key('step', 'One line or column on', '↑', '↓', '←', '→'),
  key('ends', 'First or last column of the line', 'Home', 'End'),
  key('corners', 'First or last line of the sheet', 'Ctrl+Home', 'Ctrl+End'),
  key('edges', 'To the edge that way', 'Ctrl+↑', 'Ctrl+↓', 'Ctrl+←', 'Ctrl+→'),
  key('page', 'Ten lines on', 'Page Up', 'Page Down'),
  key('type', 'Begin a new entry', 'any figure, sign or letter, on the entry'),
  key('out', 'Into the fields of an unfolded line, and out', 'Tab', 'Shift+Tab'),
];
