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

/**
 * The policy of the one worker that makes solids; a worker has that of its own file's answer. The kernel is WebAssembly, and its
 * bindings put functions together from text when they start: names and types of the kernel's own, never a word of a job. So
 * it may do that, and nothing but that and fetch its own files; the page may not.
 */
export const solidsPolicy =
  "default-src 'none'; script-src 'self' 'unsafe-eval' 'wasm-unsafe-eval'; connect-src 'self'";

/**
 * The policy of the two workers that may load the solver of linear programs, which is WebAssembly: no text becomes a program there
 * either.
 */
export const solverPolicy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'";

/**
 * What is sent with a file of the build, by its path within that.
 *
 * @param {string} path
 */
export function policyOf(path) {
  if (/^\/assets\/solids-[\w-]+\.js$/.test(path)) return solidsPolicy;
  if (/^\/assets\/(stages|make)-[\w-]+\.js$/.test(path)) return solverPolicy;
  return headerPolicy;
}
