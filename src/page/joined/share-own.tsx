import { Show } from 'solid-js';
import type { ListState, OnList } from '../../document/joined/shared-list.ts';
import type { Equipment } from '../../document/sharing/own-equipment.ts';
import { listedOf } from '../../document/sharing/shared-equipment.ts';
import type { OwnShared } from './own-shared.ts';
import { saidName } from './said-name.ts';
import { sharedByWords } from './shared-by.ts';

const listed = (now: ListState, one: Equipment): OnList | undefined => listedOf(now.equipment, one)[0];

/** How one of the shop’s own stands with the shop’s server, in words; nothing where it was never shared. */
export const SharedWords = (props: { one: Equipment; shared: OwnShared }) => {
  const words = () => {
    const now = props.shared.state();
    const one = now && listed(now, props.one);
    if (!one) return undefined;
    if (one.onItsWay) return 'on its way to the shop’s server …';
    if (one.ended) return 'shared in the shop no longer; it is kept here';
    const name = one.label !== '' && one.label !== props.one.label ? ` as “${saidName(one.label)}”` : '';
    const at = now.line === 'open' ? 'at the shop’s server, ' : '';
    return `${at}${sharedByWords(one)}${name}`;
  };
  return <Show when={words()}>{(text) => <span class="caption">{text()}</span>}</Show>;
};

/** Shares one of the shop’s own, or ends that; a key that only reads can neither. */
export const ShareOwn = (props: { one: Equipment; shared: OwnShared }) => {
  const isShared = () => {
    const one = listed(props.shared.state()!, props.one);
    return one !== undefined && one.ended === undefined;
  };
  const may = () => {
    const now = props.shared.state();
    return now && !now.readOnly && now.line !== 'ended' && now.line !== 'joining';
  };
  return (
    <Show when={may()}>
      <button type="button" onClick={() => (isShared() ? props.shared.end : props.shared.share)(props.one)}>
        {isShared() ? 'Share it no longer' : 'Share with the shop'}
      </button>
    </Show>
  );
};
