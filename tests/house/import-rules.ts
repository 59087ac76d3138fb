import { packagesIn, roomOf, type SourceFile } from './source-files.ts';

/** For each room, the rooms it may import from besides itself. What is not listed is refused. */
export const allowedImports: Readonly<Record<string, readonly string[]>> = {
  'core/quantity': [],
  'core/geometry': ['core/quantity'],
  'core/wire': ['core/quantity', 'core/geometry', 'core/map'],
  'core/map': ['core/quantity', 'core/geometry'],
  'core/circuit': ['core/quantity', 'core/geometry', 'core/wire', 'core/map'],
  'core/chafe': ['core/quantity', 'core/geometry', 'core/wire', 'core/map', 'core/circuit'],
  'core/history': ['core/quantity', 'core/geometry', 'core/map', 'core/circuit', 'core/chafe'],
  'core/locate': ['core/quantity', 'core/geometry', 'core/wire', 'core/map', 'core/circuit', 'core/chafe'],
  'core/dig': ['core/quantity', 'core/map', 'core/circuit', 'core/chafe', 'core/locate'],
  'core/job': [
    'core/quantity',
    'core/geometry',
    'core/wire',
    'core/map',
    'core/circuit',
    'core/chafe',
    'core/history',
    'core/locate',
    'core/dig',
  ],
  db: ['core'],
  'electron/contract': ['core'],
  renderer: ['core', 'electron/contract'],
  electron: ['core', 'db', 'electron/contract', 'renderer/language'],
};

/** Packages a room may use; rooms not listed may use any the project has. */
const allowedPackages: Readonly<Record<string, readonly string[]>> = {
  core: ['zod'],
  'electron/contract': ['zod'],
};

/** Every import that breaks the one-way rule, in words that say what is allowed. */
export function forbiddenImports(files: readonly SourceFile[]): readonly string[] {
  const complaints: string[] = [];
  for (const file of files) {
    const room = roomOf(file.path);
    const allowed = allowedImports[room];
    if (!allowed) continue;
    for (const target of file.imports) {
      const targetRoom = roomOf(target);
      const fits =
        targetRoom === room ||
        allowed.some(
          (place) =>
            targetRoom === place || targetRoom.startsWith(`${place}/`) || target.startsWith(`${place}/`),
        );
      if (!fits)
        complaints.push(
          `${file.path} imports ${target}; ${room} may import only: ${allowed.join(', ') || 'itself'}`,
        );
    }
    const packages = allowedPackages[room.startsWith('core/') ? 'core' : room];
    if (!packages) continue;
    for (const name of packagesIn(file)) {
      if (!packages.includes(name))
        complaints.push(
          `${file.path} imports the package ${name}; ${room} may use only: ${packages.join(', ')}`,
        );
    }
  }
  return complaints;
}

/** The first ring of files that import each other, or null. Depth-first search with colours. */
export function importCycle(files: readonly SourceFile[]): readonly string[] | null {
  const byPath = new Map(files.map((file) => [file.path, file]));
  const done = new Set<string>();
  const onTrail = new Set<string>();
  const trail: string[] = [];
  const visit = (path: string): readonly string[] | null => {
    if (onTrail.has(path)) return [...trail.slice(trail.indexOf(path)), path];
    const file = byPath.get(path);
    if (done.has(path) || !file) return null;
    onTrail.add(path);
    trail.push(path);
    for (const target of file.imports) {
      const ring = visit(target);
      if (ring) return ring;
    }
    onTrail.delete(path);
    trail.pop();
    done.add(path);
    return null;
  };
  for (const { path } of files) {
    const ring = visit(path);
    if (ring) return ring;
  }
  return null;
}
