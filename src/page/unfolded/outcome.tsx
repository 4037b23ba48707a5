import { For } from 'solid-js';
import type { SimulatedOutput, Simulation } from '../../engine/montecarlo/types.ts';
import { useSheet } from '../state/context.ts';
import { Histogram } from './histogram.tsx';
import { shareWords } from './share-words.ts';

interface DrawsOutcomeProps {
  simulation: Simulation;
  drawn: SimulatedOutput;
}

/** One output over all draws: its distribution, its interval, the chance of each side, and whether the linear figure will do. */
export const DrawsOutcome = (props: DrawsOutcomeProps) => {
  const { sheet, show } = useSheet();
  const at = () => show.output(props.drawn.cell, props.drawn.output);
  /** Places by the spread that was drawn. */
  const like = () => ({
    value: props.drawn.mean,
    low: props.drawn.mean - props.drawn.deviation,
    high: props.drawn.mean + props.drawn.deviation,
    centre: props.drawn.mean,
    u: props.drawn.deviation,
  });
  const result = () => sheet.line(props.drawn.cell)?.result?.outputs[props.drawn.output];
  const limits = () => {
    const { lower, upper, wear } = result()?.limits ?? {};
    return [
      ...(lower ? [{ value: lower.value, label: `lower ${at().number(lower.value)}` }] : []),
      ...(upper ? [{ value: upper.value, label: `upper ${at().number(upper.value)}` }] : []),
      ...(wear ? [{ value: wear.value, label: `wear ${at().number(wear.value)}`, wear: true }] : []),
    ];
  };
  const percent = () => `${Math.round(props.simulation.coverage * 1000) / 10} %`;
  const share = (of: number) => shareWords(of, props.simulation.draws);
  const interval = () =>
    `${at().number(props.drawn.low, like())} to ${at().amount(props.drawn.high, like())}`;
  const rows = (): Array<[string, string]> => {
    const { conformance: c } = props.drawn;
    return [
      ['mean', at().amount(props.drawn.mean, like())],
      ['standard deviation', at().change(props.drawn.deviation, like(), false)],
      [`shortest ${percent()} interval`, interval()],
      [
        `quick spread, ${percent()}`,
        `${at().number(props.drawn.linear.low, like())} to ${at().amount(props.drawn.linear.high, like())}`,
      ],
      ...(c ? ([['within the limits', share(c.within)]] as Array<[string, string]>) : []),
      ...optional('below the lower limit', c?.belowLower),
      ...optional('above the upper limit', c?.aboveUpper),
      ...optional('beyond the wear limit', c?.beyondWear),
      ...(props.drawn.failed > 0
        ? ([['could not be worked out', share(props.drawn.failed / props.simulation.draws)]] as Array<
            [string, string]
          >)
        : []),
    ];
  };
  const optional = (word: string, of: number | undefined): Array<[string, string]> =>
    of === undefined ? [] : [[word, share(of)]];
  return (
    <div class="draws-outcome grid gap-2 mt-2">
      <Histogram
        drawn={props.drawn}
        limits={limits()}
        number={(si) => at().number(si, like())}
        words={`${percent()} of the simulated assemblies lie from ${interval()}`}
      />
      <table class="budget">
        <tbody>
          <For each={rows()}>
            {([word, text]) => (
              <tr>
                <th scope="row">{word}</th>
                <td class="figure">{text}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <p class="verdict-words">
        {linearWords(props.drawn, (si) => at().change(Math.abs(si), undefined, false))}
      </p>
      <p class="caption">
        Upper bracket: the real spread, the shortest interval of the simulated assemblies. Lower one: the
        quick spread.
      </p>
    </div>
  );
};

/** Whether the linear figure will do, by the guide's own tolerance (JCGM 101, clause 8). */
export const linearWords = (
  { linear }: Pick<SimulatedOutput, 'linear'>,
  change: (si: number) => string,
): string => {
  const off = Math.abs(linear.offLow) > Math.abs(linear.offHigh) ? linear.offLow : linear.offHigh;
  if (linear.verdict === 'agrees')
    return 'The quick spread will do: it lies within the tolerance of JCGM 101, clause 8.';
  if (linear.verdict === 'misleads') {
    const most = change(linear.tolerance);
    // Two lengths that read the same would be no reason, nor one that reads as nothing.
    const allowed =
      change(off) === most || !/[1-9]/.test(most)
        ? `${(off / linear.tolerance).toFixed(1)} times what`
        : `more than the ${most} that`;
    return `The real spread beside the quick one: an end lies ${change(off)} off, ${allowed} JCGM 101, clause 8 allows. Go by the simulated assemblies.`;
  }
  return 'So near the tolerance of JCGM 101, clause 8 that chance may decide: more simulated assemblies would tell.';
};
