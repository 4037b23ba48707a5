import { describe, expect, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import { workedOut } from './example-sheet.ts';

/** Every worked example of every cell, through the engine. Grade and source stand in the title of the check. */
const said = { seen: 'seen', computed: 'computed', memory: 'from memory', recomputed: 'recomputed' } as const;

for (const kind of library.kinds.values())
  describe(kind.key, () => {
    for (const example of kind.examples)
      test(`${example.title} [${example.source}] ${said[example.grade]}`, () => {
        for (const { name, got, expected, tolerance } of workedOut(kind, example))
          expect(
            Math.abs(got - expected),
            `${name}: ${got}, expected ${expected} within ${tolerance} (SI)`,
          ).toBeLessThanOrEqual(tolerance);
      });
  });
