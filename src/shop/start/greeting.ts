import { renderUnicodeCompact } from 'uqr';
import { joinLink } from '../../document/sharing/wire.ts';

/** Squares of quiet round the code (ISO/IEC 18004: four). */
const QUIET = 4;

/** What is printed at a start. */
export const greeting = ({
  addresses,
  here,
  key,
  secure,
  store,
}: {
  addresses: readonly string[];
  /** The address on this machine itself. */
  here: string;
  /** Of the link; none is printed without it. */
  key: string | undefined;
  secure: boolean;
  /** Where sheets are kept, in words. */
  store: string;
}): string => {
  const [first = here, ...others] = addresses;
  const lines = [
    `The shop’s server is open at ${first} (Ctrl+C ends it)`,
    ...others.map((address) => `                     also at ${address}`),
    `         on this machine at ${here}`,
    `Sheets and keys are kept in ${store}`,
    ...(secure
      ? []
      : [
          'Without a certificate the key and what is shared cross the network in clear: for a network you trust. --help says what HTTPS adds.',
        ]),
  ];
  if (key !== undefined) {
    const link = joinLink(first, key);
    lines.push(
      '',
      'This link joins a device, and opens every shared sheet to it; treat it like a key of the house:',
      link,
      '',
      renderUnicodeCompact(link, { border: QUIET }),
    );
  }
  return `${lines.join('\n')}\n`;
};
