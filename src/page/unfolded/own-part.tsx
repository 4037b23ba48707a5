import { createMemo, Show } from 'solid-js';
import { dropEquipment, equipmentIn, isKept, keepEquipment } from '../../document/sharing/own-equipment.ts';
import { createOwnShared } from '../joined/own-shared.ts';
import { SharedWords, ShareOwn } from '../joined/share-own.tsx';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { createOwnKept, ownChanged } from '../state/own-kept.ts';
import { useTools } from '../state/tools.ts';

/** A gauge or a press that the shop keeps, filled in when the next job begins; a metal, offered first. */
export default function OwnPart(props: { cell: string }) {
  const { sheet, notices } = useSheet();
  const { shop } = useTools();
  const library = useLibrary();
  const kept = createOwnKept(shop);
  const shared = createOwnShared(shop);
  const own = (kind: string) =>
    library()
      ?.kinds.get(kind)
      ?.inputs.filter(({ ofShop }) => ofShop) ?? [];
  const words = () =>
    own(one()!.kind).some(({ ofShop }) => ofShop === 'offered')
      ? 'offered first wherever a metal is chosen.'
      : 'filled in wherever a template asks for such a one.';
  const one = createMemo(() => equipmentIn(sheet.line(props.cell)!.record, own));
  const change = (by: typeof keepEquipment) =>
    void by(shop, one()!).then(ownChanged, (error: unknown) =>
      notices.say(`It was not kept: ${String(error)}`),
    );
  return (
    <Show when={one() && kept()}>
      {(list) => (
        <p class="along">
          <Show
            when={isKept(list(), one()!)}
            fallback={
              <>
                <button type="button" onClick={() => change(keepEquipment)}>
                  Keep for the next job
                </button>
                <span class="caption">As one of this shop’s own: {words()}</span>
              </>
            }
          >
            <span class="caption">One of this shop’s own: {words()}</span>
            <button type="button" onClick={() => change(dropEquipment)}>
              Keep it no more
            </button>
            <SharedWords one={one()!} shared={shared} />
            <ShareOwn one={one()!} shared={shared} />
            <span role="status" class="empty:hidden">
              {shared.told()}
            </span>
          </Show>
        </p>
      )}
    </Show>
  );
}
