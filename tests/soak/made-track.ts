import type { z } from "zod";
import type { layoutDocument, rosterDocument } from "../../shared/documents.ts";
import type { section } from "../../shared/layout.ts";

const PLACES = 6;

/** Part `a` lies at one end of a lane, `l` between, `b` at the other. */
export const roadCode = (lane: number, part: string) => `${part}${lane + 1}`;

interface Track {
  readonly layout: z.input<typeof layoutDocument>;
  readonly roster: z.input<typeof rosterDocument>;
}

/** Lanes that never meet, between six places in a row, each lane with a locomotive; all digital, with power to spare. */
export function track(lanes: number): Track {
  const all = Array.from({ length: lanes }, (_, lane) => lane);
  return {
    layout: {
      areas: [{ code: "all", name: "All of it" }],
      places: Array.from({ length: PLACES }, (_, at) => ({ code: `P${at + 1}`, name: `Place ${at + 1}` })),
      commandSystems: [{ code: "club", name: "The club's", mostHandsets: 100, mostAddresses: 100 }],
      supplies: [{ code: "B", name: "Booster", commandSystem: "club", ratingMa: 100_000 }],
      districts: [{ code: "D", name: "District", supply: "B", breakerMa: 90_000 }],
      shortTests: [{ code: "D", district: "D", testedOn: "2027-01-09", result: "passed" }],
      sections: all.flatMap((lane) => [
        road(lane, "a", placeOf(lane, 0)),
        road(lane, "l", null),
        road(lane, "b", placeOf(lane, 1)),
      ]),
      links: all.flatMap((lane) => [link(lane, "a", "l"), link(lane, "l", "b")]),
    },
    roster: {
      locomotives: all.map((lane) => ({
        code: `E${lane + 1}`,
        name: `Engine ${lane + 1}`,
        lengthMm: 250,
        running: { ma: 300, source: "measured" },
        standing: { ma: 50, source: "measured" },
        stall: { ma: 900, source: "measured" },
        inrush: { ma: 500, source: "measured" },
      })),
      decoders: all.map((lane) => ({
        code: `X${lane + 1}`,
        locomotive: `E${lane + 1}`,
        addressKind: "long",
        address: 1_001 + lane,
      })),
    },
  };
}

/** Lanes of one start lie between different pairs, so that some need a walk and others none. */
const placeOf = (lane: number, end: 0 | 1) =>
  `P${((lane + (end === 0 ? 0 : 1 + (Math.floor(lane / PLACES) % (PLACES - 1)))) % PLACES) + 1}`;

function road(lane: number, part: string, place: string | null): z.input<typeof section> {
  return {
    code: roadCode(lane, part),
    name: `Lane ${lane + 1} ${part}`,
    area: "all",
    place,
    use: place === null ? "line" : "staging road",
    lengthMm: place === null ? 20_000 : 2_400,
    wiring: "digital",
    district: "D",
  };
}

const link = (lane: number, from: string, to: string) => ({
  code: `${from}-${to}.${lane + 1}`,
  from: roadCode(lane, from),
  to: roadCode(lane, to),
});
