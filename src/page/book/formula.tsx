import '../kit/formula.css';
import { createSignal, onCleanup, onMount, Show } from 'solid-js';
import { type MathOptions, toMathRow } from '../../language/display/mathml.ts';
import { nameMark } from '../../language/display/symbols.ts';
import { parseFormula } from '../../language/parse.ts';

export interface FormulaProps {
  /** In the sheet's language, with or without `=`. */
  text: string;
  /** Name that stands before the equals sign. */
  name?: string;
  /** In words, for whom the mathematics says too little. */
  label: string;
  options?: MathOptions;
  /** Said above it: `in words`, `in numbers`. */
  caption?: string;
}

const mathOf = (props: FormulaProps): string => {
  const { expr } = parseFormula(props.text);
  if (!expr) return '';
  const left = props.name === undefined ? '' : `${nameMark(props.name)}<mo>=</mo>`;
  return `<math xmlns="http://www.w3.org/1998/Math/MathML" display="block"><mrow>${left}${toMathRow(expr, props.options)}</mrow></math>`;
};

/** A formula set as mathematics. Where it is wider than its place it can be reached and moved by keyboard. */
export const Formula = (props: FormulaProps) => {
  const [wide, setWide] = createSignal(false);
  let box!: HTMLElement;
  onMount(() => {
    const measure = () => setWide(box.scrollWidth > box.clientWidth);
    // At once, so that there is no moment at which it cannot be reached; the letters may change its width without the box.
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(box);
    document.fonts.addEventListener('loadingdone', measure);
    onCleanup(() => {
      watch.disconnect();
      document.fonts.removeEventListener('loadingdone', measure);
    });
  });
  return (
    <figure ref={box} class="overflow-x-auto py-2" aria-label={props.label} tabindex={wide() ? 0 : undefined}>
      <Show when={props.caption}>
        <figcaption class="caption">{props.caption}</figcaption>
      </Show>
      <div innerHTML={mathOf(props)} />
    </figure>
  );
};
