/**
 * The Content-Security-Policy of the program: nothing but its own files, no network beyond its own origin, no inline
 * script. Built into the page as a <meta>, so that it holds on any host, and sent as a header by our own server.
 */
const directives = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' blob: data:",
  "connect-src 'self'", // the service worker fetches our own files to keep them for offline use
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
];

/** The policy as a <meta> may state it. */
export const policy = directives.join('; ');

/** The policy as a header: framing can be forbidden only there. */
export const headerPolicy = `${policy}; frame-ancestors 'none'`;
