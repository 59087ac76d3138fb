/** Words of the diagram of what must be off before what. */
export const orderWords = {
  title: 'Order of coming off',
  picture: 'Order of coming off: upper panels first, an arrow leads to the panel that waits',
  all: 'Show the order of all panels',
  allTitle: 'Order of all panels',
  close: 'Close',
  loose: 'In no order yet',
  hint: 'Drag from the panel that comes off first to the one that waits. Or press the one, then the other. Press an arrow to take it out.',
  alone: 'Nothing has to be off before it, and nothing waits for it.',
  picked: (first: string): string => `${first} comes off before … Press the panel that waits for it.`,
  drop: 'Drop it',
  takeOut: (first: string, waits: string): string => `Take out: ${first} comes off before ${waits}`,
  goTo: (name: string): string => `Go to ${name}`,
  panel: (name: string, firsts: readonly string[]): string =>
    firsts.length === 0 ? name : `${name}, after ${firsts.join(' and ')}`,
  steps: (panels: number, arrows: number): string =>
    `${panels === 1 ? '1 panel' : `${panels} panels`}, ${arrows === 1 ? '1 arrow' : `${arrows} arrows`}`,
  self: 'A panel cannot wait for itself.',
  /** Names the ring an arrow would close, each panel waiting for the one before it. */
  ring: (first: string, waits: string, ring: readonly string[]): string => {
    const [start = first] = ring;
    return `${first} cannot come off before ${waits}: each would wait for the other in the ring ${[...ring, start].join(', then ')}. Take one of these arrows out first.`;
  },
} as const;
