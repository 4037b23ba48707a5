import type { CheckState } from '../../../shared/checks/check.ts';
import type { Library } from '../../engine/rows/library.ts';
import { leading, ORDER, standingOf } from '../kit/check-words.ts';
import type { SheetContext } from '../state/context.ts';
import { standingFigure } from '../state/moves.ts';

/** One line in the drawn chain. */
export interface ChainNode {
  id: string;
  number: string;
  title: string;
  /** `2.2636 in`; empty while there is none. */
  value: string;
  /** Of a library cell, what of it the value is: `bore to`. */
  of?: string;
  /** The verdict that most asks for a look; absent without limits. */
  state?: CheckState;
}

export interface ChainEdge {
  from: string;
  to: string;
}

export interface ChainGraph {
  nodes: ChainNode[];
  edges: ChainEdge[];
}

/** Kinds that say how far something can be trusted: they feed nearly every line and hide the chain when drawn. */
const BEHIND = new Set(['gauge', 'material']);

const worstState = (states: readonly CheckState[]): CheckState | undefined =>
  ORDER.filter((standing) => standing !== 'none')
    .flatMap((standing) => states.filter((state) => standingOf(state) === standing))
    .at(0);

type Seen = Pick<SheetContext, 'sheet' | 'show'>;

const shownValue = (
  { sheet, show }: Seen,
  id: string,
  library: Library | undefined,
): Pick<ChainNode, 'value' | 'of'> => {
  const line = sheet.line(id);
  const outputs = line?.result?.outputs ?? {};
  const face = library?.kinds.get(line?.record.kind ?? '')?.outputs.find((output) => output.face);
  const name = face?.name ?? (outputs.value ? 'value' : 'mean');
  const figure = standingFigure(outputs[name]);
  if (!figure) return { value: '' };
  return { value: show.output(id, name).value(figure), ...(face && { of: face.label }) };
};

/** What feeds what on a sheet, in its own order. Without gauges and materials unless they are asked for. */
export const chainGraph = (seen: Seen, library: Library | undefined, withBehind: boolean): ChainGraph => {
  const { sheet } = seen;
  const shown = sheet.state.order.filter((id) => {
    const record = sheet.line(id)?.record;
    if (!record || record.role === 'section' || record.role === 'remark') return false;
    return withBehind || !(record.role === 'cell' && BEHIND.has(record.kind ?? ''));
  });
  const known = new Set(shown);
  const nodes = shown.map((id): ChainNode => {
    const states = Object.values(sheet.line(id)?.result?.outputs ?? {}).map(
      ({ check }) => leading(check).state,
    );
    const state = worstState(states);
    return {
      id,
      number: String(sheet.numberOf(id) ?? ''),
      title: sheet.titleOf(id),
      ...shownValue(seen, id, library),
      ...(state && { state }),
    };
  });
  const edges = shown.flatMap((to) =>
    [...new Set(sheet.line(to)?.result?.feeds ?? [])]
      .filter((from) => known.has(from) && from !== to)
      .map((from) => ({ from, to })),
  );
  return { nodes, edges };
};
