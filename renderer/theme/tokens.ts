/** Day is paper and graphite, night is a blue-black board and chalk. */
export const themes = ['day', 'night'] as const;
export type Theme = (typeof themes)[number];

/** Seven steps of one hue. Day: lightness falls with likelihood. Night: it rises. */
export type AccentRamp = readonly [string, string, string, string, string, string, string];

/** Colours for painting the board and every drawing on it. */
export interface BoardColours {
  readonly paper: string;
  readonly gridMinor: string;
  readonly gridMajor: string;
  /** Outlines of the car: graphite by day, chalk by night. */
  readonly graphite: string;
  /** Text and what is picked. */
  readonly ink: string;
  /** Text and lines that step back, still readable. */
  readonly quiet: string;
  /** Lines of routes that are not under search; never used for text. */
  readonly faint: string;
  readonly panelHatch: string;
  readonly accent: AccentRamp;
  readonly warning: string;
  /** The ring round the found place. */
  readonly found: string;
}

/** Colours of the controls round the board. */
export interface ControlColours {
  readonly ground: string;
  readonly raised: string;
  readonly hover: string;
  readonly rule: string;
  readonly ruleStrong: string;
  readonly cautionGround: string;
  readonly cautionText: string;
  readonly inkOnDark: string;
}

export const boardColours: Readonly<Record<Theme, BoardColours>> = {
  day: {
    paper: '#faf6ec',
    gridMinor: '#f1eadb',
    gridMajor: '#e4dac5',
    graphite: '#4a4640',
    ink: '#211d18',
    quiet: '#665e53',
    faint: '#a0968a',
    panelHatch: '#cfc4ae',
    accent: ['#ffb79b', '#f5946e', '#dd7951', '#c55d32', '#ae4207', '#8a3304', '#682403'],
    warning: '#4a3a00',
    found: '#16242e',
  },
  night: {
    paper: '#101822',
    gridMinor: '#16202c',
    gridMajor: '#1f2b39',
    graphite: '#c4ccd1',
    ink: '#eef1f0',
    quiet: '#9dabb5',
    faint: '#586672',
    panelHatch: '#334252',
    accent: ['#822e01', '#a53d04', '#c65018', '#e56731', '#fe8351', '#feae8e', '#ffd3c3'],
    warning: '#f0e3b2',
    found: '#ffffff',
  },
};

export const controlColours: Readonly<Record<Theme, ControlColours>> = {
  day: {
    ground: '#f3ecdd',
    raised: '#fdfaf3',
    hover: '#ebe2cf',
    rule: '#d6cbb4',
    ruleStrong: '#857a6a',
    cautionGround: '#f0e2b0',
    cautionText: '#3a2e00',
    inkOnDark: '#fdfaf3',
  },
  night: {
    ground: '#0b121a',
    raised: '#17212d',
    hover: '#223040',
    rule: '#2b3a4a',
    ruleStrong: '#76869a',
    cautionGround: '#34301c',
    cautionText: '#f3e8bd',
    inkOnDark: '#101822',
  },
};

/**
 * Which of the seven steps shows a likelihood, from its share (0 to 1) of the largest one on screen.
 * The square root keeps small chances apart, which is where the eye must still see an order.
 */
export function accentStep(shareOfLargest: number): number {
  const bounded = Math.min(1, Math.max(0, shareOfLargest));
  return Math.min(6, Math.floor(Math.sqrt(bounded) * 7));
}
