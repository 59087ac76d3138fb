import type { EntryOf, JobEntry } from '#core/job/job-document.ts';
import type { Stretch } from '#core/job/reading.ts';

const at = '2026-01-05T10:00:00Z';

/** A cause found at some stretches, described, and proved in its three parts: the look, the find, the proof. */
export function provedAt(
  stretches: readonly Stretch[],
  id: `entry:${string}` = 'entry:find',
): readonly [EntryOf<'inspection'>, EntryOf<'finding'>, EntryOf<'proof-of-cause'>] {
  const there = [...stretches];
  return [
    { id, at, type: 'inspection', stretches: there, result: 'found', lookQuality: 0.95, note: '' },
    {
      id: `${id}-described`,
      at,
      type: 'finding',
      stretches: there,
      damage: 'chafed',
      circuitId: null,
      cause: 'edge-touches',
      result: 'proved-cause',
      photos: [],
      note: '',
    },
    {
      id: `${id}-proof`,
      at,
      type: 'proof-of-cause',
      findingId: `${id}-described`,
      damageSeen: true,
      onFaultyCircuit: true,
      comesAndGoes: true,
      note: '',
    },
  ];
}

/** The same with a part of the proof that does not hold. */
export const refusedAt = (
  stretches: readonly Stretch[],
  id: `entry:${string}` = 'entry:find',
): readonly JobEntry[] => {
  const [look, finding, proof] = provedAt(stretches, id);
  return [look, finding, { ...proof, comesAndGoes: false }];
};
