import { createMemo, createSignal, Show, Suspense } from 'solid-js';
import { linkOf } from '../../document/sharing/code.ts';
import { MOST_PARTS, partsOf } from '../../document/sharing/parts.ts';
import { late } from '../kit/late.tsx';

const QrCode = late('The QR code', () => import('../kit/qr-code.tsx'));

/**
 * Characters that one QR code is given: the biggest there are hold 2,953 (ISO/IEC 18004, version 40-L), but their
 * squares are too small for a phone held by hand.
 */
const EASY = 1300;

export interface QrPartProps {
  code: string;
  /** Nothing but this machine reaches the page: the code is to be pasted, a link would open nowhere. */
  ownMachine: boolean;
}

/** The sheet to be scanned: one QR code, or several that are put together where they are opened. */
export const QrPart = (props: QrPartProps) => {
  const parts = createMemo(() =>
    partsOf(props.code, EASY).map((part) => (props.ownMachine ? part : linkOf(part, location.href))),
  );
  const [wanted, setAt] = createSignal(0);
  const at = () => Math.min(wanted(), parts().length - 1);
  const several = () => parts().length > 1;
  return (
    <section class="share-part">
      <h3 class="text-figure">{several() ? `As ${parts().length} QR codes` : 'As a QR code'}</h3>
      <Show
        when={parts().length > 0}
        fallback={
          <p>
            Too long for QR codes: {props.code.length.toLocaleString()} characters, where {MOST_PARTS} of them
            hold {(MOST_PARTS * EASY).toLocaleString()}. Send a file or the text.
          </p>
        }
      >
        <Show when={several()}>
          <p>
            {props.ownMachine
              ? 'Scan each and paste what it says under “Open a text or a code”, in any order.'
              : 'Scan them one after the other, in any order: the last one opens the sheet.'}
          </p>
        </Show>
        <Suspense fallback={<p>Drawing …</p>}>
          <QrCode
            text={parts()[at()]!}
            name={several() ? `QR code ${at() + 1} of ${parts().length}` : 'QR code of this sheet'}
          />
        </Suspense>
        <Show when={several()}>
          <div class="buttons">
            <button type="button" disabled={at() === 0} onClick={() => setAt(at() - 1)}>
              Code before
            </button>
            <button type="button" disabled={at() === parts().length - 1} onClick={() => setAt(at() + 1)}>
              Next code
            </button>
            <span class="self-center" role="status">
              {at() + 1} of {parts().length}
            </span>
          </div>
        </Show>
      </Show>
    </section>
  );
};
