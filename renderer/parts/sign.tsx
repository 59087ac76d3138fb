/** Our own small drawings on a 24 unit square, stroked in the text's colour. */
const drawings = {
  back: 'M20 12H5m6-6-6 6 6 6',
  undo: 'M8 5 4 9l4 4M4 9h10a6 6 0 0 1 0 12h-4',
  redo: 'm16 5 4 4-4 4m4-4H10a6 6 0 0 0 0 12h4',
  close: 'M5 5l14 14M19 5 5 19',
  more: 'M4 12a1 1 0 1 0 2 0a1 1 0 1 0-2 0M11 12a1 1 0 1 0 2 0a1 1 0 1 0-2 0M18 12a1 1 0 1 0 2 0a1 1 0 1 0-2 0',
  down: 'm5 9 7 7 7-7',
  up: 'm5 15 7-7 7 7',
  plus: 'M12 4v16M4 12h16',
  minus: 'M4 12h16',
  fit: 'M4 9V4h5M15 4h5v5M20 15v5h-5M9 20H4v-5',
  day: 'M12 8a4 4 0 1 0 0 8 4 4 0 0 0 0-8M12 2v3m0 14v3M2 12h3m14 0h3M5 5l2 2m10 10 2 2M5 19l2-2M17 7l2-2',
  night: 'M19 15A8 8 0 0 1 9 5a8 8 0 1 0 10 10',
  key: 'M4 6h5M12 6h8M4 12h5m3 0h8M4 18h5m3 0h8',
  keyboard: 'M3 6h18v12H3zM7 10h0m4 0h0m4 0h0M8 14h8',
  search: 'M10.5 4a6.5 6.5 0 1 0 0 13 6.5 6.5 0 0 0 0-13M15.5 15.5 21 21',
  tick: 'm4 13 5 5L20 6',
  notch: 'M3 12h6l3 5 3-5h6',
  ring: 'M12 4a8 8 0 1 0 0 16 8 8 0 0 0 0-16M12 11v2',
  airbag: 'M4 20c0-5 2-8 5-8M9 12a3 3 0 1 0 0-6 3 3 0 0 0 0 6M15 6a6 6 0 1 1 0 12',
  belt: 'M6 3 18 21M9 13h9v6h-6M6 3h4',
  voltage: 'M13 2 6 13h5l-1 9 8-12h-6z',
  battery: 'M3 8h18v11H3zM6 8V5h3v3m6 0V5h3v3M6 13h4m4 0h4m-2-2v4',
  glass: 'M6 4h12l3 16H3zM9 9l-2 5m6-5-3 8',
  fuel: 'M5 21V4h9v17M3 21h13M5 11h9m0-3 4 3v6a2 2 0 0 0 3 0V8l-3-3',
  raised: 'M4 20h16M7 20l5-9 5 9M3 11h18M9 7h6l2 4',
  clip: 'M7 4h10M9 4v6l3 4 3-4V4M12 14v6',
  people:
    'M8 10a3 3 0 1 0 0-6 3 3 0 0 0 0 6m8 0a3 3 0 1 0 0-6 3 3 0 0 0 0 6M3 20c0-5 2-8 5-8s5 3 5 8m-1-6c1-1 2-2 4-2 3 0 5 3 5 8',
  care: 'M12 3v12m0 5v1',
} as const;
export type SignName = keyof typeof drawings;

/** A drawn sign; always beside words or inside a labelled control, so hidden from reading aloud. */
export function Sign({ name, size = 22 }: { readonly name: SignName; readonly size?: number }) {
  return (
    <svg
      className="sign"
      width={size}
      height={size}
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.8"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      <path d={drawings[name]} />
    </svg>
  );
}
