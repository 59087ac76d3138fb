import { z } from 'zod';
import type { Chance } from './chance.ts';

/** What an id can name; the word before the colon. */
export type IdKind =
  | 'outline'
  | 'underlay'
  | 'node'
  | 'segment'
  | 'clip'
  | 'panel'
  | 'rub-spot'
  | 'circuit'
  | 'map'
  | 'job'
  | 'entry'
  | 'meter';

/** A readable branded id such as `segment:7f3k2m`. */
export type Id<K extends IdKind> = `${K}:${string}`;

export type OutlineId = Id<'outline'>;
export type UnderlayId = Id<'underlay'>;
export type NodeId = Id<'node'>;
export type SegmentId = Id<'segment'>;
export type ClipId = Id<'clip'>;
export type PanelId = Id<'panel'>;
export type RubSpotId = Id<'rub-spot'>;
export type CircuitId = Id<'circuit'>;
export type MapId = Id<'map'>;
export type JobId = Id<'job'>;
export type EntryId = Id<'entry'>;
export type MeterId = Id<'meter'>;

const alphabet = '23456789abcdefghjkmnpqrstuvwxyz';
const idLetters = 8;

/**
 * A new id of the given kind, from 31 letters that are not easily confused; 8 of them make about
 * 8.5e11 ids, so a map of 100,000 things meets a clash about once in 170 maps made from scratch, and
 * every add command refuses a clash rather than overwriting.
 * @example
 * newId('segment', () => 0) // => 'segment:22222222'
 */
export function newId<K extends IdKind>(kind: K, chance: Chance): Id<K> {
  let letters = '';
  for (let i = 0; i < idLetters; i++) letters += alphabet.charAt(Math.floor(chance() * alphabet.length));
  return `${kind}:${letters}`;
}

/**
 * The zod schema of one kind of id: the kind, a colon, then 1 to 64 letters, digits, dots or dashes.
 * @example
 * idSchema('panel').safeParse('panel:left-sill').success // => true
 */
export function idSchema<K extends IdKind>(kind: K): z.ZodType<Id<K>> {
  const pattern = new RegExp(`^${kind}:[A-Za-z0-9][A-Za-z0-9.-]{0,63}$`);
  return z.custom<Id<K>>((value) => typeof value === 'string' && pattern.test(value), {
    error: `an id such as "${kind}:left-sill"`,
  });
}

/**
 * The kind a readable id names.
 * @example
 * idKind('rub-spot:belt-flange') // => 'rub-spot'
 */
export function idKind(id: string): IdKind {
  return id.slice(0, id.indexOf(':')) as IdKind;
}
