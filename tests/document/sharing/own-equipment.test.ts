import { describe, expect, it } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import {
  dropEquipment,
  type Equipment,
  equipmentIn,
  equipmentOf,
  isKept,
  keepEquipment,
  withEquipment,
} from '../../../src/document/sharing/own-equipment.ts';
import { jobOf } from '../../../src/document/template.ts';
import { sheetOf } from '../../templates/shelf.ts';

const own = (kind: string) =>
  library.kinds.get(kind)?.inputs.filter(({ ofShop }) => ofShop === 'filled') ?? [];
const job = jobOf(sheetOf('bush-in-opened-out-bore.json'), 'x');
const cellOf = (file: typeof job, name: string) => file.cells.find((cell) => cell.name === name)!;

const micrometer: Equipment = {
  kind: 'gauge',
  label: 'No. 4',
  inputs: { gauge: 'micrometer-1-2-in', certificate: '0.00004 in', correction: '-0.0001 in' },
};
const bore: Equipment = { kind: 'gauge', label: 'Bore gauge', inputs: { gauge: 'dial-bore-gauge-in' } };
const press: Equipment = {
  kind: 'bush-press',
  label: 'Press',
  inputs: { ram_bore: '3 in', rated_pressure: '5000 psi' },
};

describe('the shop’s own equipment', () => {
  it('is filled in where a template asks for such a one, the setting master and all else of the template stay', () => {
    const { file, taken } = withEquipment(job, [micrometer, bore, press], own);
    expect(cellOf(file, 'journal_mic').inputs).toEqual(micrometer.inputs);
    expect(cellOf(file, 'bush_gauge').inputs).toEqual({ set_in: 'journal_mic', ...bore.inputs });
    expect(cellOf(file, 'press').inputs).toEqual({ ...cellOf(job, 'press').inputs, ...press.inputs });
    expect(taken).toHaveLength(4);
    // Neither what is of another range nor a fact of the machine.
    for (const name of ['bush_mic', 'rod_mic', 'bronze', 'journal', 'bore'])
      expect(cellOf(file, name), name).toEqual(cellOf(job, name));
  });

  it('leaves a line where two could be meant, or where something stands already', () => {
    const second = { ...micrometer, inputs: { ...micrometer.inputs, certificate: '0.00008 in' } };
    expect(withEquipment(job, [micrometer, second], own).taken).toEqual([]);
    const named = { ...second, label: cellOf(job, 'journal_mic').label! };
    expect(cellOf(withEquipment(job, [micrometer, named], own).file, 'journal_mic').inputs).toEqual(
      named.inputs,
    );
    const begun = {
      ...job,
      cells: job.cells.map((cell) =>
        cell.name === 'journal_mic' ? { ...cell, inputs: { gauge: 'micrometer-1-2-in' } } : cell,
      ),
    };
    expect(withEquipment(begun, [micrometer], own).taken).toEqual([]);
  });

  it('is what of a line stays the same from job to job, and no formula of the sheet', () => {
    const line = {
      ...cellOf(job, 'press'),
      inputs: { diameter: '= bush_outside', ram_bore: '3 in', rated_pressure: '= x', least_margin: '1.5' },
    };
    expect(equipmentIn(line, own)).toEqual({
      kind: 'bush-press',
      label: line.label,
      inputs: { ram_bore: '3 in' },
    });
    expect(equipmentIn(cellOf(job, 'press'), own)).toBeUndefined();
    expect(equipmentIn(cellOf(job, 'bronze'), own)).toBeUndefined();
  });

  it('is kept once, and let go again', async () => {
    const settings = new Map<string, unknown>([['equipment', [{ kind: 4 }, 'x', null]]]);
    const shop = {
      setting: async (key: string) => settings.get(key),
      changeSetting: async (key: string, change: (now: unknown) => unknown) =>
        settings.set(key, change(settings.get(key))),
    };
    expect(await equipmentOf(shop)).toEqual([]);
    await keepEquipment(shop, micrometer);
    expect(await keepEquipment(shop, { ...micrometer, label: 'again' })).toEqual([micrometer]);
    expect(isKept(await equipmentOf(shop), micrometer)).toBe(true);
    expect(await dropEquipment(shop, micrometer)).toEqual([]);
    // Pressed at once, none of them is gone; one from another device says so, and replaces nothing.
    const other = {
      ...micrometer,
      inputs: { ...micrometer.inputs, certificate: '0.00008 in' },
      from: 'Desk',
    };
    await Promise.all([micrometer, press, other].map((one) => keepEquipment(shop, one)));
    expect(await equipmentOf(shop)).toEqual([micrometer, press, other]);
    expect(await keepEquipment(shop, { ...micrometer, from: 'Desk' })).toEqual([micrometer, press, other]);
  });
});
