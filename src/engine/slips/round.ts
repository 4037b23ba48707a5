import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Row } from '../network/layout.ts';
import { cellRow, planOf, type RowKey, setOf } from '../rows/key.ts';
import type { Slip } from '../rows/results.ts';
import { bandBelow } from './band.ts';
import { type Held, isAskedBeside, NOTHING } from './beside.ts';
import { type Closing, closeInQuestion } from './close-in.ts';
import { countedDatum } from './counted.ts';
import type { Datum } from './datum.ts';
import { type Expectation, fromLimits, fromMade, fromPair, fromPlan, supports } from './expectation.ts';
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
import { levelOf, type OwnView, ownView, pairSlip, ratioSlip, TELLING } from './reading-slips.ts';
import type { Sheaf } from './register.ts';
import { SheetAsked } from './sheet-asked.ts';
import { splitFraction } from './split-fraction.ts';
import { toleranceQuestion } from './tolerance-size.ts';
import { tooLong } from './too-long.ts';
import { underOrOver } from './under-or-over.ts';
import { warm } from './warm.ts';
import { isInsert, surfaceOf, wordsOf } from './words.ts';
import { plainly, written } from './written.ts';

function withoutOffer({ offer: _, ...slip }: Slip): Slip {
  return slip;
}

/** One round of questions over a sheet that stands still. */
export class Round extends SheetAsked {
  private readonly views = new Map<RowKey, OwnView>();
  private readonly helds = new Map<RowKey, Held>();
  private readonly asking = {
    heldOnce: (datum: Datum) => this.heldOnce(datum),
    boundTo: (datum: Datum) => this.register.boundTo(datum),
    isAnswered: ({ cell }: Datum, slip: Slip) => {
      const record = this.standing.scope.records.get(cell);
      return record !== undefined && isDismissed(record, slip);
    },
  };

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
    const { slips } = this.heldOnce(datum);
    const long = slips.length === 0 ? tooLong(datum) : undefined;
    return long ? [long] : isAskedBeside(datum, this.asking) ? [] : slips;
  }

  private heldOnce(datum: Datum): Held {
    const key = `${datum.key} ${datum.field}` as RowKey;
    let held = this.helds.get(key);
    if (!held) {
      held = this.held(datum);
      this.helds.set(key, held);
    }
    return held;
  }

  /** What the rest of the sheet shows of it. */
  private held(datum: Datum): Held {
    if (this.isUnopposed(datum) && datum.literals.every(({ value }) => value >= 0)) return NOTHING;
    const minus = minusOf(datum, this.words(datum), this.limits(datum));
    if (minus) return { slips: [minus] };
    const { slips, supported } = this.own(datum);
    // A plan that follows from a reading which is asked about itself is not to be gone by.
    const planned = datum.made ? planOf(datum.key) : undefined;
    const isRoot = ({ key }: Slip): boolean =>
      key.includes('#') || !planned || !this.followsOdd(planned, datum);
    if (slips.length > 0) return this.ofOwn(datum, slips.filter(isRoot));
    const part = this.surface(datum);
    const under = underOrOver(datum, isInsert(this.words(datum)) ? undefined : part, this.words(datum));
    if (under) return { slips: [under] };
    const { designation } = datum.spread ?? {};
    const letter =
      designation && holeOrShaft(datum.text, datum.field, designation, part, this.figure(datum.key));
    if (letter) return { slips: [letter] };
    const fraction = splitFraction(datum, this.expectations(datum));
    if (fraction) return { slips: [fraction] };
    if (supported) return NOTHING;
    for (const pair of this.register.pairsOf(datum.key)) {
      const other = this.register.datum(pair.from === datum.key ? pair.taken : pair.from);
      const view = other && this.own(other);
      // One odd reading of a list moves its level by nothing.
      if (view?.slips.some(({ key }) => !key.includes('#') || (other?.literals.length ?? 0) < 3)) continue;
      // Of two that do not go together the reading is asked about, not the figure given or chosen.
      if (other?.read && !datum.read && !view?.supported) continue;
      const held = this.ofPair(datum, pair, view?.supported ? undefined : other);
      if (held) return held;
    }
    for (const made of this.register.madeTo(datum.key)) {
      const slip = this.ofMade(datum, made)?.slip;
      // It may be that one as well.
      if (slip)
        return {
          slips: [withoutOffer(slip)],
          beside: { other: made, lead: Number.NEGATIVE_INFINITY, isFirst: false },
        };
    }
    return { slips: this.ofRatio(datum) };
  }

  private ofMade(datum: Datum, made: Datum) {
    const expected = datum.read ? fromMade(datum, made, this) : undefined;
    return expected && pairSlip(datum, expected, this);
  }

  /** Where the plan stands on a reading that may be the wrong one as well, no repair of this one is offered. */
  private ofOwn(datum: Datum, slips: Slip[]): Held {
    const [slip] = slips;
    const base = !slip || slip.key.includes('#') ? undefined : this.register.baseOf(datum);
    if (!slip || !base || this.own(base).supported || !this.ofMade(base, datum)) return { slips };
    const { message, ...rest } = withoutOffer(slip);
    return {
      slips: [{ ...rest, message: `${message} Or is it ${this.nameOf(base.key)}?` }],
      beside: { other: base, lead: Number.POSITIVE_INFINITY, isFirst: true },
    };
  }

  /** What the other part of a fit shows, where that one is not the odder of the two itself. */
  private ofPair(datum: Datum, pair: Pair, other: Datum | undefined): Held | undefined {
    const [expected, back] = [datum, other].map((side) => side && fromPair(side, pair, this));
    const own = expected && pairSlip(datum, expected, this);
    if (!own || this.movesAlong(datum, pair)) return undefined;
    if (this.followsOdd(pair.from === datum.key ? pair.taken : pair.from, datum)) return undefined;
    const odd = other?.read && back ? pairSlip(other, back, this) : undefined;
    // Of two that do not go together, the one that goes with a third is not the odd one.
    if (other && odd) {
      const [isBorne, isOtherBorne] = [this.isBorneOut(datum, pair), this.isBorneOut(other, pair)];
      if (isBorne && !isOtherBorne) return undefined;
      if (isOtherBorne && !isBorne) return { slips: [own.slip] };
    }
    // What is usual goes by the size, and the wrong one of two would make it narrower or wider: as if it were as wide.
    const widths = odd && back ? 2 * Math.log((back.high - back.low) / (expected.high - expected.low)) : 0;
    const lead = odd ? own.odds - odd.odds - widths : Number.POSITIVE_INFINITY;
    if (lead < -2 * TELLING) return undefined;
    // A repair of the wrong one of two would make it worse.
    if (lead > 2 * TELLING) return { slips: [own.slip] };
    const { message, ...slip } = withoutOffer(own.slip);
    if (!other) return { slips: [{ ...slip, message }] };
    return {
      slips: [{ ...slip, message: `${message} Or is it ${this.nameOf(other.key)}?` }],
      beside: { other, lead, isFirst: pair.from === datum.key },
    };
  }

  /** It goes with the other part of another difference than this one. */
  private isBorneOut(datum: Datum, but: Pair): boolean {
    if (this.register.boundTo(datum).length === 0) return false;
    return this.register.pairsOf(datum.key).some((pair) => {
      const other = this.register.datum(pair.from === datum.key ? pair.taken : pair.from);
      if (pair === but || !other?.read || this.movesAlong(datum, pair)) return false;
      const expected = fromPair(datum, pair, this);
      return expected !== undefined && supports(levelOf(datum), expected);
    });
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
