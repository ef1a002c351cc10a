// Reads a plant folder from disk as texts; what they say is judged by `src/plant`.

import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { limits } from '../limits.ts';
import type { PlantText } from '../plant/types.ts';

export class NoSuchFolder extends Error {}

/** All YAML files of a folder and of the folders in it, by their path inside it. */
export function readFolder(folder: string): PlantText {
  const names: string[] = [];
  try {
    if (!statSync(folder).isDirectory()) throw new NoSuchFolder(`${folder} is not a folder`);
    for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
      const path = join(entry.parentPath, entry.name);
      if (entry.isFile() && /\.ya?ml$/i.test(entry.name)) names.push(path);
    }
  } catch (error) {
    if (error instanceof NoSuchFolder) throw error;
    throw new NoSuchFolder(
      `${folder} cannot be read: ${error instanceof Error ? error.message : ''}`,
    );
  }
  if (names.length === 0) throw new NoSuchFolder(`${folder} holds no YAML file`);
  return names
    .sort()
    .slice(0, limits.plant.files + 1)
    .map((path) => ({
      file: relative(folder, path).split(sep).join('/'),
      text: readFileSync(path, 'utf8'),
    }));
}
