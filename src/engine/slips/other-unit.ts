import { type Asked, type Slipway, USUAL } from './guess.ts';
import { numberSpan } from './rewrite.ts';
import { scaled } from './shifted.ts';

/** Millimetres read where inches are written, or the other way round. */
export const otherUnit: Slipway = (asked) => {
  const inches = asked.datum.system === 'in';
  const factor = inches ? 1 / 25.4 : 25.4;
  return [
    {
      slip: 'other-unit',
      value: asked.value * factor,
      share: USUAL,
      question: inches ? 'Is that in millimetres?' : 'Is that in inches?',
      offer: () => renamed(asked) ?? scaled(asked, factor, inches ? 0.0254e-4 : 1e-6),
    },
  ];
};

/** A single plain number keeps its figures and changes its unit. */
function renamed({ datum }: Asked): string | undefined {
  const literal = datum.literals[0];
  if (!literal || datum.literals.length > 1 || datum.set || datum.spread) return undefined;
  if (literal.unit !== 'in' && literal.unit !== 'mm') return undefined;
  const span = numberSpan(datum, literal);
  const end = literal.bare ? span?.to : literal.to;
  if (!span || end === undefined) return undefined;
  const unit = literal.unit === 'in' ? 'mm' : 'in';
  return `${datum.text.slice(0, span.to)} ${unit}${datum.text.slice(end)}`;
}
