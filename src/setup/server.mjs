import { createServer } from 'node:http';
import { strictHeaders } from './headers.mjs';

/** @typedef {import('./site.mjs').Page} Page */

/** Whether an Accept-Encoding header takes gzip. @param {string | string[] | undefined} header */
export function takesGzip(header) {
  const weights = new Map(
    String(header ?? '')
      .split(',')
      .map((part) => {
        const [coding = '', ...parameters] = part.split(';').map((text) => text.trim().toLowerCase());
        const weight = parameters.find((parameter) => parameter.startsWith('q='));
        return [coding, weight ? Number(weight.slice(2)) : 1];
      }),
  );
  return (weights.get('gzip') ?? weights.get('*') ?? 0) > 0;
}

/** Whether an If-None-Match header names a tag (weak comparison, RFC 9110). @param {string | undefined} header @param {string} tag */
export const namesTag = (header, tag) =>
  header?.split(',').some((part) => part.trim() === '*' || part.trim().replace(/^W\//, '') === tag) ?? false;

/**
 * Answers with files held in memory: GET and HEAD only, strict headers on every response.
 * @param {Map<string, Page>} site by request path
 * @param {(request: import('node:http').IncomingMessage) => Record<string, string>} [headersFor]
 * @returns {(request: import('node:http').IncomingMessage, response: import('node:http').ServerResponse) => void}
 */
export function answerFrom(site, headersFor = () => strictHeaders) {
  return (request, response) => {
    /** @param {number} status @param {Record<string, string | number>} headers @param {Buffer | string} [body] */
    const send = (status, headers, body) => {
      response.writeHead(status, { ...headersFor(request), ...headers });
      response.end(request.method === 'HEAD' ? undefined : body);
    };
    /** @param {number} status @param {string} text @param {Record<string, string>} [headers] */
    const refuse = (status, text, headers = {}) =>
      send(
        status,
        {
          'content-type': 'text/plain; charset=utf-8',
          'content-length': Buffer.byteLength(text),
          'cache-control': 'no-store',
          ...headers,
        },
        text,
      );

    if (request.method !== 'GET' && request.method !== 'HEAD') {
      refuse(405, 'Only GET and HEAD are answered here.\n', { allow: 'GET, HEAD', connection: 'close' });
      return;
    }
    const page = site.get(request.url?.split('?', 1)[0] ?? '');
    if (!page) {
      refuse(404, 'There is no such page here.\n');
      return;
    }
    const gzip = takesGzip(request.headers['accept-encoding']) ? page.gzip : null;
    const body = gzip ?? page.plain;
    const etag = `"${page.tag}${gzip ? '-gz' : ''}"`;
    const common = { etag, 'cache-control': page.cache, vary: 'accept-encoding' };
    if (namesTag(request.headers['if-none-match'], etag)) {
      send(304, common);
      return;
    }
    send(
      200,
      {
        ...common,
        'content-type': page.type,
        'content-length': body.length,
        ...(gzip ? { 'content-encoding': 'gzip' } : {}),
      },
      body,
    );
  };
}

/** A server of such files alone. @param {Map<string, Page>} site by request path */
export const createSiteServer = (site) => createServer(answerFrom(site));
