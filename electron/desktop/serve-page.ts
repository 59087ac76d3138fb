import { readPageFile } from '../page-file.ts';
import { pageHeaders } from '../page-headers.ts';
import { isPageAddress } from './page-address.ts';

/** Answers the page's own scheme from the built folder; all else is not found. */
export function servePage(builtFolder: string, address: string): Response {
  const file = isPageAddress(address) ? readPageFile(builtFolder, new URL(address).pathname) : null;
  if (!file) return new Response('not found', { status: 404, headers: pageHeaders });
  return new Response(new Uint8Array(file.bytes), {
    headers: { ...pageHeaders, 'Content-Type': file.mediaType },
  });
}
