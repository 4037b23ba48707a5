import { describe, expect, it } from 'vitest';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import type { Change } from '../../src/document/model/change.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { bushJob } from './sample.ts';

const open = () => SheetDocument.fromFile(bushJob(), { id: 'job' });
const heard = (sheet: SheetDocument) => {
  const changes: Change[] = [];
  sheet.observe((change) => changes.push(change));
  return changes;
};

describe('a sheet as a document', () => {
  it('gives back the file it came from', () => {
    expect(open().toFile()).toEqual(bushJob());
  });

  it('keeps fields it does not know, empty records and keys that look like structure or prototypes', () => {
    const file = bushJob() as SheetFile & Record<string, unknown>;
    file.later = { deep: [1, { a: null }] };
    const inputs = JSON.parse('{"a.b": "1 in", "__proto__": "2 in", "#x": "3 in", "50%": "4 in"}');
    file.cells[2] = { ...file.cells[2]!, inputs, outputs: {}, limits: {}, '#order': 'mine' } as CellRecord;
    file.cells[4]!.outputs = { close_in: { unknown: { x: 1 } } as never };
    const back = JSON.stringify(SheetDocument.fromFile(file).toFile().cells[2]!.inputs);
    expect(JSON.parse(back)).toEqual(inputs);
    expect(Object.keys(JSON.parse(back))).toContain('__proto__');
    expect(SheetDocument.fromFile(file).toFile()).toEqual(file);
  });

  it('loses no cell of a file in which an id stands twice', () => {
    const file = bushJob();
    file.cells.push({ id: 'c3', role: 'remark', label: 'second' });
    expect(SheetDocument.fromFile(file).cells().at(-1)).toMatchObject({ role: 'remark', label: 'second' });
  });

  it('writes nothing when a field gets the value it has', () => {
    const sheet = open();
    const changes = heard(sheet);
    sheet.setEntry('c4', '=bore + 0.003 in');
    sheet.setField('c4', 'measured', { entry: '2.2541 in', gauge: 'bore_gauge' });
    expect(changes).toEqual([]);
    expect(sheet.undoLabel()).toBeUndefined();
  });
});

describe('fields', () => {
  it('sets one field of a record and leaves its neighbours', () => {
    const sheet = open();
    sheet.setField('c4', 'limits.lower', '=bore');
    sheet.setField('c5', 'outputs.close_in.measured.entry', '1.9 thou');
    sheet.setField('c5', 'inputs.length', '2 in');
    expect(sheet.cell('c4')!.limits).toEqual({ lower: '=bore', upper: '=bore + 0.004 in', metalOn: 'high' });
    expect(sheet.cell('c5')!.outputs!.close_in!.measured).toEqual({ entry: '1.9 thou' });
    expect(sheet.cell('c5')!.inputs!.length).toBe('2 in');
    expect(sheet.undoLabel()).toBe('length of press');
  });

  it('takes a field or a whole record away', () => {
    const sheet = open();
    sheet.setField('c4', 'measured', undefined);
    sheet.setField('c4', 'limits.metalOn', undefined);
    sheet.setEntry('c4', '');
    expect(sheet.cell('c4')).not.toHaveProperty('measured');
    expect(sheet.cell('c4')).not.toHaveProperty('entry');
    expect(sheet.cell('c4')!.limits).not.toHaveProperty('metalOn');
  });

  it('lets a reading blank where only a note to it is left', () => {
    const sheet = open();
    sheet.setField('c3', 'measured.note', 'at the top');
    expect(sheet.cell('c3')!.measured).toEqual({ entry: '', note: 'at the top' });
  });

  it('takes a choice for a choice, though a line is called so', () => {
    const sheet = open();
    sheet.addCell('c6', { name: 'bronze', role: 'given', entry: '1 in' });
    sheet.setField('c5', 'inputs.hub', 'bronze');
    const id = sheet.idOf('bronze')!;
    sheet.renameCell(id, 'brass');
    expect(sheet.cell('c5')!.inputs!.hub).toBe('bronze');
  });
});

describe('names', () => {
  it('follow a rename everywhere, and the change names all lines that read otherwise now', () => {
    const sheet = open();
    const changes = heard(sheet);
    expect(sheet.renameCell('c3', 'bore_found')).toBeUndefined();
    expect(sheet.cell('c4')).toMatchObject({
      entry: '=bore_found + 0.003 in',
      limits: { lower: '=bore_found + 0.002 in' },
    });
    expect(sheet.cell('c6')!.entry).toBe('=bore_found - press.close_in');
    expect(sheet.cell('c5')!.outputs!.close_in!.limits!.upper).toBe('=bore_found / 1000');
    expect(sheet.variants()[0]!.entries.bush_od).toBe('=bore_found + 0.004 in');
    expect(changes).toHaveLength(1);
    expect([...changes[0]!.changed].sort()).toEqual(['c3', 'c4', 'c5', 'c6']);
  });

  it('follow in gauges, records and answered questions', () => {
    const sheet = open();
    sheet.renameCell('c2', 'telescope_gauge');
    sheet.renameCell('c4', 'bush_outside');
    expect(sheet.cell('c3')!.gauge).toBe('telescope_gauge');
    expect(sheet.cell('c4')!.measured!.gauge).toBe('telescope_gauge');
    expect(sheet.cell('c5')!.inputs!.gauge).toBe('telescope_gauge');
    expect(sheet.cell('c5')!.dismissed![0]!.text).toBe('=bush_outside');
    expect(sheet.variants()[0]!.entries).toHaveProperty('bush_outside');
  });

  it('refuse what is taken or cannot be a name, and say why', () => {
    const sheet = open();
    expect(sheet.renameCell('c3', 'press')?.message).toContain(
      'press is already the name of the line "Press fit"',
    );
    expect(sheet.renameCell('c3', '2 bores')?.message).toContain('a name begins with a letter');
    expect(sheet.renameCell('c3', 'thou')?.message).toContain('is a unit');
    expect(sheet.renameCell('c3', '')?.message).toContain('bush_od uses bore');
    expect(sheet.cell('c3')!.name).toBe('bore');
    expect(sheet.undoLabel()).toBeUndefined();
  });

  it('typed before their cell is there follow it from its first rename on', () => {
    const sheet = open();
    sheet.setEntry('c6', '=journal + 1 in');
    const journal = sheet.addCell('c1', { role: 'measured', label: 'Journal' }, { nameFromLabel: true });
    sheet.renameCell(journal, 'journal_ground');
    expect(sheet.cell('c6')!.entry).toBe('=journal_ground + 1 in');
  });

  it('of a deleted line stay in what hung on it, and come back to it with undo', () => {
    const sheet = open();
    sheet.deleteCells(['c3']);
    expect(sheet.cell('c3')).toBeUndefined();
    expect(sheet.cell('c6')!.entry).toBe('=bore - press.close_in');
    expect(sheet.undo()).toBe('deletion of bore');
    sheet.renameCell('c3', 'hole');
    expect(sheet.cell('c6')!.entry).toBe('=hole - press.close_in');
  });

  it('leave braces that were typed as they are', () => {
    const sheet = open();
    sheet.setEntry('c6', '={c3} + bore');
    expect(sheet.cell('c6')!.entry).toBe('={c3} + bore');
    sheet.renameCell('c3', 'hole');
    expect(sheet.cell('c6')!.entry).toBe('={c3} + hole');
  });
});

describe('lines', () => {
  it('are added where asked, also a hundred times at one place', () => {
    const sheet = open();
    const ids = Array.from({ length: 100 }, (_, n) => sheet.addCell('c3', { label: `line ${n}` }));
    expect(sheet.order().slice(0, 3)).toEqual(['c1', 'c2', 'c3']);
    expect(sheet.order().slice(3, 103)).toEqual(ids.toReversed());
    expect(sheet.order()[0]).toBe('c1');
    const top = sheet.addCell(null, { label: 'top' });
    expect(sheet.order()[0]).toBe(top);
  });

  it('get a name from their label when asked, and never one that is taken', () => {
    const sheet = open();
    const named = (label: string) =>
      sheet.cell(sheet.addCell('c6', { label }, { nameFromLabel: true }))!.name;
    expect(named('Bore, as found')).toBe('bore_as_found');
    expect(named('Bore')).toBe('bore_2');
    expect(named('Bore')).toBe('bore_3');
    expect(named('2nd journal')).toBe('line_2nd_journal');
    expect(named('Bohrung Ø')).toBe('bohrung_ø');
    expect(named('—')).toBe('line');
  });

  it('move alone and together, in their order', () => {
    const sheet = open();
    sheet.moveCell('c6', 'c1');
    expect(sheet.order()).toEqual(['c1', 'c6', 'c2', 'c3', 'c4', 'c5']);
    sheet.moveCells(['c5', 'c2'], null);
    expect(sheet.order()).toEqual(['c2', 'c5', 'c1', 'c6', 'c3', 'c4']);
    sheet.moveCell('c4', 'c3');
    expect(sheet.undoLabel()).toBe('move of 2 lines');
  });

  it('copied speak of their copies, and of the rest as before', () => {
    const sheet = open();
    const [od, press] = sheet.duplicateCells(['c4', 'c5']);
    expect(sheet.order().slice(4)).toEqual(['c5', od, press, 'c6']);
    expect(sheet.cell(press!)).toMatchObject({
      name: 'press_2',
      inputs: { outer: '=bush_od_2', inner: '=bore' },
    });
    expect(sheet.undo()).toBe('copy of 2 lines');
    expect(sheet.toFile()).toEqual(bushJob());
  });
});

describe('undo', () => {
  it('takes back a batch as one step and says what it was', () => {
    const sheet = open();
    sheet.batch('new bush', () => {
      sheet.setEntry('c3', '2.26 in');
      sheet.renameCell('c3', 'hole');
      sheet.addCell('c3', { name: 'x', entry: '=hole' });
    });
    const after = sheet.toFile();
    expect(sheet.undo()).toBe('new bush');
    expect(sheet.toFile()).toEqual(bushJob());
    expect(sheet.redoLabel()).toBe('new bush');
    expect(sheet.redo()).toBe('new bush');
    expect(sheet.toFile()).toEqual(after);
  });

  it('leaves nothing of a batch that throws', () => {
    const sheet = open();
    const broken = () => {
      sheet.deleteCells(['c3']);
      throw new Error('stop');
    };
    expect(() => sheet.batch('broken', broken)).toThrow('stop');
    expect(sheet.toFile()).toEqual(bushJob());
    expect(sheet.undoLabel()).toBeUndefined();
  });

  it('leaves a field alone that somebody else has written since', () => {
    const [here, there] = [open(), new SheetDocument('job')];
    here.setEntry('c3', '2.26 in');
    there.applyUpdate(here.updateSince(), 'load');
    there.setEntry('c3', '2.27 in');
    here.applyUpdate(there.updateSince(), 'remote');
    here.undo();
    expect(here.cell('c3')!.entry).toBe('2.27 in');
  });

  it('keeps what somebody else wrote into a line whose adding is taken back and done again', () => {
    const [here, there] = [open(), new SheetDocument('job')];
    const id = here.addCell('c3', { label: 'Wall' });
    there.applyUpdate(here.updateSince(), 'load');
    there.setField(id, 'note', 'thin');
    here.undo();
    here.applyUpdate(there.updateSince(), 'remote');
    expect(here.cell(id)).toBeUndefined();
    here.redo();
    expect(here.cell(id)).toMatchObject({ label: 'Wall', note: 'thin' });
  });

  it('goes back to a revision as one step', () => {
    const sheet = open();
    sheet.renameCell('c3', 'hole');
    sheet.deleteCells(['c5']);
    sheet.moveCell('c6', null);
    sheet.setTitle('customer', 'the mill');
    const before = sheet.toFile();
    sheet.become(bushJob(), 'revision A');
    expect(sheet.toFile()).toEqual(bushJob());
    sheet.undo();
    expect(sheet.toFile()).toEqual(before);
  });
});
