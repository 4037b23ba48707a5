import { Show } from 'solid-js';
import type { Offer } from '../handing-on/templates.ts';
import { say } from '../kit/words.ts';

/** A sheet to begin with: what is worn, what it is for, and the button that begins it. */
export const OfferBox = (props: {
  offer: Offer;
  word: string;
  filled?: boolean;
  onTake: (offer: Offer) => void;
}) => {
  const title = () => say(props.offer.title.title);
  return (
    <article
      class="offer flex p-3 lined"
      classList={{
        'flex-wrap items-center gap-x-4 gap-y-2': props.filled === true,
        'flex-col gap-2': !props.filled,
      }}
    >
      <Show when={!props.filled}>
        <span class="caption phone:hidden">{(props.offer.title.tags ?? []).map(say).join(', ')}</span>
      </Show>
      <Show when={props.filled} fallback={<h4 class="text-figure">{title()}</h4>}>
        <h3 class="text-figure">{title()}</h3>
      </Show>
      <p class={props.filled ? 'flex-[1_1_24rem] phone:hidden' : 'flex-1'}>
        {props.filled
          ? 'Filled in from the first reading on. Change a reading in your copy and see what follows.'
          : say(props.offer.title.note ?? '')}
      </p>
      <div class="buttons">
        <button type="button" class={props.filled ? '' : 'main'} onClick={() => props.onTake(props.offer)}>
          {props.word}
        </button>
      </div>
    </article>
  );
};
