import { randomBytes } from 'node:crypto';

/** Chance from the operating system's secure source, for ids that must not meet on two machines. */
export function machineChance(): number {
  return randomBytes(6).readUIntBE(0, 6) / 2 ** 48;
}
