/** The drawing actions by name, in the order of the rail: as a new map is drawn. */
export const toolNames = [
  'select',
  'outline',
  'scale',
  'route',
  'node',
  'clip',
  'rub-spot',
  'panel',
  'trace',
] as const;
export type ToolName = (typeof toolNames)[number];
