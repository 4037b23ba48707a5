import { type Band, bandOf } from '../../../shared/checks/band.ts';
import {
  behind,
  differenceUnit,
  formatNumber,
  formatQuantity,
  placesOf,
  type ShownFigure,
} from '../../../shared/quantities/figures.ts';
import {
  besideOf,
  formatFigure,
  formatLimit,
  limitNumber,
} from '../../../shared/quantities/printed-figure.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { Beside } from '../../../shared/quantities/told-together.ts';
import type { SheetUnits } from '../../../shared/sheet/format.ts';
import type { Unit } from '../../../shared/units/units.ts';
import { usesComma } from '../kit/decimal-mark.ts';
import type { Sheet } from './sheet.ts';

/** The band to tell behind a figure: that of its verdict, or by whether it was read off a part. */
export type Told = Band | boolean;

/** Writes the figures of one output in its unit, in the places their spread supports. */
export interface OutputShow {
  unit: Unit;
  /** `2.2515 in`; in the places of its band where that is told beside it. */
  value(figure: ShownFigure, band?: Told): string;
  /** `± 0.0002 in (k=2)` for a reading, `+0.0005 -0.0001 in`, the worst case, for all else; empty without one. */
  spread(figure: ShownFigure, band: Told): string;
  /** The same behind its own value, which has said the unit: `± 0.0002 (k=2)`. */
  beside(figure: ShownFigure, band: Told): string;
  /** Both at once, which is half the work. */
  told(figure: ShownFigure, band: Told): { value: string; beside: string };
  /** A limit with its unit, rounded as far as the figure beside it, with its band, allows; `limitNumber` without the unit. */
  limit(si: number, beside?: ShownFigure, band?: Told): string;
  limitNumber(si: number, beside?: ShownFigure, band?: Told): string;
  /** An SI number with its unit; in the places of `like` where that is given. */
  amount(si: number, like?: ShownFigure): string;
  /** The same without the unit. */
  number(si: number, like?: ShownFigure): string;
  /** A difference in the places of `like`, or finer where it would come to nothing there; signed unless told otherwise. */
  change(si: number, like?: ShownFigure, sign?: boolean): string;
  /** A signed difference behind its own value, which has said the unit. */
  step(si: number, like?: ShownFigure): string;
}

const bandFor = (figure: ShownFigure, told: Told): Band =>
  typeof told === 'boolean' ? bandOf(figure, undefined, told) : told;

const besideFor = (figure: ShownFigure | undefined, told: Told = false): Beside | undefined =>
  figure && besideOf(figure, bandFor(figure, told));

/** Which band it is, behind it. */
const marked = (spread: string, { mark }: Band): string => (spread && mark ? `${spread} ${mark}` : spread);

/** @param comma figures with a decimal comma. */
export const showIn = (unit: Unit, comma = false): OutputShow => ({
  unit,
  value: (figure, told = false) =>
    formatFigure(figure, unit, { comma, band: bandFor(figure, told) }).value + behind(unit),
  spread: (figure, told) => {
    const band = bandFor(figure, told);
    const text = formatFigure(figure, unit, { comma, band });
    return text.spread === '' ? '' : marked(text.spread + behind(differenceUnit(unit)), band);
  },
  beside: (figure, told) => {
    const band = bandFor(figure, told);
    return marked(formatFigure(figure, unit, { comma, band }).spread, band);
  },
  told: (figure, told) => {
    const band = bandFor(figure, told);
    const { value, spread } = formatFigure(figure, unit, { comma, band });
    return { value: value + behind(unit), beside: marked(spread, band) };
  },
  limit: (si, figure, told) => formatLimit(si, unit, { comma, beside: besideFor(figure, told) }),
  limitNumber: (si, figure, told) => limitNumber(si, unit, { comma, beside: besideFor(figure, told) }),
  amount: (si, like) => formatQuantity(si, unit, { comma, ...placesOf(like) }),
  number: (si, like) => formatNumber(si, unit, { comma, ...placesOf(like) }),
  change: (si, like, sign = true) =>
    differenceText(si, unit, like, { comma, sign }) + behind(differenceUnit(unit)),
  step: (si, like) => differenceText(si, unit, like, { comma, sign: true }),
});

const differenceText = (
  si: number,
  unit: Unit,
  like: ShownFigure | undefined,
  options: { comma: boolean; sign: boolean },
): string => {
  const step = differenceUnit(unit);
  const text = formatNumber(si, step, { ...options, ...placesOf(like) });
  return si !== 0 && !/[1-9]/.test(text)
    ? formatNumber(si, step, { ...options, spread: Math.abs(si) })
    : text;
};

/** Ways of showing by what they depend on: every figure on the sheet asks for one, and there are only a few. */
const known = new Map<string, OutputShow>();
const KNOWN = 1000;

const showFor = (
  quantity: string | undefined,
  units: SheetUnits,
  wish: string | undefined,
  comma: boolean,
): OutputShow => {
  const key = [quantity, units.length, units.temperature, wish, comma].join('\n');
  let found = known.get(key);
  if (!found) {
    if (known.size >= KNOWN) known.clear();
    found = showIn(displayUnit(quantity, units, wish), comma);
    known.set(key, found);
  }
  return found;
};

/** The unit an output is shown in: the cell's own wish, else the library's, else the sheet's for that kind of quantity. */
const unitOf = (sheet: Sheet, cell: string, output: string): Unit => showOf(sheet, cell, output).unit;

const showOf = (sheet: Sheet, cell: string, output: string): OutputShow => {
  const line = sheet.line(cell);
  const result = line?.shape?.outputs[output];
  const own = output === 'value' || line?.record.role !== 'cell' ? line?.record.display : undefined;
  const wish = line?.record.outputs?.[output]?.display ?? own ?? result?.display;
  return showFor(result?.quantity ?? line?.record.quantity, sheet.state.units, wish, usesComma());
};

/** The other system's unit, to show beside the sheet's own where that is asked. */
const otherUnit = (quantity: string | undefined, units: SheetUnits): Unit =>
  displayUnit(quantity, { ...units, length: units.length === 'in' ? 'mm' : 'in', temperature: undefined });

export const createShow = (sheet: Sheet) => ({
  output: (cell: string, output: string): OutputShow => showOf(sheet, cell, output),
  /** In the other system, where the sheet shows both and that system has a unit of its own for it. */
  other: (cell: string, output: string): OutputShow | undefined => {
    if (!sheet.state.units.both) return undefined;
    const own = unitOf(sheet, cell, output);
    const line = sheet.line(cell);
    const other = otherUnit(
      line?.shape?.outputs[output]?.quantity ?? line?.record.quantity,
      sheet.state.units,
    );
    return other.label === own.label ? undefined : showIn(other, usesComma());
  },
});

export type Show = ReturnType<typeof createShow>;
