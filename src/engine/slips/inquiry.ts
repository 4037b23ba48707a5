import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Row } from '../network/layout.ts';
import type { AssembledCell } from '../rows/assembled.ts';
import { cellRow, planOf, type RowKey, setOf } from '../rows/key.ts';
import type { Slip } from '../rows/results.ts';
import { bandBelow } from './band.ts';
import { type Closing, closeInQuestion } from './close-in.ts';
import { countedDatum } from './counted.ts';
import type { Datum } from './datum.ts';
import { type Expectation, fromLimits, fromMade, fromPair, fromPlan } from './expectation.ts';
import { isDismissed } from './fields.ts';
import { type Gauged, gaugeQuestion } from './gauge-range.ts';
import { holeOrShaft } from './hole-or-shaft.ts';
import {
  INTERFERENCE_PER_DIAMETER,
  interferenceQuestion,
  minusOf,
  offUsual,
  turnedInterference,
} from './interference.ts';
import type { Pair } from './pairs.ts';
import { type OwnView, ownView, pairSlip, ratioSlip, TELLING } from './reading-slips.ts';
import { Register, type Sheaf } from './register.ts';
import { SheetAsked, type Standing } from './sheet-asked.ts';
import { splitFraction } from './split-fraction.ts';
import { toleranceQuestion } from './tolerance-size.ts';
import { tooLong } from './too-long.ts';
import { underOrOver } from './under-or-over.ts';
import { warm } from './warm.ts';
import { isInsert, surfaceOf, wordsOf } from './words.ts';
import { plainly, written } from './written.ts';

/** Asks, after an edit, about what reads well but is probably not what was meant; remembers what it asked. */
export class Inquiry {
  private readonly register = new Register();
  private readonly asked = new Map<string, { slips: Slip[]; text: string }>();

  /** Slips of a cell as last asked. */
  slipsOf(cell: string): Slip[] {
    return this.asked.get(cell)?.slips ?? [];
  }

  /**
   * Takes an edit in: cells assembled anew, cells gone, and cells any of whose figures moved. Gives the cells whose
   * questions changed.
   */
  ask(
    assembled: readonly AssembledCell[],
    gone: readonly string[],
    moved: Iterable<string>,
    standing: Standing,
  ): Set<string> {
    const before = this.register.around([...gone, ...assembled.map((cell) => cell.id)]);
    this.register.take(assembled, gone, standing.scope, standing.reference);
    for (const id of gone) this.asked.delete(id);
    const examined = this.register.around(moved);
    for (const id of before) examined.add(id);
    const round = new Round(this.register, standing);
    const changed = new Set<string>();
    for (const id of examined) {
      const sheaf = this.register.sheaves.get(id);
      const record = standing.scope.records.get(id);
      const slips = sheaf && record ? round.slips(sheaf, record) : [];
      const text = slips.length > 0 ? JSON.stringify(slips) : '';
      if ((this.asked.get(id)?.text ?? '') === text) continue;
      if (text === '') this.asked.delete(id);
      else this.asked.set(id, { slips, text });
      changed.add(id);
    }
    return changed;
  }
}

function withoutOffer({ offer: _, ...slip }: Slip): Slip {
  return slip;
}

/** One round of questions over a sheet that stands still. */
class Round extends SheetAsked {
  private readonly views = new Map<RowKey, OwnView>();

  slips(sheaf: Sheaf, record: CellRecord): Slip[] {
    const found: Slip[] = [];
    for (const datum of sheaf.data) found.push(...this.ofDatum(datum));
    const { nominal, system } = this.standing;
    const counted = sheaf.counted && countedDatum(sheaf.counted, nominal, system);
    if (counted) found.push(...this.ofDatum(counted));
    for (const one of sheaf.gauged) {
      // What was probably written down wrong was not read with another gauge as well.
      const slip = found.some(({ field }) => field === one.field) ? undefined : this.ofGauge(one);
      if (slip) found.push(slip);
    }
    found.push(...this.ofTolerance(record));
    for (const one of sheaf.warmths) {
      const size = this.nominal(one.key);
      const datum = this.register.datum(one.key);
      if (size === undefined || !datum) continue;
      const { over, text, field } = one;
      const alpha = one.alpha === undefined ? undefined : this.nominal(one.alpha);
      const band = bandBelow(one.key, this.standing.network, this.register, this);
      const slip = warm({ field, over, text, size, alpha, band }, (si) => written(si, datum));
      if (slip) found.push(slip);
    }
    for (const pair of sheaf.pairs) {
      const slip = this.ofInterference(pair);
      if (slip) found.push(slip);
    }
    for (const closing of sheaf.closings) {
      const slip = this.ofClosing(closing);
      if (slip) found.push(slip);
    }
    // One question a line: what else is odd may follow from it.
    return found.filter((slip) => !isDismissed(record, slip)).slice(0, 1);
  }

  /** True where the text is one plain figure that nothing else on the sheet speaks of: there is nothing to ask. */
  private isUnopposed(datum: Datum): boolean {
    const { text, literals, made, offset, spread } = datum;
    return (
      literals.length === 1 &&
      !made &&
      !offset &&
      !spread?.designation &&
      !text.includes('/') &&
      this.register.isAlone(datum) &&
      !this.outputOf(datum)?.limits
    );
  }

  private ofDatum(datum: Datum): Slip[] {
    const slips = this.held(datum);
    const long = slips.length === 0 ? tooLong(datum) : undefined;
    return long ? [long] : slips;
  }

  /** What the rest of the sheet shows of it. */
  private held(datum: Datum): Slip[] {
    if (this.isUnopposed(datum) && datum.literals.every(({ value }) => value >= 0)) return [];
    const minus = minusOf(datum, this.words(datum), this.limits(datum));
    if (minus) return [minus];
    const { slips, supported } = this.own(datum);
    // A plan that follows from a reading which is asked about itself is not to be gone by.
    const planned = datum.made ? planOf(datum.key) : undefined;
    const isRoot = ({ key }: Slip): boolean =>
      key.includes('#') || !planned || !this.followsOdd(planned, datum);
    if (slips.length > 0) return slips.filter(isRoot).map((slip) => this.unlessBase(slip, datum));
    const part = this.surface(datum);
    const under = underOrOver(datum, isInsert(this.words(datum)) ? undefined : part, this.words(datum));
    if (under) return [under];
    const { designation } = datum.spread ?? {};
    const letter =
      designation && holeOrShaft(datum.text, datum.field, designation, part, this.figure(datum.key));
    if (letter) return [letter];
    const fraction = splitFraction(datum, this.expectations(datum));
    if (fraction) return [fraction];
    if (supported) return [];
    for (const pair of this.register.pairsOf(datum.key)) {
      const other = this.register.datum(pair.from === datum.key ? pair.taken : pair.from);
      const view = other && this.own(other);
      // One odd reading of a list moves its level by nothing.
      if (view?.slips.some(({ key }) => !key.includes('#') || (other?.literals.length ?? 0) < 3)) continue;
      // Of two that do not go together the reading is asked about, not the figure given or chosen.
      if (other?.read && !datum.read && !view?.supported) continue;
      const slip = this.ofPair(datum, pair, view?.supported ? undefined : other);
      if (slip) return [slip];
    }
    for (const made of this.register.madeTo(datum.key)) {
      const slip = this.ofMade(datum, made)?.slip;
      // It may be that one as well.
      if (slip) return [withoutOffer(slip)];
    }
    return this.ofRatio(datum);
  }

  private ofMade(datum: Datum, made: Datum) {
    const expected = datum.read ? fromMade(datum, made, this) : undefined;
    return expected && pairSlip(datum, expected, this);
  }

  /** Where the plan stands on a reading that may be the wrong one as well, no repair of this one is offered. */
  private unlessBase(slip: Slip, datum: Datum): Slip {
    const base = slip.key.includes('#') ? undefined : this.register.baseOf(datum);
    return base && !this.own(base).supported && this.ofMade(base, datum) ? withoutOffer(slip) : slip;
  }

  /** What the other part of a fit shows, where that one is not the odder of the two itself. */
  private ofPair(datum: Datum, pair: Pair, other: Datum | undefined): Slip | undefined {
    const [expected, back] = [datum, other].map((side) => side && fromPair(side, pair, this));
    const own = expected && pairSlip(datum, expected, this);
    if (!own || this.movesAlong(datum, pair)) return undefined;
    if (this.followsOdd(pair.from === datum.key ? pair.taken : pair.from, datum)) return undefined;
    const odd = other?.read && back ? pairSlip(other, back, this) : undefined;
    // What is usual goes by the size, and the wrong one of two would make it narrower or wider: as if it were as wide.
    const widths = odd && back ? 2 * Math.log((back.high - back.low) / (expected.high - expected.low)) : 0;
    const lead = odd ? own.odds - odd.odds - widths : Number.POSITIVE_INFINITY;
    if (lead < -2 * TELLING) return undefined;
    // A repair of the wrong one of two would make it worse.
    if (lead > 2 * TELLING) return own.slip;
    const { message, ...slip } = withoutOffer(own.slip);
    return other
      ? { ...slip, message: `${message} Or is it ${this.nameOf(other.key)}?` }
      : { ...slip, message };
  }

  /** It is worked out from a reading which is asked about itself. */
  private followsOdd(key: RowKey, but?: Datum): boolean {
    const start = this.standing.network.rows.get(key);
    const seen = new Set<Row>(start ? [start] : []);
    for (const row of seen) {
      const datum = this.register.datum(setOf(row.key));
      if (datum && datum !== but && this.own(datum).slips.length > 0) return true;
      for (const used of row.uses) seen.add(used);
    }
    return false;
  }

  /** A size that the gauge it was read with does not reach. */
  private ofGauge(one: Gauged): Slip | undefined {
    const datum = this.register.datum(one.key);
    return gaugeQuestion(one, datum, this.standing);
  }

  /** An interference typed as such, against the diameter it belongs to. */
  private ofRatio(datum: Datum): Slip[] {
    const value = this.nominal(datum.key);
    for (const { diameter } of this.register.ratiosOf(datum.key)) {
      const across = this.nominal(diameter);
      if (value === undefined || across === undefined || across <= 0) continue;
      const slip = ratioSlip(datum, value, across, this);
      if (slip) return [slip];
    }
    return [];
  }

  private ofTolerance(record: CellRecord): Slip[] {
    const text = this.standing.scope.choices.toleranceOf(record);
    if (!/^[A-Za-z]{1,2}\d{1,2}$/.test(text)) return this.ofWidth(record, text);
    const part = this.surfaceOfRow(cellRow(record.id), surfaceOf(wordsOf(record)), record.limits?.metalOn);
    const slip = holeOrShaft(text, 'tolerance', text, part, this.figure(cellRow(record.id)));
    return slip ? [slip] : [];
  }

  /** How wide the tolerance of a size to be cut is. */
  private ofWidth(record: CellRecord, text: string): Slip[] {
    const key = cellRow(record.id);
    const datum = this.register.datum(key);
    const plan = this.figure(key);
    if (text === '' || record.role !== 'chosen' || !datum || datum.offset || !plan) return [];
    const slip = toleranceQuestion({
      text,
      field: 'tolerance',
      size: plan.value,
      width: plan.high - plan.low,
      band: bandBelow(key, this.standing.network, this.register, this),
      said: (si) => written(si, datum),
    });
    return slip ? [slip] : [];
  }

  /** An interference worked out from two sizes that neither of them explains, where no library cell says so itself. */
  private ofInterference(pair: Pair): Slip | undefined {
    const key = pair.output.planned as RowKey;
    if (pair.word !== 'interference' || pair.output.limits || this.register.ratiosOf(key).length > 0)
      return undefined;
    const value = this.nominal(key);
    const diameter = this.nominal(pair.taken);
    if (value === undefined || diameter === undefined || diameter <= 0) return undefined;
    const sides = [pair.from, pair.taken].map((side) => this.register.datum(side));
    if (sides.some((side) => side && this.ofDatum(side).length > 0)) return undefined;
    // As far as it is known: what two coarse readings leave open is no slip.
    const { low, high } = this.figure(key) ?? {};
    const near = INTERFERENCE_PER_DIAMETER[value < INTERFERENCE_PER_DIAMETER.low * diameter ? 'low' : 'high'];
    const isOpen = (low ?? value) <= near * diameter && near * diameter <= (high ?? value);
    const message = isOpen
      ? undefined
      : (interferenceQuestion(value, diameter) ?? turnedInterference(value, diameter));
    return message === undefined
      ? undefined
      : { key: 'interference:entry', field: 'entry', message, cost: offUsual(value, diameter) };
  }

  /** A bore that closed in by more than any interference of the sheet can give, where none of the sizes is asked about itself. */
  private ofClosing(closing: Closing): Slip | undefined {
    const closed = this.figure(closing.key);
    const by = closing.by ? [closing.by] : [...this.register.pressed.values()];
    if (!closed || by.length === 0 || this.followsOdd(closing.key)) return undefined;
    let most: { key: RowKey; high: number } | undefined;
    for (const key of by) {
      const high = this.figure(key)?.high ?? this.nominal(key);
      if (high === undefined || !Number.isFinite(high) || this.followsOdd(key)) return undefined;
      if (!most || high > most.high) most = { key, high };
    }
    if (!most) return undefined;
    const said = closing.by ? 'the interference' : `the interference of ${this.nameOf(most.key)}`;
    return closeInQuestion(closing, closed, { high: most.high, said }, (si) =>
      plainly(si, this.standing.system),
    );
  }

  private own(datum: Datum): OwnView {
    let view = this.views.get(datum.key);
    if (!view) {
      view = ownView(datum, () => this.pairExpectations(datum), this);
      this.views.set(datum.key, view);
    }
    return view;
  }

  private expectations(datum: Datum) {
    return [
      ...[fromPlan(datum, this), fromLimits(datum, this)].filter((one) => one !== undefined),
      ...this.pairExpectations(datum),
    ];
  }

  private pairExpectations(datum: Datum): Expectation[] {
    return this.register
      .pairsOf(datum.key)
      .filter((pair) => !this.movesAlong(datum, pair))
      .map((pair) => fromPair(datum, pair, this))
      .filter((one) => one !== undefined);
  }

  /** The other part is worked out from this size: it moves along with it, and says nothing about it. */
  private movesAlong(datum: Datum, pair: Pair): boolean {
    return this.hangsOn(pair.from === datum.key ? pair.taken : pair.from, datum.key);
  }

  private hangsOn(key: RowKey, on: RowKey): boolean {
    const rows = this.standing.network.rows;
    const start = rows.get(key);
    if (!start) return false;
    const seen = new Set<Row>([start]);
    for (const row of seen) {
      if (setOf(row.key) === on) return true;
      for (const used of row.uses) seen.add(used);
    }
    return false;
  }
}
