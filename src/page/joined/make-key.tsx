import { createSignal, createUniqueId, Show, Suspense } from 'solid-js';
import { copyText } from '../kit/copy-text.ts';
import { late } from '../kit/late.tsx';
import { linkWith, makeKey } from './own-keys.ts';

const QrCode = late('The QR code', () => import('../kit/qr-code.tsx'));

export interface MakeKeyProps {
  /** The key this device has. */
  by: string;
  /** The one sheet that the new key opens; all that is shared where it is absent. */
  sheet?: string;
  onMade: () => void;
}

/** Makes a link for one more device or another shop. It is shown once: the server keeps no key that could be read. */
export const MakeKey = (props: MakeKeyProps) => {
  const id = createUniqueId();
  const [label, setLabel] = createSignal('');
  const [readOnly, setReadOnly] = createSignal(false);
  const [made, setMade] = createSignal<{ link: string; label: string }>();
  const [told, setTold] = createSignal('');
  const make = async () => {
    setTold('');
    const wish = { label: label().trim(), readOnly: readOnly(), ...(props.sheet && { sheet: props.sheet }) };
    const key = await makeKey(props.by, wish);
    setMade({ link: await linkWith(key), label: key.label });
    setLabel('');
    props.onMade();
  };
  return (
    <div class="make-key stacked gap-3 justify-items-start">
      <form
        class="stacked gap-2 justify-items-start w-full"
        onSubmit={(event) => {
          event.preventDefault();
          void make().catch((error: unknown) =>
            setTold(error instanceof Error ? error.message : String(error)),
          );
        }}
      >
        <div class="field w-full max-w-24rem">
          <label for={`${id}-label`} class="caption">
            {props.sheet ? 'Who gets this sheet' : 'Which device, or who'}
          </label>
          <input
            id={`${id}-label`}
            maxLength={80}
            autocomplete="off"
            value={label()}
            onInput={(event) => setLabel(event.currentTarget.value)}
          />
        </div>
        <div class="flex items-center gap-2 min-h-target">
          <input
            id={`${id}-reads`}
            class="tickable"
            type="checkbox"
            checked={readOnly()}
            onChange={(event) => setReadOnly(event.currentTarget.checked)}
          />
          <label for={`${id}-reads`}>To be read only</label>
        </div>
        <button type="submit" disabled={label().trim() === ''}>
          Make a link
        </button>
      </form>
      <p role="status" class="empty:hidden">
        {told()}
      </p>
      <Show when={made()}>
        {(one) => (
          <div class="new-key stacked gap-2 justify-items-start">
            <p>
              The link for <strong>{one().label}</strong>. It is shown this once; whoever has it gets in until
              it is ended.
            </p>
            <p class="wrap-anywhere">
              <code>{one().link}</code>
            </p>
            <button
              type="button"
              onClick={() =>
                void copyText(one().link).then((done) =>
                  setTold(done ? 'The link is on the clipboard.' : 'Mark the link and copy it with Ctrl+C.'),
                )
              }
            >
              Copy the link
            </button>
            <Suspense fallback={<p>Drawing …</p>}>
              <QrCode text={one().link} name={`QR code of the link for ${one().label}`} />
            </Suspense>
          </div>
        )}
      </Show>
    </div>
  );
};
