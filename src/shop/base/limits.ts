/** What the server takes of a client. Numbers a shop never meets, and beyond which nobody else gets far. */
export interface Limits {
  /** Bytes of one message; a sheet of 10,000 lines pasted at once has about 5 million. */
  message: number;
  /** Bytes of a socket before it has shown a key. */
  beforeKey: number;
  /** Milliseconds a socket may take to show one. */
  keyWithin: number;
  /** Bytes waiting while a key is looked up and its document is read. */
  waiting: number;
  /** Bytes of a sheet, as stored. */
  sheet: number;
  /** Items in one update. */
  items: number;
  /** Bytes not yet sent to a client, or not yet stored, at which nothing more is read. */
  backlog: number;
  sockets: number;
  /** Sockets of one address that have shown no key. */
  socketsWithoutKey: number;
  /** Documents open over one socket, by one key, and connections to one sheet. */
  perSocket: number;
  perKey: number;
  perSheet: number;
  /**
   * Messages a second of a socket, of a key and to a sheet, and bytes a second of a key: a mean and what may come at once.
   * Beyond, the socket is read no further until it is time: nothing is lost by it.
   */
  socketRate: Rate;
  keyRate: Rate;
  sheetRate: Rate;
  keyBytes: Rate;
  /** Refused updates a minute by one key, beyond which the key is refused for the rest of it. */
  refusals: number;
}

export interface Rate {
  perSecond: number;
  atOnce: number;
}

const MB = 1e6;

export const LIMITS: Limits = {
  message: 24 * MB,
  beforeKey: 16_000,
  keyWithin: 5000,
  waiting: 24 * MB,
  sheet: 24 * MB,
  items: 500_000,
  backlog: 64 * MB,
  sockets: 4000,
  socketsWithoutKey: 50,
  perSocket: 1000,
  perKey: 20_000,
  perSheet: 500,
  socketRate: { perSecond: 200, atOnce: 2000 },
  keyRate: { perSecond: 2000, atOnce: 20_000 },
  sheetRate: { perSecond: 1000, atOnce: 10_000 },
  keyBytes: { perSecond: 10 * MB, atOnce: 200 * MB },
  refusals: 30,
};
