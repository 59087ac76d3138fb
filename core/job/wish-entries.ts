import { z } from 'zod';
import { idSchema } from '../quantity/id.ts';

const head = { id: idSchema('entry'), at: z.iso.datetime({ offset: true }) };

/** What may be wished of one panel: it stays on today, comes off for other work, or as the plan has it. */
export const panelWishes = ['stays-on', 'out-anyway', 'as-planned'] as const;
export type PanelWish = (typeof panelWishes)[number];

/** A later wish for the same panel takes the place of an earlier one. */
export const panelWishEntrySchema = z.strictObject({
  ...head,
  type: z.literal('panel-wish'),
  panelId: idSchema('panel'),
  wish: z.enum(panelWishes),
});

/** Two panels over the same places, of which either coming off is enough; or not, after all. */
export const eitherPanelEntrySchema = z.strictObject({
  ...head,
  type: z.literal('either-panel'),
  panelIds: z.tuple([idSchema('panel'), idSchema('panel')]),
  either: z.boolean(),
});

/** Minutes there are for looking; null lifts the limit. */
export const timeBoxEntrySchema = z.strictObject({
  ...head,
  type: z.literal('time-box'),
  minutes: z.number().min(1).max(1_440).nullable(),
});

/** Whether this job's order may learn from past jobs. */
export const pastJobsEntrySchema = z.strictObject({
  ...head,
  type: z.literal('past-jobs'),
  use: z.boolean(),
});

/** What the user wishes of the plan. In the record, so that each wish can be undone and is still there tomorrow. */
export const wishEntrySchemas = [
  panelWishEntrySchema,
  eitherPanelEntrySchema,
  timeBoxEntrySchema,
  pastJobsEntrySchema,
] as const;
