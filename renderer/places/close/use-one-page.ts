import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';

const pxPerMm = 96 / 25.4;
/** Letter within the sheet's margins of 14 mm is the lower of the two papers; a little is left for rounding. */
const mostPx = (279.4 - 2 * 14 - 2) * pxPerMm;

/**
 * How much must be left off a printed sheet to keep it on one page: 0 for nothing, and one more each time it is
 * still too long, up to `most`. `content` says what is on it; another content begins anew.
 */
export function useOnePage<T extends HTMLElement>(
  content: unknown,
  most: number,
): { readonly ref: RefObject<T | null>; readonly leftOff: number } {
  const ref = useRef<T>(null);
  const [found, setFound] = useState({ content, leftOff: 0, fonts: false });
  const leftOff = found.content === content ? found.leftOff : 0;
  useEffect(() => {
    // Another letter width may need another line.
    void document.fonts.ready.then(() => setFound((before) => ({ ...before, leftOff: 0, fonts: true })));
  }, []);
  useLayoutEffect(() => {
    const sheet = ref.current?.closest<HTMLElement>('.sheet');
    if (!sheet || leftOff >= most) return;
    const { paddingTop, paddingBottom } = getComputedStyle(sheet);
    const px = sheet.offsetHeight - Number.parseFloat(paddingTop) - Number.parseFloat(paddingBottom);
    if (px > mostPx) setFound((before) => ({ ...before, content, leftOff: leftOff + 1 }));
  });
  return { ref, leftOff };
}
