import type { MapExchange } from '#core/map/exchange.ts';

/** Figures to two decimals: a hundredth of a millimetre is far finer than any hand, and a wire size has no more. */
const rounded = (value: unknown, field = ''): unknown => {
  // Stretches that meet must go on meeting, and none may reach beyond the end of its run.
  const whole = field === 'fromMm' || field === 'toMm' ? Math.floor : Math.round;
  if (typeof value === 'number') return whole(value * 100) / 100 + 0;
  if (Array.isArray(value)) return value.map((each) => rounded(each));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, rounded(each, name)]));
};

/** What an id says of a thing's name: small letters, digits and dashes. */
const slug = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/['’]/g, '')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');

/**
 * A drawn map as a sample: every thing has an id after its name and every fixing one after its run, figures are
 * rounded to two decimals, the picture it was traced from is left out, and it counts as one edit. Drawn twice alike,
 * it is the same map to the byte. Names must be there and differ within a kind, or it throws.
 */
export function namedAfterThings(map: MapExchange, id: MapExchange['id']): unknown {
  const renamed = new Map<string, string>();
  const give = (from: string, to: string): void => {
    if ([...renamed.values()].includes(to)) throw new Error(`two things would be ${to}`);
    renamed.set(from, to);
  };
  const { outlines, nodes, segments, panels, rubSpots, circuits } = map;
  for (const thing of [...outlines, ...nodes, ...segments, ...panels, ...rubSpots, ...circuits]) {
    if (thing.name === '') throw new Error(`${thing.id} has no name`);
    give(thing.id, `${thing.id.slice(0, thing.id.indexOf(':'))}:${slug(thing.name)}`);
  }
  for (const { name, clips } of segments) {
    clips.forEach((clip, index) => {
      give(clip.id, `clip:${slug(name)}-${index + 1}`);
    });
  }
  const rename = (value: unknown): unknown => {
    if (typeof value === 'string') return renamed.get(value) ?? value;
    if (Array.isArray(value)) return value.map(rename);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([field, each]) => [field, rename(each)]));
  };
  return rename(rounded({ ...map, id, revision: 1, underlays: [] }));
}
