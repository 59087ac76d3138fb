/** Day: warm paper and graphite. Night: a blue-black board and chalk. */
export type Theme = 'day' | 'night';

/** What the canvas painters draw with. The rest of the screen takes its colours from the style sheet. */
export interface BoardColours {
  readonly paper: string;
  readonly gridMinor: string;
  readonly gridMajor: string;
  /** Outlines of the vehicle. */
  readonly graphite: string;
  readonly ink: string;
  /** Runs and marks that are not what is being looked at. */
  readonly muted: string;
  readonly hatch: string;
  readonly panelEdge: string;
  readonly warning: string;
  /** The one accent: eight steps of copper, least to most likely; lightness moves one way only. */
  readonly likelihood: readonly string[];
}

const day: BoardColours = {
  paper: '#f6f1e6',
  gridMinor: '#ece5d5',
  gridMajor: '#dfd5c0',
  graphite: '#6b6862',
  ink: '#22201c',
  muted: '#98928a',
  hatch: '#cfc5b2',
  panelEdge: '#a59b88',
  warning: '#8a2318',
  likelihood: ['#e9c9a9', '#dfb08a', '#d2966c', '#c37c50', '#af6338', '#964b25', '#7a3516', '#5c220a'],
};

const night: BoardColours = {
  paper: '#10161d',
  gridMinor: '#161d26',
  gridMajor: '#1f2833',
  graphite: '#98a2ab',
  ink: '#eef0ea',
  muted: '#67717c',
  hatch: '#2b3642',
  panelEdge: '#566270',
  warning: '#ff9c8a',
  likelihood: ['#5b3a26', '#744a2f', '#8f5c3a', '#aa7048', '#c58558', '#dd9d6f', '#f0b88d', '#fdd9b9'],
};

/** The colours for canvas painting in a theme. */
export function readBoardColours(theme: Theme): BoardColours {
  return theme === 'day' ? day : night;
}
