import type { Flaw } from "./flaws.ts";
import type { Clash } from "./record-kind.ts";

/** Something that only one record may hold, and where the record says that it holds it. */
export interface Held extends Pick<Flaw, "path"> {
  readonly key: string;
}

/** Every record that holds what another one given holds too; `sentence` is told what, and who the other is. */
export function clashesByKey<Body>(
  bodies: readonly Body[],
  heldBy: (body: Body) => readonly Held[],
  sentence: (key: string, other: Body) => string,
): Clash[] {
  const holders = new Map<string, number[]>();
  const held = bodies.map(heldBy);
  held.forEach((things, record) => {
    for (const { key } of things) holders.set(key, [...(holders.get(key) ?? []), record]);
  });
  return held.flatMap((things, record) =>
    things.flatMap(({ key, path }) => {
      const other = bodies[holders.get(key)?.find((holder) => holder !== record) ?? -1];
      return other === undefined ? [] : [{ record, path, detail: sentence(key, other) }];
    }),
  );
}
