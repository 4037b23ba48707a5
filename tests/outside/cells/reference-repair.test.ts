import { describe } from 'vitest';
import { rowsWhere } from '../tables/reference.ts';
import { checkRow } from './row-check.ts';
import { one } from './sheet-of.ts';

const begins = (words: string) => rowsWhere(({ quantity }) => quantity.startsWith(words));

describe('keys, rings, pins and inserts of a repair', () => {
  for (const row of begins('Woodruff key'))
    checkRow(row.id, () => {
      const it = one('woodruff-key', { shaft: '2 in', key: String(row.inputs.key) });
      const printed = row.expected as Record<'width' | 'disc' | 'height' | 'seat' | 'way', number>;
      const corner = (2 + Math.sqrt(4 - printed.width ** 2)) / 2;
      return [
        { got: it('width', 'in'), expected: printed.width, near: 1e-9 },
        { got: it('disc', 'in'), expected: printed.disc, near: 1e-9 },
        { got: it('height', 'in'), expected: printed.height, near: 1e-9 },
        { got: it('seat_depth', 'in'), expected: printed.seat, near: 1e-4 },
        { got: it('over_way', 'in'), expected: corner + printed.way, near: 1e-4 },
        { got: it('over_seat', 'in'), expected: corner - printed.seat, near: 1e-4 },
      ];
    });
  for (const row of begins('snap ring'))
    checkRow(row.id, () => {
      const it = one('snap-ring-groove', { fits: String(row.inputs.ring_for), yield: '200 MPa' });
      const { ring, groove, width, shoulder, holds_kN } = row.expected as Record<
        'ring' | 'groove' | 'width' | 'shoulder' | 'holds_kN',
        number | undefined
      >;
      return [
        { got: it('groove', 'mm'), expected: groove!, near: 1e-9 },
        ...(width === undefined
          ? []
          : [
              { got: it('width', 'mm'), expected: width, near: 1e-9 },
              { got: it('play', 'mm'), expected: width - ring!, near: 1e-9 },
            ]),
        ...(shoulder === undefined
          ? []
          : [{ got: it('shoulder_wanted', 'mm'), expected: shoulder, near: 1e-9 }]),
        ...(holds_kN === undefined
          ? []
          : [{ got: it('side_holds', 'kN'), expected: holds_kN, within: 0.03 }]),
      ];
    });
  for (const row of begins('inch ring'))
    checkRow(row.id, () => {
      const { bore, ring, groove, width } = row.inputs as Record<string, number>;
      const it = one('snap-ring-groove', {
        own_size: `${bore} in`,
        groove_cut: `${groove} in`,
        ring: `${ring} in`,
        own_width: `${width} in`,
        yield: '45 ksi',
      });
      const printed = row.expected as { play: number; margin: number };
      return [
        { got: it('play', 'in'), expected: printed.play, near: 1e-9 },
        { got: it('shoulder_wanted', 'in'), expected: printed.margin, near: 6e-4 },
        { got: it('groove_depth', 'in'), expected: (groove! - bore!) / 2, near: 1e-9 },
      ];
    });
  for (const row of begins('taper pin'))
    checkRow(row.id, () => {
      const it = one('taper-pin', {
        large: `${row.inputs.large} in`,
        length: '1 in',
        hub: '0.9 in',
        shaft: '0.5 in',
      });
      return { got: it('small', 'in'), expected: row.expected as number, near: 1e-5 };
    });
  for (const row of begins('wire thread insert: depth to drill, plug'))
    checkRow(row.id, () => {
      const it = one('thread-insert', { thread: 'M8', lead_turns: '= 5 + 4 / 1.25' });
      return [
        { got: it('insert_length', 'mm'), expected: row.inputs.insert as number, near: 1e-9 },
        { got: it('drill_depth', 'mm'), expected: row.expected as number, near: 1e-9 },
      ];
    });
  for (const row of begins('wire thread insert: depth to drill and full'))
    checkRow(row.id, () => {
      const it = one('thread-insert', {
        thread: String(row.inputs.thread),
        length_share: String(row.inputs.share),
      });
      const printed = row.expected as { drill: number; full: number };
      return [
        { got: it('drill_depth', 'mm'), expected: printed.drill, near: 1e-9 },
        { got: it('full_thread', 'mm'), expected: printed.full, near: 1e-9 },
      ];
    });
});
