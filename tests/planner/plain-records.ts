/** What records say where a test does not care: nothing that makes a finding. Spread these first. */
export const PLAIN = {
  policy: {
    inrushMs: 0,
    faultMargin: 1,
    dropShare: 0.5,
    busyShare: 1,
    walkingDetour: 1.4,
    walkingMmPerSecond: 1_000,
  },
  section: { returnLoop: false },
  commandSystem: { mostHandsets: 0, mostAddresses: 0, shortAddressMost: 127, longAddressMost: 10_239 },
  supply: { volts: 16, sourceOhm: 0.1 },
  district: { tripDelayMs: 100, wiring: null, tested: "unsaid" },
  locomotive: { stallMa: 0, inrushMa: 0, elsewhereSystems: [], ranges: null },
  rake: { inrushMa: 0, range: null },
  train: { requires: [] },
  problem: { places: [], walks: [], handsets: [], crew: { members: [], turns: [], isSupervised: true } },
} as const;

/** A decoder with an address of its own for each `n` from 0, running on both kinds of track. */
export const plainDecoder = (n: number) =>
  ({ addressKind: "long", address: 128 + n, analogAllowed: true }) as const;
