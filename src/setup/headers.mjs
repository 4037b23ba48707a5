/**
 * No inline script or style and nothing from another origin: a sheet can be opened from anybody without risk.
 * @param {string} [sockets] addresses of sockets that the page may open, beside its own
 */
const policy = (sockets) =>
  [
    "default-src 'none'",
    "script-src 'self'",
    "worker-src 'self'",
    "style-src 'self'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self'${sockets ? ` ${sockets}` : ''}`,
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');

/** Sent with every response, the worker's script and refusals included. */
export const strictHeaders = {
  'content-security-policy': policy(),
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

/**
 * The headers of a shop's server. Browsers pass over an opener policy where a page came over plain HTTP from another
 * machine, and complain of it.
 * @param {string} host as the browser asked for it, and as it was found to be one of this server's
 * @param {boolean} secure
 */
export const shopHeaders = (host, secure) => {
  const { 'cross-origin-opener-policy': opener, ...rest } = strictHeaders;
  return {
    ...rest,
    // Not every browser counts a socket of the page's own origin as its own.
    'content-security-policy': policy(`${secure ? 'wss' : 'ws'}://${host}`),
    ...(secure && { 'cross-origin-opener-policy': opener }),
  };
};
