import type { IncomingMessage, ServerResponse } from 'node:http';

/** Sends a value as JSON, never to be kept by anybody. */
export type Send = (status: number, value: unknown, headers?: Record<string, string>) => void;

export const sendJson =
  (request: IncomingMessage, response: ServerResponse, common: Record<string, string>): Send =>
  (status, value, headers = {}) => {
    const text = `${JSON.stringify(value)}\n`;
    response.writeHead(status, {
      ...common,
      'content-type': 'application/json; charset=utf-8',
      'content-length': Buffer.byteLength(text),
      'cache-control': 'no-store',
      ...headers,
    });
    response.end(request.method === 'HEAD' ? undefined : text);
  };

/** Reads the body of a request; undefined where it is longer than that. */
export const bodyOf = async (request: IncomingMessage, longest: number): Promise<string | undefined> => {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    length += part.length;
    if (length > longest) return undefined;
    parts.push(part);
  }
  return Buffer.concat(parts).toString('utf8');
};
