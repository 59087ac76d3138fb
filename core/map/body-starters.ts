import { type BodyProportions, bodyProportions, type StarterStyle } from './body-proportions.ts';
import { curveThrough, type DrawnPoint } from './curve-through.ts';
import type { Outline, Vertex } from './records.ts';

/** An outline before it has an id and a place in the order. */
export type OutlineSketch = Pick<Outline, 'name' | 'kind' | 'closed' | 'vertices'>;

/** A car as measured: bumper to bumper, widest without mirrors, axle to axle; mm. */
export interface BodySize {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly wheelbaseMm: number;
}

/** The usual size of a body style, to begin from. */
export const usualBodySize = (style: StarterStyle): BodySize => {
  const { lengthMm, widthMm, frontAxleMm, rearAxleMm } = bodyProportions[style];
  return { lengthMm, widthMm, wheelbaseMm: rearAxleMm - frontAxleMm };
};

/**
 * Outlines of a body style stretched to a measured car, front bumper at x = 0, centre line at y = 0:
 * body shell, roof, screen and dash lines, seats, sills, wheel arches, pillars and load floor. Lengths
 * stretch piece by piece between bumper, axles and bumper, so that wheels come to lie where they are.
 * Of what the wheelbase leaves, front and rear overhang keep their usual shares. A size that is not
 * positive, or a wheelbase not shorter than the car, is the caller's slip: stretch is then meaningless.
 * @example
 * Math.max(...bodyStarter('hatch', { lengthMm: 4200, widthMm: 1800, wheelbaseMm: 2600 })[0].vertices.map((vertex) => vertex.xMm)) // => 4200
 */
export function bodyStarter(style: StarterStyle, size: BodySize): readonly OutlineSketch[] {
  const usual = bodyProportions[style];
  const overhangMm = usual.lengthMm - (usual.rearAxleMm - usual.frontAxleMm);
  const frontMm = ((size.lengthMm - size.wheelbaseMm) * usual.frontAxleMm) / overhangMm;
  const from = [0, usual.frontAxleMm, usual.rearAxleMm, usual.lengthMm] as const;
  const to = [0, frontMm, frontMm + size.wheelbaseMm, size.lengthMm] as const;
  const widen = size.widthMm / usual.widthMm;
  const lengthen = (xMm: number): number => {
    const piece = xMm <= from[1] ? 0 : xMm <= from[2] ? 1 : 2;
    const a = from[piece] as number;
    const b = from[piece + 1] as number;
    const start = to[piece] as number;
    return start + ((xMm - a) * ((to[piece + 1] as number) - start)) / (b - a);
  };
  const stretched = ([xMm, yMm, corner]: DrawnPoint): DrawnPoint =>
    corner ? [lengthen(xMm), yMm * widen, corner] : [lengthen(xMm), yMm * widen];
  return shapes(style, usual).map(({ name, kind, closed, points }) => ({
    name,
    kind,
    closed,
    vertices: curveThrough(points.map(stretched), closed) as Vertex[],
  }));
}

interface Shape extends Pick<OutlineSketch, 'name' | 'kind' | 'closed'> {
  readonly points: readonly DrawnPoint[];
}

const flipped = (points: readonly DrawnPoint[]): readonly DrawnPoint[] =>
  points.map(([xMm, yMm, corner]): DrawnPoint => (corner ? [xMm, 0 - yMm, corner] : [xMm, 0 - yMm]));

/** Both halves from the right one, which runs from the centre line in front to the centre line behind. */
const wholeOf = (right: readonly DrawnPoint[]): readonly DrawnPoint[] => [
  ...right,
  ...flipped(right)
    .filter(([, yMm]) => yMm !== 0)
    .reverse(),
];

/** A box with its corners taken off, so that the curve through it reads as rounded. */
function box(fromX: number, fromY: number, toX: number, toY: number, roundMm: number): readonly DrawnPoint[] {
  const r = roundMm;
  return [
    [fromX + r, fromY],
    [toX - r, fromY],
    [toX - 0.3 * r, fromY + 0.3 * r],
    [toX, fromY + r],
    [toX, toY - r],
    [toX - 0.3 * r, toY - 0.3 * r],
    [toX - r, toY],
    [fromX + r, toY],
    [fromX + 0.3 * r, toY - 0.3 * r],
    [fromX, toY - r],
    [fromX, fromY + r],
    [fromX + 0.3 * r, fromY + 0.3 * r],
  ];
}

function shapes(style: StarterStyle, body: BodyProportions): readonly Shape[] {
  const half = body.widthMm / 2;
  const closed = (name: string, kind: Shape['kind'], points: readonly DrawnPoint[]): Shape => ({
    name,
    kind,
    closed: true,
    points,
  });
  const open = (name: string, points: readonly DrawnPoint[]): Shape => ({
    name,
    kind: 'other',
    closed: false,
    points,
  });
  const both = (name: string, kind: Shape['kind'], right: readonly DrawnPoint[]): readonly Shape[] => [
    closed(`Left ${name}`, kind, flipped(right)),
    closed(`Right ${name}`, kind, right),
  ];
  const arch = (axleMm: number): readonly DrawnPoint[] =>
    box(axleMm - 345, half * 0.68, axleMm + 345, half * 0.925, 70);
  const seat = body.frontSeatMm;
  const list: Shape[] = [
    closed('Body shell', 'shell', wholeOf(shellHalf(body))),
    closed('Roof', 'other', wholeOf(roofHalf(body))),
    open('Windscreen base', screenLine(body.screenBaseMm, 260, half * 0.85)),
    open('Dash line', screenLine(body.dashMm, -65, half * 0.79)),
    ...both(
      'sill',
      'sill',
      box(body.frontAxleMm + 400, half * 0.885, body.rearAxleMm - 350, half * 0.965, 26),
    ),
    ...both('front wheel arch', 'arch', arch(body.frontAxleMm)),
    ...both('rear wheel arch', 'arch', arch(body.rearAxleMm)),
    ...both('A-pillar', 'pillar', screenPillar(body, half)),
    ...both(
      'B-pillar',
      'pillar',
      box(body.beltPillarMm - 55, half * 0.73, body.beltPillarMm + 55, half * 0.92, 18),
    ),
    ...both(
      'rear pillar',
      'pillar',
      box(body.rearPillarMm - 60, half * 0.68, body.rearPillarMm + 50, half * 0.86, 18),
    ),
    ...both('front seat cushion', 'seat', box(seat, half * 0.135, seat + 525, half * 0.72, 80)),
    ...both('front seat backrest', 'seat', box(seat + 460, half * 0.12, seat + 655, half * 0.735, 85)),
    closed(
      loadNames[style],
      'other',
      box(body.loadFromMm, -body.loadHalfWidthMm, body.loadToMm, body.loadHalfWidthMm, 60),
    ),
  ];
  if (body.benchMm !== null) {
    const bench = body.benchMm;
    const benchHalf = half * (style === 'coupe' ? 0.62 : 0.74);
    list.push(closed('Rear seat cushion', 'seat', box(bench, -benchHalf, bench + 480, benchHalf, 80)));
    list.push(
      closed(
        'Rear seat backrest',
        'seat',
        box(bench + 420, -benchHalf * 0.86, bench + 580, benchHalf * 0.86, 60),
      ),
    );
  }
  return list;
}

const loadNames: Readonly<Record<StarterStyle, string>> = {
  hatch: 'Boot floor',
  saloon: 'Boot lid',
  estate: 'Boot floor',
  van: 'Load floor',
  pickup: 'Load bed',
  coupe: 'Boot lid',
};

function shellHalf({ lengthMm, widthMm, noseMm, tailMm }: BodyProportions): readonly DrawnPoint[] {
  const half = widthMm / 2;
  const end = (xMm: number, share: number): DrawnPoint => [xMm, half * share];
  return [
    [0, 0],
    end(noseMm * 0.025, 0.38),
    end(noseMm * 0.11, 0.64),
    end(noseMm * 0.29, 0.825),
    end(noseMm * 0.59, 0.915),
    end(noseMm, 0.96),
    end(noseMm * 1.7, 0.988),
    end(lengthMm * 0.5, 1),
    end(lengthMm - tailMm * 1.9 - 200, 1),
    end(lengthMm - tailMm * 1.9, 0.996),
    end(lengthMm - tailMm, 0.97),
    end(lengthMm - tailMm * 0.6, 0.91),
    end(lengthMm - tailMm * 0.3, 0.82),
    end(lengthMm - tailMm * 0.1, 0.66),
    end(lengthMm - tailMm * 0.025, 0.4),
    [lengthMm, 0],
  ];
}

function roofHalf({ widthMm, roofFromMm, roofToMm }: BodyProportions): readonly DrawnPoint[] {
  const half = widthMm / 2;
  const long = roofToMm - roofFromMm;
  return [
    [roofFromMm, 0],
    [roofFromMm + 13, half * 0.3],
    [roofFromMm + 65, half * 0.56],
    [roofFromMm + 225, half * 0.655],
    [roofFromMm + long * 0.32, half * 0.685],
    [roofFromMm + long * 0.75, half * 0.665],
    [roofToMm - 100, half * 0.61],
    [roofToMm - 30, half * 0.46],
    [roofToMm, 0],
  ];
}

/** A line across the car that sweeps back (or, with a minus, forward) by `sweepMm` towards its ends. */
const screenLine = (xMm: number, sweepMm: number, halfMm: number): readonly DrawnPoint[] => [
  [xMm + sweepMm, -halfMm],
  [xMm + sweepMm * 0.4, -halfMm * 0.78],
  [xMm + sweepMm * 0.09, -halfMm * 0.42],
  [xMm, 0],
  [xMm + sweepMm * 0.09, halfMm * 0.42],
  [xMm + sweepMm * 0.4, halfMm * 0.78],
  [xMm + sweepMm, halfMm],
];

function screenPillar({ screenBaseMm, roofFromMm }: BodyProportions, half: number): readonly DrawnPoint[] {
  const footMm = screenBaseMm + 275;
  return [
    [footMm, half * 0.85, 'corner'],
    [roofFromMm + 65, half * 0.57, 'corner'],
    [roofFromMm + 100, half * 0.62, 'corner'],
    [footMm + 45, half * 0.885, 'corner'],
  ];
}
