import type { BodyStyle } from './kinds.ts';

/** The six body styles a starter is drawn for. */
export type StarterStyle = Exclude<BodyStyle, 'other'>;

/** Where the parts of one body style lie on a car of its usual size; x from the front bumper. */
export interface BodyProportions {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly frontAxleMm: number;
  readonly rearAxleMm: number;
  /** Over this length the nose and the tail round off to the full width. */
  readonly noseMm: number;
  readonly tailMm: number;
  readonly screenBaseMm: number;
  readonly dashMm: number;
  readonly roofFromMm: number;
  readonly roofToMm: number;
  readonly frontSeatMm: number;
  readonly beltPillarMm: number;
  /** Front edge of the rear bench; null where there is none. */
  readonly benchMm: number | null;
  readonly rearPillarMm: number;
  /** Load floor, boot lid or bed. */
  readonly loadFromMm: number;
  readonly loadToMm: number;
  readonly loadHalfWidthMm: number;
}

/** Invented cars of common sizes; common practice, no source. */
export const bodyProportions: Readonly<Record<StarterStyle, BodyProportions>> = {
  hatch: {
    lengthMm: 4050,
    widthMm: 1750,
    frontAxleMm: 830,
    rearAxleMm: 3390,
    noseMm: 560,
    tailMm: 480,
    screenBaseMm: 1012,
    dashMm: 1395,
    roofFromMm: 1735,
    roofToMm: 3700,
    frontSeatMm: 1750,
    beltPillarMm: 2345,
    benchMm: 2600,
    rearPillarMm: 3680,
    loadFromMm: 3250,
    loadToMm: 3930,
    loadHalfWidthMm: 540,
  },
  saloon: {
    lengthMm: 4650,
    widthMm: 1820,
    frontAxleMm: 900,
    rearAxleMm: 3650,
    noseMm: 600,
    tailMm: 520,
    screenBaseMm: 1080,
    dashMm: 1480,
    roofFromMm: 1880,
    roofToMm: 3380,
    frontSeatMm: 1900,
    beltPillarMm: 2500,
    benchMm: 2780,
    rearPillarMm: 3470,
    loadFromMm: 3830,
    loadToMm: 4570,
    loadHalfWidthMm: 610,
  },
  estate: {
    lengthMm: 4750,
    widthMm: 1840,
    frontAxleMm: 900,
    rearAxleMm: 3700,
    noseMm: 600,
    tailMm: 420,
    screenBaseMm: 1065,
    dashMm: 1500,
    roofFromMm: 1840,
    roofToMm: 4535,
    frontSeatMm: 1900,
    beltPillarMm: 2560,
    benchMm: 2830,
    rearPillarMm: 4500,
    loadFromMm: 3470,
    loadToMm: 4600,
    loadHalfWidthMm: 560,
  },
  van: {
    lengthMm: 5300,
    widthMm: 1990,
    frontAxleMm: 950,
    rearAxleMm: 4250,
    noseMm: 420,
    tailMm: 130,
    screenBaseMm: 560,
    dashMm: 980,
    roofFromMm: 1230,
    roofToMm: 5230,
    frontSeatMm: 1330,
    beltPillarMm: 1960,
    benchMm: null,
    rearPillarMm: 5190,
    loadFromMm: 2160,
    loadToMm: 5210,
    loadHalfWidthMm: 850,
  },
  pickup: {
    lengthMm: 5300,
    widthMm: 1860,
    frontAxleMm: 930,
    rearAxleMm: 4080,
    noseMm: 520,
    tailMm: 140,
    screenBaseMm: 1143,
    dashMm: 1575,
    roofFromMm: 1840,
    roofToMm: 3360,
    frontSeatMm: 1900,
    beltPillarMm: 2520,
    benchMm: 2760,
    rearPillarMm: 3385,
    loadFromMm: 3490,
    loadToMm: 5262,
    loadHalfWidthMm: 790,
  },
  coupe: {
    lengthMm: 4400,
    widthMm: 1820,
    frontAxleMm: 920,
    rearAxleMm: 3540,
    noseMm: 640,
    tailMm: 560,
    screenBaseMm: 1180,
    dashMm: 1590,
    roofFromMm: 2000,
    roofToMm: 3080,
    frontSeatMm: 1980,
    beltPillarMm: 2720,
    benchMm: 2790,
    rearPillarMm: 3230,
    loadFromMm: 3680,
    loadToMm: 4310,
    loadHalfWidthMm: 580,
  },
};
