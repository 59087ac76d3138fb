/** The drawing actions in the order of the rail: as a new map is drawn. */
export const toolNames = [
  'select',
  'underlay',
  'outline',
  'scale',
  'route',
  'beside',
  'node',
  'clip',
  'rub-spot',
  'panel',
  'paint',
  'trace',
] as const;
export type ToolName = (typeof toolNames)[number];

/** The key that takes up each drawing action. */
export const toolKeys: Readonly<Record<ToolName, string>> = {
  select: '1',
  outline: '2',
  scale: '3',
  route: '4',
  node: '5',
  clip: '6',
  'rub-spot': '7',
  panel: '8',
  trace: '9',
  underlay: 'U',
  beside: 'B',
  paint: 'P',
};
