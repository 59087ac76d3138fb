import { boardColours, controlColours, type Theme } from './tokens.ts';

const kebab = (name: string): string => name.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** Every colour as a CSS custom property, so that sheets and canvas share one table. */
export function themeProperties(theme: Theme): ReadonlyMap<string, string> {
  const properties = new Map<string, string>();
  const { accent, ...board } = boardColours[theme];
  for (const [name, colour] of Object.entries({ ...board, ...controlColours[theme] })) {
    properties.set(`--${kebab(name)}`, colour);
  }
  for (const [step, colour] of accent.entries()) properties.set(`--accent-${step + 1}`, colour);
  return properties;
}

/** Puts a theme on the page. */
export function applyTheme(theme: Theme, root: HTMLElement = document.documentElement): void {
  root.dataset.theme = theme;
  root.style.colorScheme = theme === 'night' ? 'dark' : 'light';
  for (const [property, colour] of themeProperties(theme)) root.style.setProperty(property, colour);
}
