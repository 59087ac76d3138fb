import { useEffect } from 'react';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { hostClient } from './host.ts';

/** What a workshop sets once: its head on reports, its rate, its paper. */
export interface ShopSettings {
  readonly name: string;
  readonly address: string;
  /** SHA-256 of a kept picture; null without. */
  readonly logoSha256: string | null;
  /** As it stands beside an amount. */
  readonly currency: string;
  readonly hourlyRate: number | null;
  readonly paper: 'a4' | 'letter';
}

export const firstShop: ShopSettings = {
  name: '',
  address: '',
  logoSha256: null,
  currency: '',
  hourlyRate: null,
  paper: 'a4',
};

const shopKey = 'shop.settings';

/** Settings from kept text. What is not understood falls back to the first setting, line by line. */
export function readShop(text: string | null): ShopSettings {
  let kept: Partial<Record<keyof ShopSettings, unknown>>;
  try {
    const read: unknown = text === null ? null : JSON.parse(text);
    kept = typeof read === 'object' && read !== null ? read : {};
  } catch {
    return firstShop;
  }
  const { name, address, logoSha256, currency, hourlyRate, paper } = kept;
  return {
    name: typeof name === 'string' ? name : firstShop.name,
    address: typeof address === 'string' ? address : firstShop.address,
    logoSha256: typeof logoSha256 === 'string' && /^[0-9a-f]{64}$/.test(logoSha256) ? logoSha256 : null,
    currency: typeof currency === 'string' ? currency : firstShop.currency,
    hourlyRate: typeof hourlyRate === 'number' && hourlyRate > 0 ? hourlyRate : null,
    paper: paper === 'letter' ? 'letter' : 'a4',
  };
}

const shop = createStore<ShopSettings>(() => firstShop);
let asked = false;

/** The workshop's settings, read when first needed. */
export function useShop(): ShopSettings {
  useEffect(() => {
    if (asked) return;
    asked = true;
    void hostClient()('place.read', { key: shopKey }).then((kept) => {
      if (kept.ok) shop.setState(readShop(kept.value.text));
      else asked = false;
    });
  }, []);
  return useStore(shop);
}

/** Changes a setting here and now, and keeps it. */
export function changeShop(change: Partial<ShopSettings>): void {
  shop.setState(change);
  void hostClient()('place.keep', { key: shopKey, text: JSON.stringify(shop.getState()) });
}

/** An amount with the shop's currency before it. */
export function sayAmount(amount: number, currency: string): string {
  return [currency, amount.toFixed(2)].filter((part) => part !== '').join(' ');
}
