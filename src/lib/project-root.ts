import { existsSync } from "node:fs";
import path from "node:path";

/** The folder of the nearest package.json at or above `from`: the same from the sources and from the built tree. */
export function projectRoot(from: string): string {
  for (let folder = path.resolve(from); ; folder = path.dirname(folder)) {
    if (existsSync(path.join(folder, "package.json"))) return folder;
    if (folder === path.dirname(folder)) throw new Error(`no package.json at or above ${from}`);
  }
}
