import type { Handset } from "../../../shared/handsets.ts";
import type { Decoder, Locomotive } from "../../../shared/roster.ts";

const count = (n: number, noun: string) => `${n} ${noun}${n === 1 ? "" : "s"}`;

/** How many locomotives there are, how much of their figures is measured, and which share an address. */
export function sayRoster(locomotives: readonly Locomotive[], decoders: readonly Decoder[]): string {
  if (locomotives.length === 0) return "There are no locomotives yet.";
  const measured = locomotives.filter(({ running, standing }) =>
    [running, standing].every(({ source }) => source === "measured"),
  ).length;
  const parts = [
    count(locomotives.length, "locomotive"),
    `${measured === 0 ? "none" : measured} with measured running and standing currents`,
  ];
  const shared = sharedAddresses(decoders);
  const twice = shared.length === 0 ? "" : ` ${shared.join("; ")}.`;
  return `${parts.join(", ")}.${twice}`;
}

/** `4601 and 4602 share address 3`: a short and a long one of the same number are two. */
export function sharedAddresses(decoders: readonly Decoder[]): string[] {
  const byAddress = new Map<string, string[]>();
  for (const { addressKind, address, locomotive } of decoders) {
    if (locomotive === null) continue;
    const key = `${addressKind} ${address}`;
    byAddress.set(key, [...(byAddress.get(key) ?? []), locomotive]);
  }
  return [...byAddress]
    .filter(([, engines]) => engines.length > 1)
    .map(
      ([key, engines]) =>
        `${engines.slice(0, -1).join(", ")} and ${engines.at(-1)} share address ${key.split(" ")[1]}`,
    );
}

/** How many handsets can go out. */
export function sayHandsets(handsets: readonly Handset[]): string {
  if (handsets.length === 0) return "There are no handsets yet.";
  const ready = handsets.filter(({ state }) => state === "ready").length;
  const others = handsets
    .filter(({ state }) => state !== "ready")
    .map(({ code, state }) => `${code} is ${state}`);
  return `${ready} of ${count(handsets.length, "handset")} ${ready === 1 ? "is" : "are"} ready${others.length > 0 ? `; ${others.join(", ")}` : ""}.`;
}
