import { Show } from 'solid-js';
import { type CheckState, isPartState } from '../../../shared/checks/states.ts';
import './check-mark.css';
import { type Standing, standingOf, verdictClass } from './check-words.ts';

const SIGN: Record<Standing, string> = {
  holds: 'M5.5 10.5l3 3l6 -7',
  edge: 'M4.5 10.5l3 3l5 -7M15.5 5v10',
  doubt: 'M5 11c2 -4 4 -4 5.500 -1s3 3 4.500 -1',
  misses: 'M6 6l8 8M14 6l-8 8',
  waiting: 'M5 10h2M9 10h2M13 10h2',
  none: 'M6 10h8',
};

/** Ring for a plan, filled square for a part; the sign inside differs for every standing. */
export const CheckSign = (props: { state: CheckState }) => (
  <svg class="flex-none w-20px h-20px" viewBox="0 0 20 20" aria-hidden="true">
    <SignShapes state={props.state} />
  </svg>
);

/** The sign within a drawing, 20 units wide. */
export const SignShapes = (props: { state: CheckState }) => (
  <g>
    <Show when={isPartState(props.state)} fallback={<circle class="ring" cx="10" cy="10" r="8.5" />}>
      <rect class="ring" x="1.5" y="1.5" width="17" height="17" />
    </Show>
    <path class="sign" d={SIGN[standingOf(props.state)]} />
  </g>
);

export interface CheckMarkProps {
  state: CheckState;
  /** Which limit, which side, by how much. */
  more?: string;
  /** State before the last edit, where it was another. */
  before?: CheckState;
}

export const CheckMark = (props: CheckMarkProps) => (
  <span class={verdictClass(props.state)}>
    <span class="tone">
      <CheckSign state={props.state} />
    </span>
    <span>
      <span class="word tone" classList={{ 'font-bold': standingOf(props.state) !== 'none' }}>
        {props.state}
      </span>
      <Show when={props.more}>
        <small class="block caption">{props.more}</small>
      </Show>
      {/* A line without limits had no verdict to tell of. */}
      <Show when={props.before && props.before !== 'no limits' && props.before !== props.state}>
        <small class="was block caption">was {props.before}</small>
      </Show>
    </span>
  </span>
);
