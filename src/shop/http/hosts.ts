import type { IncomingMessage } from 'node:http';
import { isIP } from 'node:net';

/** The machine in a Host header or an origin, without its port; undefined where it is none. */
const machineIn = (host: string): string | undefined => {
  const [, bracketed, plain] =
    /^(?:\[([\da-f:.]{2,45})\]|([a-z\d.-]{1,253}))(?::\d{1,5})?$/i.exec(host) ?? [];
  return (bracketed ?? plain)?.toLowerCase().replace(/\.$/, '');
};

/**
 * Which requests are meant for this server. A page of somebody else's may have its own name answered with the address of
 * this machine, and then reads what is served here as its own (DNS rebinding): such a request still carries that name. An
 * address in digits cannot be rebound.
 */
export class Hosts {
  private readonly names: ReadonlySet<string>;

  /** @param own names of this machine, and those that the shop gave it. */
  constructor(own: readonly string[]) {
    const names = own.map((name) => name.toLowerCase());
    // A machine without a domain is found by its own name with `.local` too (RFC 6762).
    const local = names.filter((name) => !name.includes('.')).map((name) => `${name}.local`);
    this.names = new Set(['localhost', ...names, ...local]);
  }

  /** @returns what is wrong with where a request is from or to, for people. */
  fault({ headers }: Pick<IncomingMessage, 'headers'>): string | undefined {
    const { host = '', origin } = headers;
    const machine = machineIn(host);
    if (machine === undefined) return 'The request does not say which server it is meant for.';
    if (isIP(machine) === 0 && !this.names.has(machine))
      return `This server does not go by the name "${machine}". If it should, start it with --name ${machine}`;
    if (origin === undefined) return undefined;
    // Something in between may have taken the certificate off: the scheme says nothing.
    const from = URL.canParse(origin) ? new URL(origin).host : '';
    const asked = host.toLowerCase();
    // A browser leaves out the port that goes without saying.
    return from !== '' && (from === asked || from === asked.replace(/:(?:80|443)$/, ''))
      ? undefined
      : 'The request comes from a page of another server.';
  }
}
