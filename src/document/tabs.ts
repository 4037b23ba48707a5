import type { SheetDocument } from './sheet-document.ts';
import { uniqueId } from './unique-id.ts';

type Message =
  | { type: 'hello'; from: string; state: Uint8Array }
  /** Everything the one who said hello lacks, and what the answering tab knows itself. */
  | { type: 'answer'; to: string; from: string; update: Uint8Array; state: Uint8Array }
  /** What the answering tab lacked. */
  | { type: 'rest'; to: string; update: Uint8Array }
  | { type: 'stored'; update: Uint8Array };

export interface Tabs {
  /** Tells the other tabs of an update. Only of one that is stored: what they build on it must not be lost without it. */
  send(update: Uint8Array): void;
  /** Asks again what was missed, as after a tab was frozen. */
  hello(): void;
  close(): void;
}

/**
 * Keeps a sheet the same in every tab of this browser that has it open.
 *
 * @param keep is given what came by a handshake: the other tab may not have stored it (its disk may be full), so it has
 * to be stored here too.
 */
export function joinTabs(sheet: SheetDocument, keep: (update: Uint8Array) => void): Tabs {
  if (typeof BroadcastChannel === 'undefined') return { send() {}, hello() {}, close() {} };
  const channel = new BroadcastChannel(`fitwright-sheet-${sheet.id}`);
  const post = (message: Message) => channel.postMessage(message);
  const self = uniqueId();
  const hello = () => post({ type: 'hello', from: self, state: sheet.stateVector() });

  const take = (update: Uint8Array, kept: boolean) => {
    const stop = sheet.onUpdate((news) => {
      if (kept) keep(news);
    });
    try {
      sheet.applyUpdate(update, 'remote');
    } catch {
      // Not an update: another edition of the page may speak otherwise. What it stored is read at the next opening.
    } finally {
      stop();
    }
  };

  channel.onmessage = ({ data }: MessageEvent<Message>) => {
    if ('to' in data && data.to !== self) return;
    if (data.type === 'hello') {
      const update = sheet.updateSince(data.state);
      post({ type: 'answer', to: data.from, from: self, update, state: sheet.stateVector() });
    } else if (data.type === 'answer') {
      take(data.update, true);
      post({ type: 'rest', to: data.from, update: sheet.updateSince(data.state) });
    } else {
      take(data.update, data.type === 'rest');
    }
  };
  hello();
  return { send: (update) => post({ type: 'stored', update }), hello, close: () => channel.close() };
}
