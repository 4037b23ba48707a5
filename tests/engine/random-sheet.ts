import fc from 'fast-check';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';

/** A cell of a random sheet with the same arithmetic in plain doubles, for comparison. */
export interface Sample {
  file: SheetFile;
  /** Names of leaves with their ends, metres. */
  leaves: { name: string; value: number; low: number; high: number }[];
  /** Worked out cells in order, as closures over the values before them. */
  formulas: { name: string; compute: (value: (name: string) => number) => number }[];
}

type Op = '+' | '-' | '*' | '/';

const leaf = fc.record({
  role: fc.constantFrom('given' as const, 'chosen' as const, 'measured' as const),
  micrometres: fc.integer({ min: 20_000, max: 90_000 }),
  tolerance: fc.integer({ min: 0, max: 60 }),
});

const step = fc.record({
  op: fc.constantFrom<Op>('+', '-', '*', '/'),
  left: fc.nat(1000),
  right: fc.nat(1000),
});

/**
 * A sheet of leaves with ± spreads and worked out cells over them and each other. Products and quotients are kept a
 * length by a unit length, so every cell is a length.
 */
export const randomSheet = fc
  .record({
    leaves: fc.array(leaf, { minLength: 2, maxLength: 6 }),
    steps: fc.array(step, { minLength: 1, maxLength: 10 }),
  })
  .map(({ leaves, steps }): Sample => {
    const cells: CellRecord[] = [];
    const sample: Sample = { file: sheetOf(cells), leaves: [], formulas: [] };
    const names: string[] = [];
    leaves.forEach(({ role: drawn, micrometres, tolerance }, i) => {
      const name = `leaf_${i}`;
      // No reading is without doubt: ± 0 behind one is not taken at its word.
      const role = tolerance === 0 ? 'given' : drawn;
      const text = `${micrometres} um${tolerance > 0 ? ` ± ${tolerance} um` : ' ± 0 um'}`;
      cells.push({ id: `c${cells.length}`, role, name, quantity: 'length', entry: text });
      const value = micrometres * 1e-6;
      sample.leaves.push({ name, value, low: value - tolerance * 1e-6, high: value + tolerance * 1e-6 });
      names.push(name);
    });
    steps.forEach(({ op, left, right }, i) => {
      const a = names[left % names.length] as string;
      const b = names[right % names.length] as string;
      const name = `step_${i}`;
      const text =
        op === '*'
          ? `=${a} * ${b} / 50 mm`
          : op === '/'
            ? `=${a} / (${b} + 200 mm) * 50 mm`
            : `=${a} ${op} ${b}`;
      cells.push({ id: `c${cells.length}`, role: 'worked', name, quantity: 'length', entry: text });
      sample.formulas.push({
        name,
        compute: (value) => {
          const x = value(a);
          const y = value(b);
          if (op === '+') return x + y;
          if (op === '-') return x - y;
          return op === '*' ? (x * y) / 0.05 : (x / (y + 0.2)) * 0.05;
        },
      });
      names.push(name);
    });
    return sample;
  });

export const sheetOf = (cells: CellRecord[]): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'random' },
  units: { length: 'mm' },
  rule: 'worst-case',
  cells,
});
