import { HocuspocusProvider, HocuspocusProviderWebsocket } from '@hocuspocus/provider';
import type * as Y from 'yjs';
import {
  isFinal,
  type Refusal,
  refusalIn,
  type ServerSays,
  SYNC_PATH,
  serverSays,
  tokenOf,
} from '../sharing/wire.ts';

/** Why a document is not open: as the server says, or because what came is none. */
export type Ended = Refusal | 'unsound' | 'closed';

/** What whoever has a document open with the server is told of it. */
export interface Hearing {
  /** The key is taken. */
  open(readOnly: boolean): void;
  /** All the server has is here, and the other way round as far as it was sent. */
  synced(): void;
  /** The line is lost; it comes back by itself. */
  away(): void;
  /** Final. */
  ended(why: Ended): void;
  said(what: ServerSays): void;
  /** Who else is there has changed. */
  presence?(): void;
}

/** Longest wait before the line is tried again, milliseconds. */
const LONGEST = 5_000;

/** The address of the server that a page came from. */
export const lineAddress = (page: string): string => {
  const url = new URL(SYNC_PATH, page);
  url.protocol = url.protocol === 'https:' ? 'wss:' : 'ws:';
  return url.href;
};

/** One socket to the shop's server, for all documents that one key opens. */
export class ShopLine {
  private readonly socket: HocuspocusProviderWebsocket;
  private readonly open = new Set<Connection>();

  constructor(
    address: string,
    readonly key: string,
    private readonly former: readonly string[] = [],
  ) {
    this.socket = new HocuspocusProviderWebsocket({
      url: address,
      autoConnect: false,
      delay: 500,
      minDelay: 300,
      maxDelay: LONGEST,
    });
    // A try that is given up for the next one is rejected without a reason, and nobody hears of it.
    const connect = this.socket.connect.bind(this.socket);
    this.socket.connect = () => connect().catch(() => undefined);
    void this.socket.connect();
    this.socket.on('close', ({ event }: { event: { code: number } }) => {
      if (!isFinal(event.code)) return;
      this.socket.disconnect();
      for (const one of [...this.open]) one.end('closed');
    });
  }

  connect(name: string, doc: Y.Doc, hearing: Hearing): Connection {
    const connection = new Connection(this.socket, name, doc, tokenOf(this.key, this.former), hearing, () =>
      this.open.delete(connection),
    );
    this.open.add(connection);
    return connection;
  }

  close(): void {
    for (const one of [...this.open]) one.close();
    this.socket.destroy();
  }
}

/** One document that is open with the server. */
export class Connection {
  readonly provider: HocuspocusProvider;
  private over = false;

  constructor(
    socket: HocuspocusProviderWebsocket,
    name: string,
    doc: Y.Doc,
    token: string,
    private readonly hearing: Hearing,
    private readonly gone: () => void,
  ) {
    this.provider = new HocuspocusProvider({
      websocketProvider: socket,
      name,
      document: doc,
      token,
      onAuthenticated: ({ scope }) => hearing.open((scope as string) === 'readonly'),
      onAuthenticationFailed: ({ reason }) => this.end(refusalIn(reason) ?? 'key-unknown'),
      onSynced: ({ state }) => {
        if (state) hearing.synced();
      },
      onStateless: ({ payload }) => {
        const said = serverSays(payload);
        if (said) hearing.said(said);
      },
      onAwarenessChange: () => hearing.presence?.(),
    });
    this.provider.on('close', ({ event }: { event: { reason?: string } }) => {
      const refusal = refusalIn(event.reason);
      if (refusal) this.end(refusal);
      else if (!this.over) hearing.away();
    });
    this.provider.attach();
  }

  send(message: object): void {
    this.provider.sendStateless(JSON.stringify(message));
  }

  /** Nothing is sent again. */
  end(why: Ended): void {
    if (this.over) return;
    this.close();
    this.hearing.ended(why);
  }

  close(): void {
    if (this.over) return;
    this.over = true;
    this.gone();
    // Not from within the provider's own call.
    queueMicrotask(() => this.provider.destroy());
  }
}
