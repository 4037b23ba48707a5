import { Show } from 'solid-js';
import type { HeldFigure } from '../../document/sharing/held-figures.ts';
import type { TemplateText } from '../../document/sharing/template-marks.ts';

/** A figure that words name. */
export const Told = (props: { of: string; figure: HeldFigure }) => (
  <span class="block verdict doubt">
    <span class="tone">
      {props.of} names <bdi>{props.figure.figure}</bdi>, which stays as it is written
    </span>
  </span>
);

/** A figure within a text that is kept, or its tolerance. */
export const Held = (props: { figure: HeldFigure }) => (
  <span class="block verdict doubt">
    <span class="tone">
      {props.figure.in === 'formula' ? 'holds' : 'tolerance'} <bdi>{props.figure.figure}</bdi>, which stays:
      it goes with no size{props.figure.in === 'formula' ? '' : ', as a class would'}
    </span>
  </span>
);

/** What becomes of one text, as it is said to people. */
export const Fate = (props: { text: TemplateText; said: string; asked: boolean }) => (
  <>
    <Show
      when={props.asked && props.text.is !== 'follows'}
      fallback={
        <>
          <bdi>{props.said}</bdi>
          <Show
            when={props.text.is === 'figure'}
            fallback={
              <span class="caption">
                {props.text.is === 'follows' ? ', kept' : ', taken along: a choice of this machine'}
              </span>
            }
          >
            <span class="verdict doubt">
              {' '}
              <span class="tone">stays: a figure of this machine</span>
            </span>
          </Show>
        </>
      }
    >
      <span class="caption">
        asked for, e.g. <bdi>{props.said}</bdi>
      </span>
    </Show>
  </>
);
