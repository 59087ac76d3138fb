import { type RefObject, useLayoutEffect, useState } from 'react';

/** The width of an element in px, followed as it changes. */
export function useWidth(element: RefObject<HTMLElement | null>, firstPx: number): number {
  const [widthPx, setWidthPx] = useState(firstPx);
  useLayoutEffect(() => {
    const watched = element.current;
    if (!watched) return;
    setWidthPx(watched.clientWidth);
    const observer = new ResizeObserver(() => setWidthPx(watched.clientWidth));
    observer.observe(watched);
    return () => observer.disconnect();
  }, [element]);
  return widthPx;
}
