import { useLayoutEffect, useRef } from 'react';

/** A map's drawing as a part of the page, not as a picture in it: only so its names are set in the page's own type. */
export function MapDrawing({
  svg,
  label,
  className,
}: {
  readonly svg: string;
  readonly label: string;
  readonly className: string;
}) {
  const place = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const drawn = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
    // The label says it already, and says more than the map's name.
    drawn.removeAttribute('role');
    drawn.removeAttribute('aria-label');
    drawn.setAttribute('aria-hidden', 'true');
    place.current?.replaceChildren(document.importNode(drawn, true));
  }, [svg]);
  return <div ref={place} role="img" aria-label={label} className={className} />;
}

/** The type of the page, for names in a drawing that is a part of it. */
export const pageType = '"B612", "Verdana", sans-serif';
