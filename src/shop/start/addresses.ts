import { isIP } from 'node:net';
import { type NetworkInterfaceInfo, networkInterfaces } from 'node:os';

type Interfaces = Readonly<Record<string, NetworkInterfaceInfo[] | undefined>>;

const inAddress = (machine: string): string => (isIP(machine) === 6 ? `[${machine}]` : machine);

/**
 * Addresses at which browsers of the network find the server, the likeliest first.
 * @param wish `address` is listened on alone, where it is given
 */
export const addressesOf = (
  wish: { port: number; secure: boolean; address?: string; names: readonly string[] },
  interfaces: Interfaces = networkInterfaces(),
): string[] => {
  const { port, secure, address, names } = wish;
  const open = address === undefined || address === '0.0.0.0' || address === '::';
  const found = Object.values(interfaces)
    .flatMap((infos) => infos ?? [])
    // What begins so is given out where nobody gave an address (RFC 3927), and reaches no other network.
    .filter(
      ({ internal, family, address }) => !internal && family === 'IPv4' && !address.startsWith('169.254.'),
    );
  const machines = [...names, ...(open ? found.map(({ address }) => address) : [address])];
  const port_ = port === (secure ? 443 : 80) ? '' : `:${port}`;
  const written = machines.map((machine) => `http${secure ? 's' : ''}://${inAddress(machine)}${port_}/`);
  return [...new Set(written)];
};

/** Where this machine itself finds it. */
export const ownAddress = (port: number, secure: boolean, address?: string): string => {
  const here = address === undefined || address === '0.0.0.0' || address === '::' ? '127.0.0.1' : address;
  return `http${secure ? 's' : ''}://${inAddress(here)}:${port}/`;
};
