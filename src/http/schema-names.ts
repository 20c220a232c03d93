interface Described {
  readonly components?: { readonly schemas?: Schemas };
}

type Schemas = Readonly<Record<string, unknown>>;

const REFERENCE = /"#\/components\/schemas\/([^"]+)"/g;
const TAKEN = "Input";

/**
 * Each named schema comes out of the library twice, as it is sent (`Rake`) and as it is taken (`RakeInput`). Leaves out
 * what nothing refers to, and gives the second its plain name where the first is left out or says the same.
 */
export function tidySchemaNames<T extends object>(document: T): T {
  const { components, ...rest } = document as Described;
  const used = referredTo(rest, components?.schemas ?? {});
  const names = plainNames(used);
  const schemas = Object.entries(used).map(([name, schema]) => [
    names.get(name) ?? name,
    rename(schema, names),
  ]);
  return {
    ...(rename(rest, names) as T),
    components: { ...components, schemas: Object.fromEntries(schemas) },
  };
}

function referredTo(from: unknown, schemas: Schemas): Schemas {
  const seen = new Set<string>();
  const visit = (value: unknown): void => {
    for (const [, name = ""] of JSON.stringify(value ?? null).matchAll(REFERENCE)) {
      if (seen.has(name)) continue;
      seen.add(name);
      visit(schemas[name]);
    }
  };
  visit(from);
  return Object.fromEntries(Object.entries(schemas).filter(([name]) => seen.has(name)));
}

/** Names to replace. Two schemas may say the same only if those they refer to do, so pairs that differ are struck out till none does. */
function plainNames(schemas: Schemas): ReadonlyMap<string, string> {
  let names = new Map(
    Object.keys(schemas)
      .filter((name) => name.endsWith(TAKEN))
      .map((name) => [name, name.slice(0, -TAKEN.length)]),
  );
  for (let before = -1; before !== names.size; ) {
    before = names.size;
    const same = (a: unknown, b: unknown) =>
      JSON.stringify(rename(a, names)) === JSON.stringify(rename(b, names));
    names = new Map(
      [...names].filter(([name, plain]) => !(plain in schemas) || same(schemas[name], schemas[plain])),
    );
  }
  return names;
}

const rename = (value: unknown, names: ReadonlyMap<string, string>): unknown =>
  JSON.parse(
    JSON.stringify(value).replace(REFERENCE, (whole, name: string) => {
      const plain = names.get(name);
      return plain === undefined ? whole : `"#/components/schemas/${plain}"`;
    }),
  );
