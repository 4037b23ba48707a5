import { Show } from 'solid-js';
import type { ListState, OnList } from '../../document/joined/shared-list.ts';
import type { Equipment } from '../../document/sharing/own-equipment.ts';
import { listedOf } from '../../document/sharing/shared-equipment.ts';
import type { OwnShared } from './own-shared.ts';
import { sharedByWords } from './shared-by.ts';

/** How one of the shop's own stands with the shop's server, and the press that shares it or ends that. */
export const ShareOwn = (props: { one: Equipment; shared: OwnShared }) => {
  const listed = (now: ListState): OnList | undefined => listedOf(now.equipment, props.one)[0];
  const isShared = (now: ListState) => listed(now)?.ended === undefined && listed(now) !== undefined;
  const words = (now: ListState): string => {
    const one = listed(now);
    if (!one) return '';
    if (one.onItsWay) return 'on its way to the shop’s server …';
    if (one.ended) return 'shared in the shop no longer; it is kept here';
    const name = one.label !== '' && one.label !== props.one.label ? ` as “${one.label}”` : '';
    const at = now.line === 'open' ? 'at the shop’s server, ' : '';
    return `${at}${sharedByWords(one)}${name}`;
  };
  return (
    <Show when={props.shared.state()}>
      {(now) => (
        <>
          <Show when={words(now())}>{(text) => <span class="caption">{text()}</span>}</Show>
          <Show when={!now().readOnly && now().line !== 'ended'}>
            <button
              type="button"
              onClick={() => (isShared(now()) ? props.shared.end : props.shared.share)(props.one)}
            >
              {isShared(now()) ? 'Share it no longer' : 'Share with the shop'}
            </button>
          </Show>
        </>
      )}
    </Show>
  );
};
