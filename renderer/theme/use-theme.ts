import { useEffect, useSyncExternalStore } from 'react';
import { useMachineSettings } from '../session/machine-settings.ts';
import { applyTheme } from './apply-theme.ts';
import type { Theme } from './tokens.ts';

const prefersDark = (): MediaQueryList => window.matchMedia('(prefers-color-scheme: dark)');

const onChange = (tell: () => void): (() => void) => {
  const query = prefersDark();
  query.addEventListener('change', tell);
  return () => query.removeEventListener('change', tell);
};

/** The theme in force: the one chosen on this machine, else what the system prefers. */
export function useTheme(): Theme {
  const chosen = useMachineSettings((settings) => settings.theme);
  const dark = useSyncExternalStore(onChange, () => prefersDark().matches);
  const theme: Theme = chosen === 'system' ? (dark ? 'night' : 'day') : chosen;
  useEffect(() => applyTheme(theme), [theme]);
  return theme;
}
