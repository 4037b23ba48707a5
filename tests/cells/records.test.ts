import { describe, expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellKind, DrawingValues } from '../../cells/record/cell.ts';
import { NONE, sameDimension } from '../../shared/dimension.ts';
import { problem } from '../../shared/problem.ts';
import { quantityKind } from '../../shared/quantities/quantities.ts';
import { unitSymbols } from '../../shared/units/units.ts';
import { checkExpr } from '../../src/language/compile/check.ts';
import { parseFormula } from '../../src/language/parse.ts';
import type { Reference, Scope, ValueType } from '../../src/language/syntax/syntax.ts';

const kinds = [...library.kinds.values()];
const each = kinds.map((kind) => [kind.key, kind] as const);

const typeOf = (name: string): ValueType => {
  const kind = quantityKind(name);
  return kind
    ? { kind: 'quantity', dimension: kind.dimension, ...(kind.point ? { point: true } : {}) }
    : { kind: 'quantity' };
};

/** Names as the cell's own formulas see them; those of outputs only where `outputs` is true. */
const scopeOf = (kind: CellKind, outputs: boolean): Scope => {
  const missing = (ref: Reference) =>
    problem('unknown-name', `${kind.key} has no ${ref.name}${ref.output ? `.${ref.output}` : ''}`);
  return {
    typeOf(ref) {
      const input = kind.inputs.find((one) => one.name === ref.name);
      if (input?.record !== undefined && ref.output !== undefined) {
        const of = library.kinds.get(input.record);
        const found = [...(of?.outputs ?? []), ...(of?.inputs ?? [])].find((one) => one.name === ref.output);
        return found?.quantity ? typeOf(found.quantity) : missing(ref);
      }
      if (input?.choice !== undefined) return { kind: 'text' };
      // The cell behind an input may be a set of readings; a plain value answers to these with itself.
      const ofReadings =
        ref.output === undefined || ['mean', 'least', 'greatest', 'doubt'].includes(ref.output);
      if (input?.quantity !== undefined) return ofReadings ? typeOf(input.quantity) : missing(ref);
      if (input?.record !== undefined) return { kind: 'quantity' };
      const output = outputs ? kind.outputs.find((one) => one.name === ref.name) : undefined;
      return output && !ref.output ? typeOf(output.quantity) : missing(ref);
    },
  };
};

const problemsOf = (
  kind: CellKind,
  text: string,
  wanted: ValueType | undefined,
  outputs = true,
): string[] => {
  const { expr, problems } = parseFormula(text);
  if (!expr) return problems.map((one) => `${text}: ${one.message}`);
  const { type, problems: found } = checkExpr(expr, scopeOf(kind, outputs), library.functions);
  const wrong = found.map((one) => `${text}: ${one.message}`);
  if (!wanted || wrong.length > 0) return wrong;
  const fits =
    wanted.kind === type.kind &&
    (type.kind !== 'quantity' ||
      wanted.kind !== 'quantity' ||
      !type.dimension ||
      !wanted.dimension ||
      (sameDimension(type.dimension, wanted.dimension) &&
        (sameDimension(type.dimension, NONE) || !type.point === !wanted.point)));
  return fits ? [] : [`${text}: gives ${JSON.stringify(type)}, wanted ${JSON.stringify(wanted)}`];
};

const differenceOf = (type: ValueType): ValueType =>
  type.kind === 'quantity'
    ? { kind: 'quantity', ...(type.dimension ? { dimension: type.dimension } : {}) }
    : type;

describe.each(each)('%s', (_, kind) => {
  test('has one name for one thing, none of them a unit', () => {
    const names = [...kind.inputs, ...kind.outputs].map((one) => one.name);
    expect(new Set(names).size).toBe(names.length);
    const foreign = names.filter((name) => !/^[A-Za-z][A-Za-z0-9_]*$/.test(name) || unitSymbols.has(name));
    expect(foreign).toEqual([]);
  });

  test('says what it is, and rests on something', () => {
    expect(kind.key).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
    expect(kind.edition).toBeGreaterThanOrEqual(1);
    for (const text of [kind.title, kind.purpose]) expect(text.trim()).not.toBe('');
    expect(kind.sources.length).toBeGreaterThan(0);
    expect(kind.assumptions.length).toBeGreaterThan(0);
    expect(kind.examples.length).toBeGreaterThan(0);
    if (kind.group === 'fits' || kind.group === 'heat') expect(kind.cautions.length).toBeGreaterThan(0);
  });

  test('shows one to four numbers on its face', () => {
    const face = kind.outputs.filter((output) => output.face);
    expect(face.length).toBeGreaterThanOrEqual(1);
    expect(face.length).toBeLessThanOrEqual(4);
  });

  test('has inputs of known kinds; a constant says where it comes from', () => {
    for (const input of kind.inputs) {
      const of = [input.quantity, input.record, input.choice].filter((one) => one !== undefined);
      expect(of, input.name).toHaveLength(1);
      if (input.quantity !== undefined) expect(quantityKind(input.quantity), input.quantity).toBeDefined();
      if (input.record !== undefined) expect(library.kinds.has(input.record), input.record).toBe(true);
      expect(input.default !== undefined && input.optional === true, input.name).toBe(false);
    }
  });

  test('reads only what a table has', () => {
    for (const output of kind.outputs.filter((one) => one.table !== undefined)) {
      const { choice, column } = output.table as NonNullable<typeof output.table>;
      const table = library.tables.get(kind.inputs.find((input) => input.name === choice)?.choice ?? '');
      expect(
        table?.rows.some((row) => row.columns[column] !== undefined),
        `${choice}.${column}`,
      ).toBe(true);
    }
  });

  test('says of every output whether geometry or a model gives it, and geometry of none that a model feeds', () => {
    const basisOf = new Map(kind.outputs.map((output) => [output.name, output.basis]));
    // What is read off a part with a gauge is a length.
    expect(kind.outputs.filter(({ ofPart, quantity }) => ofPart && quantity !== 'length')).toEqual([]);
    expect([...new Set(basisOf.values())].filter((one) => one !== 'geometry' && one !== 'model')).toEqual([]);
    const fed = kind.outputs
      .filter((output) => output.basis === 'geometry')
      .flatMap((output) =>
        (output.formula?.match(/(?<![\w.])[a-z_]\w*/gi) ?? [])
          .filter((word) => basisOf.get(word) === 'model')
          .map((word) => `${output.name} from ${word}`),
      );
    expect(fed).toEqual([]);
  });

  test('has formulas that read, name what is there and give what they should', () => {
    const found: string[] = [];
    for (const output of kind.outputs) {
      expect(
        [output.formula, output.table].filter((one) => one !== undefined),
        output.name,
      ).toHaveLength(1);
      expect(quantityKind(output.quantity), output.quantity).toBeDefined();
      const type = typeOf(output.quantity);
      if (output.formula) found.push(...problemsOf(kind, output.formula, type));
      for (const end of [output.spread?.low, output.spread?.high])
        if (end) found.push(...problemsOf(kind, end, differenceOf(type)));
      for (const limit of [output.limits?.lower, output.limits?.upper])
        if (limit?.startsWith('=')) found.push(...problemsOf(kind, limit, type));
    }
    for (const { holds } of kind.validity ?? []) found.push(...problemsOf(kind, holds, { kind: 'logical' }));
    for (const input of kind.inputs)
      if (input.default?.startsWith('='))
        found.push(...problemsOf(kind, input.default, typeOf(input.quantity as string), false));
    expect(found).toEqual([]);
  });

  test('withholds its results by what is entered alone', () => {
    // The engine can only hold a result back by figures that do not depend on it.
    const outputs = new Set(kind.outputs.map((one) => one.name));
    const asked = (kind.validity ?? [])
      .filter(({ grade }) => grade === 'error')
      .flatMap(({ holds }) => holds.match(/(?<![.\w])[A-Za-z_]\w*(?!\w*\()/g) ?? []);
    expect(asked.filter((name) => outputs.has(name))).toEqual([]);
  });

  test('has outputs that do not go round in a ring', () => {
    const needs = new Map(
      kind.outputs.map((output) => {
        const texts = [output.formula, output.spread?.low, output.spread?.high].filter(
          (one) => one !== undefined,
        );
        const words = texts.flatMap((text) => text.match(/[A-Za-z_][A-Za-z0-9_.]*/g) ?? []);
        return [output.name, new Set(words)] as const;
      }),
    );
    const open = (name: string, trail: readonly string[]): void => {
      expect(trail, `${[...trail, name].join(' -> ')}`).not.toContain(name);
      for (const next of needs.get(name) ?? []) if (needs.has(next)) open(next, [...trail, name]);
    };
    for (const name of needs.keys()) open(name, []);
  });

  test('has examples that fill in what is needed and expect what is there', () => {
    for (const example of kind.examples) {
      expect(example.source.trim()).not.toBe('');
      for (const name of Object.keys(example.inputs))
        expect(
          kind.inputs.some((input) => input.name === name),
          `input ${name}`,
        ).toBe(true);
      for (const input of kind.inputs)
        if (input.default === undefined && !input.optional)
          expect(example.inputs, `${example.title}: ${input.name}`).toHaveProperty(input.name);
      expect(Object.keys(example.expect).length).toBeGreaterThan(0);
      for (const name of Object.keys(example.expect))
        expect(
          kind.outputs.some((output) => output.name === name),
          `output ${name}`,
        ).toBe(true);
    }
  });

  test('draws nothing of what is not known, and only what it has', () => {
    if (!kind.drawing) return;
    expect(kind.drawing({})).toBeUndefined();
    const names = [...kind.inputs, ...kind.outputs].map((one) => one.name);
    for (const size of [0, 1e-6, 0.05, 1, 1e6, -1, Number.NaN]) {
      const values: DrawingValues = Object.fromEntries(names.map((name) => [name, size]));
      const drawn = kind.drawing(values);
      for (const shape of drawn?.shapes ?? []) {
        for (const [field, value] of Object.entries(shape))
          if (typeof value === 'number')
            expect(Number.isFinite(value), `${shape.kind}.${field} at ${size}`).toBe(true);
        if (shape.kind === 'dimension') expect(names).toContain(shape.of);
        if (shape.kind === 'path') expect(shape.d).not.toContain('NaN');
      }
    }
  });
});

test('trade functions have names of their own and know their quantities', () => {
  for (const fn of library.functions) {
    expect(fn.name).toMatch(/^[A-Z][A-Z0-9]*$/);
    expect(quantityKind(fn.gives), fn.gives).toBeDefined();
    for (const argument of fn.takes)
      if ('quantity' in argument) expect(quantityKind(argument.quantity), argument.quantity).toBeDefined();
    expect(fn.source.trim()).not.toBe('');
  }
});
