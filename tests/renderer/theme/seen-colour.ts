/** Red, green and blue as light, 0 to 1, linear. */
export type Light = readonly [number, number, number];

const toLight = (channel: number): number =>
  channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;

/** The light of a colour written as #rrggbb (IEC 61966-2-1, the sRGB curve). */
export function lightOf(hex: string): Light {
  const channel = (from: number): number => toLight(Number.parseInt(hex.slice(from, from + 2), 16) / 255);
  return [channel(1), channel(3), channel(5)];
}

/** Relative luminance (W3C, Web Content Accessibility Guidelines 2.2). */
export function luminance([red, green, blue]: Light): number {
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two colours (W3C, Web Content Accessibility Guidelines 2.2). */
export function contrast(a: string, b: string): number {
  const [high, low] = [luminance(lightOf(a)), luminance(lightOf(b))].sort((x, y) => y - x) as [
    number,
    number,
  ];
  return (high + 0.05) / (low + 0.05);
}

/** CIE 1976 lightness, 0 to 100, of a relative luminance (CIE 15). */
export function lightness(y: number): number {
  return y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : (y * 24389) / 27;
}

/** Hue angle in the a, b plane of CIELAB, in degrees (CIE 15, D65 white; sRGB primaries of IEC 61966-2-1). */
export function hueDegrees([red, green, blue]: Light): number {
  const x = 0.4124 * red + 0.3576 * green + 0.1805 * blue;
  const y = luminance([red, green, blue]);
  const z = 0.0193 * red + 0.1192 * green + 0.9505 * blue;
  const f = (t: number): number => (lightness(t) + 16) / 116;
  return (Math.atan2(200 * (f(y) - f(z / 1.089)), 500 * (f(x / 0.9505) - f(y))) * 180) / Math.PI;
}

/** Complete loss of the long-wave (protan) or middle-wave (deutan) cone, and no colour at all. */
export type Sight = 'ordinary' | 'protanopia' | 'deuteranopia' | 'greyscale';

/**
 * Simulation matrices on linear light for severity 1.0: G. M. Machado, M. M. Oliveira, L. A. F.
 * Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE
 * Transactions on Visualization and Computer Graphics 15(6), 2009, table of precomputed matrices
 * (figures from memory).
 */
const machado: Readonly<Record<'protanopia' | 'deuteranopia', readonly [Light, Light, Light]>> = {
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
};

/** The light as someone with that sight takes it. */
export function seenBy(sight: Sight, light: Light): Light {
  if (sight === 'ordinary') return light;
  if (sight === 'greyscale') {
    const y = luminance(light);
    return [y, y, y];
  }
  const rows = machado[sight];
  const seen = rows.map((row) => {
    const value = row[0] * light[0] + row[1] * light[1] + row[2] * light[2];
    return Math.min(1, Math.max(0, value));
  });
  return seen as unknown as Light;
}
