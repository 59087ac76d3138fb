import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** A token for one launch: 256 bits from the operating system, in letters an address can carry. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** Whether a token offered is the token of this launch, in a time that tells nothing about either. */
export function sameToken(offered: string, token: string): boolean {
  const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(offered), digest(token));
}
