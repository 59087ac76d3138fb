/**
 * A table with changes laid over another that stays as it is: making one costs nothing, whatever the
 * size of the table below, which matters while something is dragged on a large map. Replaced records keep
 * their place, added ones come last.
 */
export class LayeredTable<K, V> implements ReadonlyMap<K, V> {
  private readonly below: ReadonlyMap<K, V>;
  private readonly over = new Map<K, V>();
  private readonly gone = new Set<K>();
  private addedCount = 0;

  constructor(below: ReadonlyMap<K, V>) {
    this.below = below;
  }

  get size(): number {
    return this.below.size - this.gone.size + this.addedCount;
  }

  get(key: K): V | undefined {
    const over = this.over.get(key);
    if (over !== undefined) return over;
    return this.gone.has(key) ? undefined : this.below.get(key);
  }

  has(key: K): boolean {
    return this.over.has(key) || this.isBelow(key);
  }

  set(key: K, value: V): void {
    if (!this.has(key)) this.addedCount++;
    this.over.set(key, value);
  }

  delete(key: K): boolean {
    if (!this.has(key)) return false;
    this.over.delete(key);
    if (this.isBelow(key)) this.gone.add(key);
    else this.addedCount--;
    return true;
  }

  *entries(): MapIterator<[K, V]> {
    for (const [key, value] of this.below) {
      if (!this.gone.has(key)) yield [key, this.over.get(key) ?? value];
    }
    for (const [key, value] of this.over) if (!this.isBelow(key)) yield [key, value];
  }

  *keys(): MapIterator<K> {
    for (const [key] of this.entries()) yield key;
  }

  *values(): MapIterator<V> {
    for (const [, value] of this.entries()) yield value;
  }

  [Symbol.iterator](): MapIterator<[K, V]> {
    return this.entries();
  }

  forEach(visit: (value: V, key: K, table: ReadonlyMap<K, V>) => void): void {
    for (const [key, value] of this.entries()) visit(value, key, this);
  }

  /** Whether the record's place is in the table below; one taken out and put back comes last instead. */
  private isBelow(key: K): boolean {
    return this.below.has(key) && !this.gone.has(key);
  }
}
