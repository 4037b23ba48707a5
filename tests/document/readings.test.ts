import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mergedReadings } from '../../src/document/model/merged-readings.ts';
import type { Overwritten } from '../../src/document/model/overwritten.ts';
import { putTogether, takeApart } from '../../src/document/model/readings.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { walk } from '../walk.ts';
import { bushJob } from './sample.ts';

/** A desk and a pad on one sheet, which tell each other what they wrote when asked to. */
const deskAndPad = (entry?: string) => {
  const desk = SheetDocument.fromFile(bushJob());
  if (entry !== undefined) desk.setEntry('c3', entry);
  const pad = new SheetDocument(desk.id);
  pad.applyUpdate(desk.updateSince(), 'load');
  const meet = () => {
    const [fromDesk, fromPad] = [desk.updateSince(pad.stateVector()), pad.updateSince(desk.stateVector())];
    desk.applyUpdate(fromPad, 'remote');
    pad.applyUpdate(fromDesk, 'remote');
    expect(pad.toFile()).toEqual(desk.toFile());
    return desk.cell('c3')!.entry;
  };
  return { desk, pad, meet };
};

const readingsOf = (entry: string | undefined): string[] => takeApart(entry ?? '')?.places.flat() ?? [];

describe('a list of readings', () => {
  it('keeps what desk and pad add at the same time', () => {
    const { desk, pad, meet } = deskAndPad('2.2512; 2.2514 | 2.2515 in ± 0.0002 in');
    desk.setEntry('c3', '2.2512; 2.2514; 2.2511 | 2.2515 in ± 0.0002 in');
    pad.setEntry('c3', '2.2512; 2.2514 | 2.2515; 2.2516 in ± 0.0002 in');
    expect(meet()).toBe('2.2512; 2.2514; 2.2511 | 2.2515; 2.2516 in ± 0.0002 in');
    // One takes back only its own.
    pad.undo();
    expect(meet()).toBe('2.2512; 2.2514; 2.2511 | 2.2515 in ± 0.0002 in');
    pad.redo();
    expect(meet()).toBe('2.2512; 2.2514; 2.2511 | 2.2515; 2.2516 in ± 0.0002 in');
  });

  it('keeps the first readings of both, place by place', () => {
    const { desk, pad, meet } = deskAndPad('');
    for (const text of ['2.2512 in', '2.2512; 2.2514 in', '2.2512; 2.2514 | 2.2515 in'])
      desk.setEntry('c3', text);
    for (const text of ['2.2522 in', '2.2522; 2.2524 in', '2.2522; 2.2524 | 2.2525 in'])
      pad.setEntry('c3', text);
    const [first, second] = takeApart(meet()!)!.places;
    expect(first!.toSorted()).toEqual(['2.2512', '2.2514', '2.2522', '2.2524']);
    expect(second!.toSorted()).toEqual(['2.2515', '2.2525']);
  });

  it('keeps the unit that a reading was read in, where another unit comes to stand behind the list', () => {
    const { desk, pad, meet } = deskAndPad('2.2512 in');
    desk.setEntry('c3', '57.180; 57.185 mm');
    pad.setEntry('c3', '2.2512; 2.2514 in');
    expect(['57.180 mm; 57.185 mm; 2.2514 in', '57.180 mm; 2.2514 in; 57.185 mm']).toContain(meet());
  });

  it('keeps a reading that is added while the list is taken away', () => {
    const { desk, pad, meet } = deskAndPad('2.2512; 2.2514 in');
    desk.setEntry('c3', '');
    pad.setEntry('c3', '2.2512; 2.2514; 2.2516 in');
    expect(meet()).toBe('2.2516 in');
  });

  it('tells both of a reading that is added while a formula is put in place of the list', () => {
    const { desk, pad, meet } = deskAndPad('2.2512; 2.2514 in');
    const told: Record<string, Overwritten[]> = { desk: [], pad: [] };
    desk.observeOverwritten((found) => told.desk!.push(...found));
    pad.observeOverwritten((found) => told.pad!.push(...found));
    desk.setEntry('c3', '=bush_od - 3 thou');
    pad.setEntry('c3', '2.2512; 2.2514; 2.2516 in');
    expect(meet()).toBe('=bush_od - 3 thou');
    expect(told.pad).toMatchObject([{ cell: 'c3', key: 'entry', mine: '2.2516 in' }]);
    expect(told.desk).toMatchObject([{ cell: 'c3', key: 'entry', mine: '2.2516 in', another: true }]);
    desk.enterAgain(told.desk![0]!);
    expect(meet()).toBe('2.2516 in');
  });

  it('that both took apart from an old text is one list', () => {
    const old = (sheet: SheetDocument) => sheet.cell('c4')!.measured!.entry;
    const { desk, pad, meet } = deskAndPad();
    desk.setField('c4', 'measured.entry', '2.2541; 2.2542 in');
    pad.setField('c4', 'measured.entry', '2.2541; 2.2543 in');
    meet();
    expect(readingsOf(old(desk)).toSorted()).toEqual(['2.2541', '2.2542', '2.2543']);
  });

  it('is undone as a whole, or left where somebody has changed one of the readings it wrote', () => {
    const { desk, pad, meet } = deskAndPad('2.2512; 2.2514 in');
    desk.setEntry('c3', '2.2522; 2.2524 in');
    meet();
    pad.setEntry('c3', '2.2522; 2.2534 in');
    meet();
    desk.undo();
    expect(meet()).toBe('2.2522; 2.2534 in');
  });

  it('that is typed while a reading comes keeps both, and is asked about where both changed one reading', () => {
    const opened = '2.2512; 2.2514 in';
    expect(mergedReadings(opened, '2.2512; 2.2514; 2.2516', '2.2512; 2.2514; 2.2518 in')).toMatch(
      /^2\.2512; 2\.2514; 2\.251[68]; 2\.251[68] in$/,
    );
    expect(mergedReadings(opened, '2.2512; 2.2524 in', '2.2512; 2.2514 | 2.2518 in')).toBe(
      '2.2512; 2.2524 | 2.2518 in',
    );
    expect(mergedReadings(opened, '2.2512; 2.2524 in', '2.2512; 2.2534 in')).toBeUndefined();
    expect(mergedReadings(opened, '=bush_od', '2.2512; 2.2534 in')).toBeUndefined();
  });

  const reading = fc.integer({ min: 1, max: 40 }).map((n) => (2.25 + n / 10_000).toFixed(4));
  const list = fc.array(fc.array(reading, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 4 });
  const tail = fc.constantFrom(' in', ' mm', '"', ' in ± 0.0002 in', '');

  it('says the very text that was written, after any other', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(list, tail), { minLength: 1, maxLength: 6 }), (texts) => {
        const { desk } = deskAndPad();
        for (const [places, end] of texts) {
          const text = putTogether({ places, tail: end });
          desk.setEntry('c3', text);
          expect(desk.cell('c3')!.entry).toBe(text);
        }
        const written = texts.map(([places, end]) => putTogether({ places, tail: end }));
        while (desk.undo()) written.pop();
        expect(desk.toFile()).toEqual(bushJob());
      }),
      { seed: 31, numRuns: walk(60, 2000) },
    );
  });

  it('loses none of what many add at once', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.boolean(), fc.boolean(), fc.boolean()), { maxLength: 30 }),
        (steps) => {
          const { desk, pad, meet } = deskAndPad('2.2512 in');
          const all = ['2.2512'];
          for (const [atPad, along, met] of steps) {
            const sheet = atPad ? pad : desk;
            const { places, tail: end } = takeApart(sheet.cell('c3')!.entry!)!;
            const text = (3 + all.length / 10_000).toFixed(4);
            all.push(text);
            if (along) places.push([text]);
            else places[0]!.push(text);
            sheet.setEntry('c3', putTogether({ places, tail: end }));
            if (met) meet();
          }
          expect(readingsOf(meet()).toSorted()).toEqual(all.toSorted());
        },
      ),
      { seed: 32, numRuns: walk(40, 1000) },
    );
  });
});
