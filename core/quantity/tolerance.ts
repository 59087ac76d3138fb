/** Two positions nearer than this on the drawing are the same point: under what a tape can show. */
export const samePlaceMm = 0.5;

/** A station may pass a run's end by this much before it is refused: rounding in hand-edited files. */
export const stationSlackMm = 1;
