import { randomBytes } from 'node:crypto';
import { Redis } from 'ioredis';

/** What servers that share a database tell each other of a document. */
const KINDS = [
  /** An update that came to one of them. */
  'update',
  'presence',
  /** A value that did not remain. */
  'lost',
  /** A state vector: the others tell what is missing behind it, and how far they have come. */
  'hello',
  /** A state vector, as the answer to that. */
  'have',
] as const;

export type Kind = (typeof KINDS)[number];

const ID = 8;
const JOINS_WITHIN = 2000;

/**
 * Servers of one shop that share its sheets, over a Redis. It keeps nothing: what one tells while another cannot hear is asked
 * for when the line is back.
 */
export class Together {
  private readonly id = randomBytes(ID);
  private readonly out: Redis;
  private readonly listening: Redis;
  private readonly joined = new Set<string>();
  private readonly prefix: Promise<string>;
  private known = '';

  /**
   * @param shop tells shops apart that share one Redis
   * @param back is called for each document when the line is there again
   */
  constructor(
    address: string,
    shop: Promise<string>,
    private readonly hear: (document: string, kind: Kind, bytes: Uint8Array) => void,
    private readonly back: (document: string) => void,
  ) {
    const options = { maxRetriesPerRequest: null, retryStrategy: (n: number) => Math.min(n * 100, 2000) };
    this.out = new Redis(address, { ...options, enableOfflineQueue: false });
    this.listening = new Redis(address, { ...options, autoResubscribe: false });
    // A line that is lost is told of by `well`; it comes back by itself.
    for (const one of [this.out, this.listening]) one.on('error', () => {});
    this.prefix = shop.then((id) => {
      this.known = `fitwright ${id} `;
      return this.known;
    });
    this.prefix.catch(() => {});
    this.listening.on('messageBuffer', (channel: Buffer, message: Buffer) => this.message(channel, message));
    for (const one of [this.out, this.listening]) one.on('ready', () => void this.again());
  }

  get well(): boolean {
    return this.out.status === 'ready' && this.listening.status === 'ready';
  }

  /** Hears what is told of a document from now on; where the line is lost, from when it is back. */
  async join(document: string): Promise<void> {
    const prefix = await this.prefix;
    this.joined.add(document);
    if (!this.well) return;
    const subscribed = this.listening.subscribe(prefix + document).catch(() => {});
    // A line that is lost meanwhile does not keep the document shut.
    await Promise.race([subscribed, new Promise((done) => setTimeout(done, JOINS_WITHIN).unref())]);
  }

  leave(document: string): void {
    this.joined.delete(document);
    if (this.well) this.listening.unsubscribe(this.known + document).catch(() => {});
  }

  tell(document: string, kind: Kind, bytes: Uint8Array): void {
    if (!this.well) return;
    const message = Buffer.concat([this.id, Buffer.from([KINDS.indexOf(kind)]), bytes]);
    this.out.publish(this.known + document, message).catch(() => {});
  }

  stop(): void {
    this.out.disconnect();
    this.listening.disconnect();
  }

  private async again(): Promise<void> {
    if (!this.well || this.joined.size === 0) return;
    try {
      const prefix = await this.prefix;
      await this.listening.subscribe(...[...this.joined].map((document) => prefix + document));
      for (const document of this.joined) this.back(document);
    } catch {
      // The line is lost again; the next time it is there this comes anew.
    }
  }

  private message(channel: Buffer, message: Buffer): void {
    if (message.length <= ID || message.subarray(0, ID).equals(this.id)) return;
    const kind = KINDS[message[ID]!];
    // A copy that owns its buffer, as of what comes from a page.
    if (kind)
      this.hear(channel.toString().slice(this.known.length), kind, new Uint8Array(message.subarray(ID + 1)));
  }
}
