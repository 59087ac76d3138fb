/**
 * What the page may load: only its own files; pictures also from memory. No inline script, no inline
 * style, no frame, no form, no other host (W3C Content Security Policy Level 3).
 */
export const pagePolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Headers of every answer, from whichever host: nothing kept, nothing guessed, nothing shared. */
export const pageHeaders: Readonly<Record<string, string>> = {
  'Content-Security-Policy': pagePolicy,
  'X-Content-Type-Options': 'nosniff',
  'Cache-Control': 'no-store',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'X-Frame-Options': 'DENY',
  // Nothing of the machine is used that a page would have to ask for (W3C Permissions Policy).
  'Permissions-Policy':
    'camera=(), display-capture=(), geolocation=(), hid=(), microphone=(), payment=(), usb=()',
};
