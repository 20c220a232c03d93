import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";

/** One source file: where it is (from the root, with slashes), what it holds, and what it imports. */
export interface Module {
  readonly file: string;
  readonly text: string;
  /** Files of this project, from the root; and packages, as they are written. Type imports count like any other. */
  readonly files: readonly string[];
  readonly packages: readonly string[];
}

const SOURCE = /\.tsx?$/;
// made by a tool from prisma/schema.prisma; it belongs to src/database, and is in circles with itself
const GENERATED = "src/database/generated/";

// `import … from "x"`, `export … from "x"`, `import "x"`: at the start of a line, as the formatter leaves them
const STATEMENT = /^(?:import|export)\b(?:[^"'`;]*?\bfrom)?\s*["']([^"']+)["']/gm;
// `import("x")`, of values and in types
const EXPRESSION = /\bimport\(\s*["']([^"']+)["']/g;

/** Every module below the folders of `root`. */
export function readModules(root: string, folders: readonly string[]): readonly Module[] {
  return folders
    .flatMap((folder) =>
      readdirSync(path.join(root, folder), { recursive: true, encoding: "utf8" }).map(
        (file) => `${folder}/${file}`,
      ),
    )
    .filter((file) => SOURCE.test(file) && !file.startsWith(GENERATED))
    .sort()
    .map((file) => parseModule(file, readFileSync(path.join(root, file), "utf8")));
}

/** What `text`, the content of `file`, imports. */
export function parseModule(file: string, text: string): Module {
  const code = withoutComments(text);
  const named = [STATEMENT, EXPRESSION].flatMap((form) =>
    [...code.matchAll(form)].map(([, name = ""]) => name),
  );
  const files = named.filter((name) => name.startsWith("."));
  return {
    file,
    text,
    files: files.map((name) => path.posix.join(path.posix.dirname(file), name)),
    packages: named.filter((name) => !name.startsWith(".")),
  };
}

/** Without comments, which may name anything. Not a parser: `//` inside a string is cut as well, which hides no import. */
export const withoutComments = (text: string): string =>
  text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/(^|\s)\/\/.*$/gm, "$1");
