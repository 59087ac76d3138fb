/** Whether a key or a paste is meant for the field it happened in. */
export const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.matches('input:not([type=checkbox]):not([type=radio]), textarea, select');
