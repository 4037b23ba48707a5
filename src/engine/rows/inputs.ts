import type { CellInput, CellKind, ChoiceTable } from '../../../cells/record/cell.ts';
import { problem } from '../../../shared/problem.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Expr, Reference } from '../../language/syntax/syntax.ts';
import type { CellBuilder } from './builder.ts';
import { choiceIn } from './choice-in.ts';
import { fold, mapRefs, quoted, rowRef } from './expr.ts';
import { sheetFormula } from './formulas.ts';
import { inputRow, outputRow, type RowKey } from './key.ts';
import { namedSizes } from './proof.ts';
import type { RowProof } from './row.ts';
import type { SheetScope } from './scope.ts';
import { solvedIn } from './solved-in.ts';
import { type ValuePlace, valueRows } from './value-rows.ts';

/** What an input of a library cell turned out to be. */
export type InputPlan =
  /** A row; `of` when it is a plain reference, so that `input.greatest` can ask the cell behind it. */
  | { kind: 'value'; key: RowKey; of?: { name: string; output?: string } }
  | { kind: 'record'; name: string }
  | { kind: 'choice'; text: string }
  /** Blank, optional or not: the key of a row that says so. */
  | { kind: 'blank'; key: RowKey };

/** Reads the inputs of a library cell, defaults included. An input that is a plain reference is an alias, not a row. */
export function readInputs(
  build: CellBuilder,
  scope: SheetScope,
  record: CellRecord,
  kind: CellKind,
  reference: string,
): ReadonlyMap<string, InputPlan> {
  const plans = new Map<string, InputPlan>();
  const gaugeInCell = kind.inputs.some((one) => one.record === 'gauge' && record.inputs?.[one.name]?.trim());
  const reading = { reference, ...(gaugeInCell ? { gaugeInCell } : {}) };
  const defaults: { input: CellInput; key: RowKey }[] = [];
  for (const input of kind.inputs) {
    const text = record.inputs?.[input.name]?.trim() ?? '';
    const key = inputRow(record.id, input.name);
    if (text === '' && input.default !== undefined && input.choice === undefined) {
      plans.set(input.name, { kind: 'value', key });
      defaults.push({ input, key });
      continue;
    }
    if (input.choice !== undefined && (text !== '' || input.default !== undefined)) {
      plans.set(input.name, choicePlan(build, scope, record, input, key));
      continue;
    }
    if (text === '') {
      build.blank(key, `\`${build.name}\`: ${input.label} is blank.`, input.optional === true);
      plans.set(input.name, { kind: 'blank', key });
      continue;
    }
    if (input.record !== undefined) plans.set(input.name, recordPlan(build, scope, record, input, text, key));
    else plans.set(input.name, valuePlan(build, scope, record, input, text, key, reading));
  }
  const isBlank = (name: string): boolean | undefined => {
    const plan = plans.get(name);
    return plan ? plan.kind === 'blank' : undefined;
  };
  for (const { input, key } of defaults) defaultRows(build, scope, plans, isBlank, input, key);
  return plans;
}

function defaultRows(
  build: CellBuilder,
  scope: SheetScope,
  plans: ReadonlyMap<string, InputPlan>,
  isBlank: (name: string) => boolean | undefined,
  input: CellInput,
  key: RowKey,
): void {
  const inner = (ref: Reference): Expr => {
    const plan = plans.get(ref.name);
    if (plan?.kind === 'record' && ref.output !== undefined) {
      const target = scope.resolve({ ...ref, name: plan.name });
      return 'message' in target ? rowRef(key) : rowRef(target.key);
    }
    if (plan?.kind === 'choice') return quoted(plan.text);
    if (plan?.kind === 'value' && plan.of && ref.output !== undefined) {
      const { name, output } = plan.of;
      const reading = output === undefined ? undefined : scope.readingOf(name, output, ref.output);
      if (reading !== undefined) return rowRef(reading);
      const target = scope.resolve({ ...ref, name, ...(output ? { output } : {}) });
      if (!('message' in target)) return rowRef(target.key);
    }
    return plan?.kind === 'value' || plan?.kind === 'blank'
      ? rowRef(plan.key)
      : rowRef(outputRow(build.cell.id, ref.name));
  };
  const before = build.cell.echoes;
  valueRows(
    build,
    scope,
    input.default as string,
    {
      key,
      field: `inputs.${input.name}`,
      role: input.role ?? 'given',
      quantity: input.quantity,
      blank: '',
      proof: proofOfDefault(input),
    },
    (expr) => {
      const folded = fold(expr, isBlank);
      const spots = namedSizes(folded, scope.library.functions);
      return { expr: mapRefs(folded, inner), proof: { basis: 'geometry', spots } };
    },
  );
  build.cell.echoes = before;
}

/** What a number typed for an input is to proof; by its role and quantity where the record says nothing. */
const proofOfTyped = ({ counts }: CellInput): RowProof | undefined =>
  counts === 'aside' ? { is: 'settled' } : counts === 'measured' ? { is: 'measured' } : undefined;

/**
 * The library's own number was read off no part, nor was nothing (a hole that is aimed at the middle): where a figure moves
 * with it, it is a plan. A formula is what it depends on, by geometry.
 */
const proofOfDefault = ({ counts, quantity, default: text = '' }: CellInput): RowProof | undefined => {
  if (counts === 'aside') return { is: 'settled' };
  if (text.startsWith('=')) return undefined;
  return { is: /^(length|angle|area|volume)$/.test(quantity ?? '') ? 'planned' : 'settled' };
};

function valuePlan(
  build: CellBuilder,
  scope: SheetScope,
  record: CellRecord,
  input: CellInput,
  text: string,
  key: RowKey,
  readings: NonNullable<ValuePlace['readings']>,
): InputPlan {
  const word = wordOf(text);
  if (word !== undefined) build.cell.mentions.add(word);
  const entry = bareName(scope, text);
  const parsed = scope.texts.entry(entry, input.quantity, input.role ?? 'given').entry;
  const alias =
    parsed.kind === 'formula' && !parsed.spread && parsed.expr.kind === 'ref' ? parsed.expr : undefined;
  if (alias) {
    const read = sheetFormula(build, scope, alias, input.quantity);
    if ('message' in read) {
      build.problem(key, read, `inputs.${input.name}`);
      return { kind: 'value', key };
    }
    const target = scope.resolve(alias);
    const of = { name: alias.name, ...(alias.output ? { output: alias.output } : {}) };
    return 'message' in target ? { kind: 'value', key } : { kind: 'value', key: target.key, of };
  }
  valueRows(build, scope, entry, {
    key,
    field: `inputs.${input.name}`,
    role: input.role ?? 'given',
    quantity: input.quantity,
    blank: '',
    proof: proofOfTyped(input),
    solved: record.solved ? solvedIn(scope, input.quantity, undefined) : undefined,
    readings,
  });
  return { kind: 'value', key };
}

/** Name of the cell that a text would mean which is nothing but a name, with or without an output. */
const wordOf = (text: string): string | undefined =>
  text.match(/^([\p{L}_][\p{L}\p{N}_]*)(?:\.[\p{L}_][\p{L}\p{N}_]*)?$/u)?.[1];

/** A name typed without `=` where a value is wanted means the cell of that name. */
function bareName(scope: SheetScope, text: string): string {
  const word = wordOf(text);
  return word !== undefined && scope.idOf(word) !== undefined ? `=${text}` : text;
}

function recordPlan(
  build: CellBuilder,
  scope: SheetScope,
  record: CellRecord,
  input: CellInput,
  text: string,
  key: RowKey,
): InputPlan {
  const kind = input.record as string;
  const found = scope.recordTaken(text, kind);
  const [from] = found.through;
  build.cell.mentions.add(from?.name ?? text.replace(/^=\s*/, ''));
  if (from) build.cell.feeds.add(from.id);
  const field = `inputs.${input.name}`;
  if ('record' in found) {
    const { name } = found.record as { name: string };
    if (found.through.length > 1) build.cell.echoes[field] = found.record.label ?? name;
    return { kind: 'record', name };
  }
  if ('blank' in found) {
    const { record: at, input: what } = found.blank;
    const name = scope.called(at.id);
    build.blank(key, `\`${name}\`: ${what.label} is not chosen yet.`, false, { name, id: at.id });
    return { kind: 'blank', key };
  }
  const { at, fault } = found;
  if (at && at.id !== record.id) {
    const origin = { name: scope.called(at.id), id: at.id };
    build.problem(key, problem('unknown-name', `${fault}.`), undefined, origin);
    return { kind: 'blank', key };
  }
  const choices = [...scope.records.values()]
    .filter((one) => one.kind === kind && one.name)
    .map((one) => ({ label: one.label ?? (one.name as string), entry: one.name as string }));
  build.problem(
    key,
    problem(
      'unknown-name',
      `${fault}: ${input.label} wants a ${kind} cell${choices.length > 0 ? '' : ', and the sheet has none yet'}.`,
      {
        ...(choices.length > 0 ? { choices } : {}),
      },
    ),
    field,
  );
  return { kind: 'blank', key };
}

function choicePlan(
  build: CellBuilder,
  scope: SheetScope,
  record: CellRecord,
  input: CellInput,
  key: RowKey,
): InputPlan {
  const field = `inputs.${input.name}`;
  const taken = scope.choices.nameTaken(record.inputs?.[input.name] ?? '');
  if (taken !== undefined) build.cell.mentions.add(taken);
  const found = scope.choices.of(record, input);
  const [from] = found.through;
  if (from) build.cell.feeds.add(from.id);
  if ('problem' in found) {
    if (found.at.id === record.id) build.problem(key, found.problem, field);
    else build.problem(key, found.problem, undefined, { name: scope.called(found.at.id), id: found.at.id });
    return { kind: 'value', key };
  }
  if ('blank' in found) {
    const { record: at, input: what } = found.blank;
    const name = scope.called(at.id);
    build.blank(key, `\`${name}\`: ${what.label} is not chosen yet.`, false, { name, id: at.id });
    return { kind: 'value', key };
  }
  const { text } = found;
  const table = scope.library.tables.get(input.choice as string);
  const row = table && choiceIn(table, text);
  if (from) build.cell.echoes[field] = row?.name ?? text;
  if (!table) return { kind: 'choice', text };
  if (row) return { kind: 'choice', text: row.key };
  const near = nearRows(table, text.toLowerCase());
  build.problem(
    key,
    problem('unknown-key', `"${text}" is not in the table ${table.title}. Choose a row of it.`, {
      choices: near.map((one) => ({ label: one.name, entry: one.key })),
    }),
    field,
  );
  return { kind: 'blank', key };
}

/** Rows that share most words with what was typed, best first. */
function nearRows(table: ChoiceTable, wanted: string): ChoiceTable['rows'] {
  const words = wanted.split(/[^\p{L}\p{N}.]+/u).filter((word) => word.length > 1);
  const scored = table.rows.map((row) => {
    const text = `${row.key} ${row.name}`.toLowerCase();
    return { row, score: words.filter((word) => text.includes(word)).length };
  });
  const best = Math.max(0, ...scored.map(({ score }) => score));
  return best === 0
    ? []
    : scored
        .filter(({ score }) => score === best)
        .map(({ row }) => row)
        .slice(0, 6);
}
