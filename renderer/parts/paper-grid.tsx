/** The faint millimetre grid of the drawing board, behind everything. */
export function PaperGrid() {
  return (
    <svg className="paper-grid" aria-hidden="true" width="100%" height="100%">
      <defs>
        <pattern id="paper-minor" width="8" height="8" patternUnits="userSpaceOnUse">
          <path d="M8 0H0V8" fill="none" stroke="var(--grid-minor)" strokeWidth="1" />
        </pattern>
        <pattern id="paper-major" width="80" height="80" patternUnits="userSpaceOnUse">
          <rect width="80" height="80" fill="url(#paper-minor)" />
          <path d="M80 0H0V80" fill="none" stroke="var(--grid-major)" strokeWidth="1" />
        </pattern>
      </defs>
      <rect width="100%" height="100%" fill="var(--paper)" />
      <rect width="100%" height="100%" fill="url(#paper-major)" />
    </svg>
  );
}
