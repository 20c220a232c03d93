/** A locomotive as one looks at it for the place of another. */
export interface StandIn {
  readonly code: string;
  /** Null: analog-only. */
  readonly decoder: {
    readonly kind: string;
    readonly address: number;
    readonly analogAllowed: boolean;
  } | null;
}

/** A train of the night that is not left out, with the locomotives it has tonight. Layout seconds, half-open. */
export interface Use {
  readonly train: string;
  readonly locomotives: readonly string[];
  readonly state: "waiting" | "running" | "arrived";
  readonly fromS: number;
  readonly toS: number;
  /** Command systems that drive it. */
  readonly systems: readonly string[];
}

/** What is still to be done by the train whose locomotive failed. */
export interface RestOfWorking {
  readonly train: string;
  /** Its locomotives tonight, the failed one included. */
  readonly locomotives: readonly string[];
  readonly toS: number;
  /** A section of each kind that it still runs over; null: none. */
  readonly analogSection: string | null;
  readonly digitalSection: string | null;
  readonly systems: readonly string[];
}

/** Why a locomotive can't stand in. */
export type Hindrance =
  | { readonly code: "failed-too" }
  | { readonly code: "in-this-train" }
  | { readonly code: "busy"; readonly train: string; readonly fromS: number; readonly toS: number }
  | { readonly code: "no-decoder"; readonly section: string }
  | { readonly code: "digital-only"; readonly section: string }
  | { readonly code: "address-taken"; readonly locomotive: string; readonly train: string };

export interface NightStock {
  readonly stock: readonly StandIn[];
  /** All trains of the slot, in any order; the one whose locomotive failed may be among them. */
  readonly uses: readonly Use[];
  readonly failed: ReadonlySet<string>;
}

/**
 * What hinders a locomotive from taking over the rest of a working; empty where nothing does. It must be whole, needed by
 * no other train before the working ends, and run where the working does: analog-only never on digital track, a decoder
 * on analog track only if it permits (design section 6), and on digital track no other locomotive of the slot may answer
 * to its address on the same command system (section 7). A failed locomotive is taken off the track, and its address
 * with it. Cost: linear in uses.
 */
export function findHindrances(standIn: StandIn, rest: RestOfWorking, night: NightStock): Hindrance[] {
  const found: Hindrance[] = [];
  if (night.failed.has(standIn.code)) found.push({ code: "failed-too" });
  if (rest.locomotives.includes(standIn.code)) found.push({ code: "in-this-train" });
  const others = night.uses.filter(({ train }) => train !== rest.train);
  const busy = others.find((use) => use.locomotives.includes(standIn.code) && isNeededBefore(use, rest.toS));
  if (busy) found.push({ code: "busy", train: busy.train, fromS: busy.fromS, toS: busy.toS });
  const { analogSection, digitalSection } = rest;
  if (digitalSection !== null && standIn.decoder === null)
    found.push({ code: "no-decoder", section: digitalSection });
  if (analogSection !== null && standIn.decoder?.analogAllowed === false)
    found.push({ code: "digital-only", section: analogSection });
  if (digitalSection !== null && standIn.decoder !== null) {
    const taken = findSameAddress(standIn, rest, night);
    if (taken) found.push({ code: "address-taken", ...taken });
  }
  return found;
}

const isNeededBefore = ({ state, fromS }: Use, endS: number) =>
  state === "running" || (state === "waiting" && fromS < endS);

function findSameAddress(
  { code, decoder }: StandIn,
  rest: RestOfWorking,
  { stock, uses, failed }: NightStock,
): { readonly locomotive: string; readonly train: string } | undefined {
  const same = new Set(
    stock
      .filter(
        (other) =>
          other.code !== code &&
          !failed.has(other.code) &&
          other.decoder?.kind === decoder?.kind &&
          other.decoder?.address === decoder?.address,
      )
      .map((other) => other.code),
  );
  if (same.size === 0) return undefined;
  for (const { train, locomotives, systems } of uses) {
    const locomotive = locomotives.find((one) => same.has(one));
    if (locomotive !== undefined && systems.some((system) => rest.systems.includes(system)))
      return { locomotive, train };
  }
  return undefined;
}

/** When the next train departs that needs it after the working has ended; null: none does. Layout seconds. */
export function findNextNeed(code: string, rest: RestOfWorking, uses: readonly Use[]): Use | null {
  const later = uses.filter(
    ({ train, locomotives, state, fromS }) =>
      train !== rest.train && state === "waiting" && fromS >= rest.toS && locomotives.includes(code),
  );
  return later.reduce<Use | null>(
    (first, use) => (first === null || use.fromS < first.fromS ? use : first),
    null,
  );
}
