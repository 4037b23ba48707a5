import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { HyperFormula } from 'hyperformula';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { slimText } from '../../src/setup/slim-hyperformula.mjs';
import { expectSameAnswers } from '../engine/same-answers.ts';

const SEED = 20261127;

const folder = mkdtempSync(join(tmpdir(), 'fitwright-slim-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The engine over HyperFormula as it ships in the page, and over the whole of it. */
const engines = async () => {
  const whole = await import('../../src/engine/engine.ts');
  const file = join(folder, 'hyperformula.mjs');
  writeFileSync(file, await slimText());
  vi.resetModules();
  vi.doMock('hyperformula', () => import(/* @vite-ignore */ pathToFileURL(file).href));
  const { HyperFormula: Slim } = await import('hyperformula');
  const slim = await import('../../src/engine/engine.ts');
  const { workOut } = await import('../../src/engine/book/worked-example.ts');
  vi.doUnmock('hyperformula');
  vi.resetModules();
  const wholly = await import('../../src/engine/book/worked-example.ts');
  return { whole: whole.Engine, slim: slim.Engine, Slim, workOut: { whole: wholly.workOut, slim: workOut } };
};
let made: Awaited<ReturnType<typeof engines>>;
beforeAll(async () => {
  made = await engines();
});

describe('HyperFormula without what the engine cannot reach', () => {
  it('is another than the whole, and lacks what is left out', () => {
    expect(made.Slim).not.toBe(HyperFormula);
    expect(Object.keys(Object.getOwnPropertyDescriptors(HyperFormula.prototype))).toContain('addRows');
    expect(Object.keys(Object.getOwnPropertyDescriptors(made.Slim.prototype))).not.toContain('addRows');
    expect(made.slim).not.toBe(made.whole);
  });

  it('answers every edit of a sheet of every kind of cell, right and wrong, as the whole does', () => {
    expectSameAnswers(() => [new made.whole(library), new made.slim(library)], { seed: SEED, numRuns: 15 });
  });

  it('works every example of the cell book out as the whole does', () => {
    for (const kind of library.kinds.values())
      for (const example of kind.examples)
        expect(made.workOut.slim(library, kind, example), `${kind.key}: ${example.title}`).toEqual(
          made.workOut.whole(library, kind, example),
        );
  });

  it('reads and refuses formulas as the whole does', () => {
    const atom = fc.oneof(
      fc.constantFrom(
        '$A1',
        '$A2',
        '$B3',
        '$C1',
        'TRUE()',
        'FALSE()',
        '"text"',
        '#REF!',
        'A1:B2',
        'OFFSET($A1,1,1)',
        '{1;2}',
      ),
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((x) => String(x).replace('E', 'e')),
      fc.constantFrom('1e308', '0', '-0', '5e-324', '.5', '1.', '1e', '('),
    );
    const { formula } = fc.letrec<{ formula: string }>((tie) => ({
      formula: fc.oneof(
        { maxDepth: 4, withCrossShrink: true },
        atom,
        fc
          .tuple(
            tie('formula'),
            fc.constantFrom('+', '-', '*', '/', '^', '=', '<>', '<', '>', '<=', '>=', '&', '%', ' '),
            tie('formula'),
          )
          .map(([a, op, b]) => `(${a})${op}(${b})`),
        fc
          .tuple(
            fc.constantFrom('IF', 'AND', 'OR', 'NOT', 'IFERROR', 'SWITCH', 'if', 'UNKNOWN'),
            fc.array(tie('formula'), { maxLength: 3 }),
          )
          .map(([name, args]) => `${name}(${args.join(',')})`),
        tie('formula').map((a) => `-${a}`),
      ),
    }));
    const both = [HyperFormula, made.Slim].map((Made) => {
      const engine = Made.buildEmpty({ licenseKey: 'gpl-v3', smartRounding: false, caseSensitive: true });
      engine.addSheet('S');
      return engine;
    });
    fc.assert(
      fc.property(fc.array(formula, { minLength: 9, maxLength: 9 }), (formulas) => {
        const [expected, got] = both.map((engine) => {
          engine.suspendEvaluation();
          formulas.forEach((text, i) => {
            engine.setCellContents({ sheet: 0, row: i % 3, col: Math.floor(i / 3) }, `=${text}`);
          });
          return JSON.stringify(engine.resumeEvaluation());
        });
        expect(got).toBe(expected);
      }),
      { seed: SEED, numRuns: 400 },
    );
    for (const engine of both) engine.destroy();
  });
});
