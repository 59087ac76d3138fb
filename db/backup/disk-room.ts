import { statfsSync } from 'node:fs';
import type { Connection } from '../connection.ts';

/** Left free on a disk for the day's work. */
const spareBytes = 50_000_000;

/** What a store takes on the disk. */
export interface StoreSize {
  readonly bytes: number;
  /** Of these, what holds nothing any more and would be given back. */
  readonly emptyBytes: number;
}

/** What an open store takes on the disk. */
export function storeSize(connection: Connection): StoreSize {
  const figure = (name: string): number => connection.pragma(name, { simple: true }) as number;
  const pageBytes = figure('page_size');
  return { bytes: figure('page_count') * pageBytes, emptyBytes: figure('freelist_count') * pageBytes };
}

/** Whether the disk that holds a folder has room for so much and some to spare. */
export function hasRoom(folder: string, bytes: number): boolean {
  const { bavail, bsize } = statfsSync(folder);
  return bavail * bsize > bytes + spareBytes;
}
