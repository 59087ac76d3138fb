export type LookQuality = 'clear' | 'half' | 'feel';

/**
 * The chance that damage there would have been noticed, by how well one could see. Common practice has
 * no figures for it: these are judgement, kept apart enough that a second look still pays.
 */
export const lookQualities: Readonly<Record<LookQuality, number>> = { clear: 0.95, half: 0.6, feel: 0.35 };

/** The words' key for a kept look quality: the nearest of the three. */
export function nearestLookQuality(quality: number): LookQuality {
  const names = Object.keys(lookQualities) as LookQuality[];
  return names.reduce((best, name) =>
    Math.abs(lookQualities[name] - quality) < Math.abs(lookQualities[best] - quality) ? name : best,
  );
}
