import { createMemo, createResource, createSignal, Show } from 'solid-js';
import { shortFingerprint } from '../../../shared/sheet/fingerprint.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { exportText, fileName } from '../../document/files.ts';
import { codeOf, linkOf } from '../../document/sharing/code.ts';
import { templateOf } from '../../document/template.ts';
import { ShareWithShop } from '../joined/share-with-shop.tsx';
import { copyText } from '../kit/copy-text.ts';
import { Dialog } from '../kit/dialog.tsx';
import { useSheet } from '../state/context.ts';
import { printer, written } from '../state/printer.ts';
import { ForOthers } from './for-others.tsx';
import { giveFile } from './give-file.ts';
import { QrPart } from './qr-part.tsx';
import { useReadInputs } from './read-inputs.ts';

/** Some programs for letters cut what is longer. */
const LONG = 2000;

/** Reached by this machine alone: the link opens nowhere else. */
const isOwnMachine = (): boolean => /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/.test(location.hostname);

/** Hands the sheet on: as a file, a code, a link, a QR code, or for other programs. */
export default function ShareDialog(props: { onClose: () => void }) {
  const { sheet } = useSheet();
  const [bare, setBare] = createSignal(false);
  const [told, setTold] = createSignal('');
  let shown!: HTMLTextAreaElement;
  const isRead = useReadInputs();
  const file = createMemo(() => {
    const whole = sheet.document.toFile();
    return bare() ? templateOf(whole, isRead).file : whole;
  });
  const [print] = createResource(file, (one) => printer.print(one));
  const [made] = createResource(file, async (one) => codeOf(await written(one)));
  const code = () => (typeof made.latest === 'string' ? made.latest : undefined);
  const refusal = () => (typeof made.latest === 'object' ? made.latest.message : undefined);
  const link = () => linkOf(code() ?? '', location.href);
  const save = async (one: SheetFile) =>
    giveFile(
      new Blob([exportText(await written(one))], { type: 'application/json' }),
      fileName(one.title.title, one.template ? 'template' : ''),
    );
  const copy = async (what: string, text: string) => {
    if (await copyText(text)) {
      setTold(`The ${what} is on the clipboard.`);
      return;
    }
    shown.value = text;
    shown.focus();
    shown.select();
    setTold(`The browser does not let the page copy. The ${what} is marked above: copy it with Ctrl+C.`);
  };
  return (
    <Dialog title="Share this sheet" onClose={props.onClose}>
      <p>
        Fingerprint{' '}
        <strong class="fingerprint text-figure tracking-[0.06em]">
          {print.latest ? shortFingerprint(print.latest) : '…'}
        </strong>
        : who opens it sees the same characters. Equal in all of them, the two sheets say the same, in
        whatever units they are read; they do not say who wrote it, nor that it is right.
      </p>
      <Show when={!sheet.document.template()}>
        <div class="flex items-center gap-2 min-h-target">
          <input
            id="share-bare"
            class="tickable"
            type="checkbox"
            checked={bare()}
            onChange={(event) => setBare(event.currentTarget.checked)}
          />
          <label for="share-bare">As a template: leave out readings, names, dates and whom it is for</label>
        </div>
      </Show>
      <ShareWithShop />
      <section class="share-part">
        <h3 class="text-figure">As a file</h3>
        <button type="button" onClick={() => void save(file())}>
          Save to a file
        </button>
      </section>
      <section class="share-part">
        <h3 class="text-figure">As a text or a link</h3>
        <Show when={refusal()}>{(words) => <p role="alert">{words()}</p>}</Show>
        <Show when={code()}>
          {(text) => (
            <>
              <div class="field w-full">
                <label for="share-code" class="caption">
                  The whole sheet in {text().length.toLocaleString()} characters. This page sends it nowhere.
                </label>
                <textarea
                  class="text-small wrap-anywhere"
                  id="share-code"
                  ref={shown}
                  rows={3}
                  readonly
                  value={text()}
                  onFocus={() => shown.select()}
                />
              </div>
              <div class="buttons">
                <button type="button" onClick={() => void copy('code', text())}>
                  Copy the text
                </button>
                <button type="button" onClick={() => void copy('link', link())}>
                  Copy the link
                </button>
              </div>
              <p role="status" class="empty:hidden">
                {told()}
              </p>
              <Show when={isOwnMachine()}>
                <p class="caption">
                  The link opens on this machine only. To another shop send the text, to be pasted under “Open
                  a text or a code”.
                </p>
              </Show>
              <Show when={text().length > LONG}>
                <p class="caption">Some mail programs break so long a text: a file is safer then.</p>
              </Show>
            </>
          )}
        </Show>
      </section>
      <Show when={code()}>{(text) => <QrPart code={text()} ownMachine={isOwnMachine()} />}</Show>
      <ForOthers />
    </Dialog>
  );
}
