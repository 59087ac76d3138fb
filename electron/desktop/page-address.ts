/** The page's own scheme: served from the built folder and from nowhere else. */
export const pageScheme = 'undertrim';
export const pageAddress = `${pageScheme}://page/`;

/** Whether an address is one of the page's own. */
export function isPageAddress(address: string): boolean {
  return address.startsWith(pageAddress);
}
