import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fingerprintOfEdition1 } from '../../../shared/sheet/fingerprint.ts';
import type { CellRecord, SheetFile, SheetUnits } from '../../../shared/sheet/format.ts';
import { settle } from '../../../src/document/sharing/settle.ts';
import { printer, printOf, reader } from '../prints.ts';
import { bushJob } from '../sample.ts';

const sheet = (
  units: SheetUnits,
  cells: Partial<CellRecord>[],
  more: Partial<SheetFile> = {},
): SheetFile => ({
  ...bushJob(),
  units,
  variants: [],
  cells: cells.map((cell, k) => ({ id: `c${k}`, role: 'given', ...cell })) as CellRecord[],
  ...more,
});

const BARE: Partial<CellRecord>[] = [
  { role: 'measured', name: 'bore', quantity: 'length', entry: '2.2512; 2.2514', at: '71' },
  { name: 'shop_heat', quantity: 'temperature', entry: '68' },
  {
    role: 'chosen',
    name: 'od',
    quantity: 'length',
    entry: '=bore ± 0.0005',
    limits: { lower: '2.25', upper: '2.26' },
    measured: { entry: '2.2541' },
  },
  { role: 'cell', name: 'fit', kind: 'interference-fit', inputs: { length: '1.5' } },
  { name: 'n', quantity: 'number', entry: '3' },
];

describe('a sheet with bare numbers', () => {
  it.each([
    ['lengths', BARE],
    ['a temperature alone', BARE.slice(1, 2)],
    ['a part temperature alone', [{ ...BARE[0], entry: '2.25 in' }]],
    ['a spread of unknown kind', [{ role: 'worked' as const, name: 'x', entry: '=1 in + 1 in ± 0.002' }]],
    ['a number of unknown kind', [{ name: 'x', entry: '2.25' }]],
    [
      'an input of an unknown kind of cell',
      [{ role: 'cell' as const, kind: 'unheard-of', inputs: { a: '2.25' } }],
    ],
  ])('has another fingerprint in inches than in millimetres: %s', (_what, cells) => {
    const [inch, mm] = [sheet({ length: 'in' }, cells), sheet({ length: 'mm' }, cells)];
    expect(fingerprintOfEdition1(inch)).toBe(fingerprintOfEdition1(mm));
    expect(printOf(inch)).not.toBe(printOf(mm));
  });

  it('is written with the unit behind each, and reads the same in the other units then', () => {
    const inch = sheet({ length: 'in' }, BARE, {
      title: { title: 'Bush', referenceTemperature: '68' },
      variants: [{ name: 'heavier', entries: { od: '2.2550', 'fit.length': '1.6' } }],
    });
    const { file, bare } = settle(inch, reader);
    expect(bare).toBe(false);
    expect(file.cells).toMatchObject([
      { entry: '2.2512; 2.2514 in', at: '71 degF' },
      { entry: '68 degF' },
      { limits: { lower: '2.25 in', upper: '2.26 in' }, measured: { entry: '2.2541 in' } },
      { inputs: { length: '1.5 in' } },
      { entry: '3' },
    ]);
    expect(file.title.referenceTemperature).toBe('68 degF');
    expect(file.variants).toEqual([
      { name: 'heavier', entries: { od: '2.2550 in', 'fit.length': '1.6 in' } },
    ]);
    const there: SheetFile = { ...file, units: { length: 'mm', temperature: 'degC' } };
    expect(settle(there, reader).file).toEqual(there);
    expect(new Set([inch, file, there].map(printOf)).size).toBe(1);
  });

  it('leaves open which unit is meant where a line is shown in the small one', () => {
    const line = { quantity: 'length', entry: '4', limits: { upper: '5' } };
    const [plain, thou] = [{}, { display: 'thou' }].map((more) =>
      sheet({ length: 'in' }, [{ ...line, ...more }]),
    );
    expect(settle(plain!, reader).file.cells[0]?.entry).toBe('4 in');
    expect(settle(thou!, reader)).toEqual({ file: thou, bare: true });
    expect(printOf(thou!)).not.toBe(printOf(plain!));
  });

  it('keeps its answers to questions', () => {
    const dismissed = [{ slip: 'turn', text: '2.25' }];
    const { file } = settle(
      sheet({ length: 'in' }, [{ quantity: 'length', entry: '2.25', dismissed }]),
      reader,
    );
    expect(file.cells[0]?.dismissed).toEqual([{ slip: 'turn', text: file.cells[0]?.entry }]);
  });
});

it('is settled once and for all, whatever is typed (law)', () => {
  const text = fc.oneof(
    fc.constantFrom(
      '2.25',
      '2.2510..2.2515',
      '1 1/4',
      '=a + 1 in ± 0.001',
      '2.25 +.001 -.002',
      '50 H7',
      '#7',
      '68F',
      '1,234',
      '15 tenths',
      '2.25 in',
      '38 mm',
    ),
    fc.string({ maxLength: 12 }),
  );
  fc.assert(
    fc.property(
      text,
      text,
      fc.constantFrom('length', 'temperature', 'number', undefined),
      (entry, lower, quantity) => {
        const inch = sheet({ length: 'in' }, [
          { name: 'a', entry, limits: { lower }, ...(quantity && { quantity }) },
        ]);
        const { file } = settle(inch, reader);
        expect(settle(file, reader).file).toEqual(file);
        expect(printOf(file)).toBe(printOf(inch));
      },
    ),
    { seed: 14, numRuns: 300 },
  );
});

it('is known again by a fingerprint of either edition, and by the whole of it alone', async () => {
  const file = bushJob();
  const [one, two] = [fingerprintOfEdition1(file), await printer.print(file)];
  expect(await Promise.all([one, two].map((print) => printer.isOf(print, file)))).toEqual([true, true]);
  expect(await Promise.all([one, two].map((print) => printer.isOf(print.slice(0, 40), file)))).toEqual([
    false,
    false,
  ]);
});
