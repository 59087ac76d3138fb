import { createStore } from 'zustand/vanilla';

/**
 * The text of what was copied last in this window. The machine's own clipboard gets it too; this one is there
 * where a button pastes, which a browser does not let read the other.
 */
export const mapClipboard = createStore<{ readonly text: string | null }>(() => ({ text: null }));
