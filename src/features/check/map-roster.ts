import type { RosterDocument } from "../../../shared/documents.ts";
import type { Reading } from "../../../shared/readings.ts";
import { currentsRead } from "../../planner/measured/currents-read.ts";
import { type Estimate, estimateCurrent } from "../../planner/measured/estimate.ts";
import type { CurrentRange, Decoder, Locomotive, Rake } from "../../planner/problem.ts";
import { type CodeIndex, indexCodes, type PlanFault, resolve } from "./references.ts";

interface RosterParts {
  readonly indexes: { readonly locomotives: CodeIndex; readonly rakes: CodeIndex };
  readonly locomotives: readonly Locomotive[];
  readonly rakes: readonly Rake[];
}

/** The roster as the planner takes it: what meters showed of a locomotive counts more than its own figures. */
export function toRosterParts(
  roster: RosterDocument,
  readings: readonly Reading[],
  elsewhere: ReadonlyMap<string, readonly number[]>,
  faults: PlanFault[],
): RosterParts {
  const indexes = {
    locomotives: indexCodes("locomotive", "/roster/locomotives", roster.locomotives, faults),
    rakes: indexCodes("rake", "/roster/rakes", roster.rakes, faults),
  };
  const decoders = toDecoders(roster, indexes.locomotives, faults);
  for (const [i, { locomotive }] of readings.entries())
    if (locomotive !== null) resolve(indexes.locomotives, locomotive, `/readings/${i}/locomotive`, faults);
  const read = currentsRead(readings);
  return {
    indexes,
    locomotives: roster.locomotives.map((l) => {
      const running = estimateCurrent(l.running, read(l.code, "running"));
      const standing = estimateCurrent(l.standing, read(l.code, "standing"));
      return {
        code: l.code,
        lengthMm: l.lengthMm,
        runningMa: running.ma,
        standingMa: standing.ma,
        stallMa: estimateCurrent(l.stall, read(l.code, "stalled")).ma,
        inrushMa: estimateCurrent(l.inrush, read(l.code, "inrush")).ma,
        decoder: decoders.get(l.code) ?? null,
        elsewhereSystems: elsewhere.get(l.code) ?? [],
        maxSpeedKmh: l.maxSpeedKmh ?? 0,
        ranges: { running: toRange(running), standing: toRange(standing) },
      };
    }),
    rakes: roster.rakes.map((r) => ({
      code: r.code,
      lightingMa: r.lighting.ma,
      inrushMa: r.inrush.ma,
      range: toRange(estimateCurrent(r.lighting, [])),
    })),
  };
}

/** By locomotive; those in a drawer in none. */
function toDecoders(
  { decoders }: RosterDocument,
  locomotives: CodeIndex,
  faults: PlanFault[],
): ReadonlyMap<string, Decoder> {
  indexCodes("decoder", "/roster/decoders", decoders, faults);
  const byLocomotive = new Map<string, Decoder>();
  for (const [i, { code, locomotive, addressKind, address, analogAllowed }] of decoders.entries()) {
    if (locomotive === null) continue;
    const pointer = `/roster/decoders/${i}/locomotive`;
    resolve(locomotives, locomotive, pointer, faults);
    if (byLocomotive.has(locomotive))
      faults.push({
        pointer,
        detail: `Locomotive ${locomotive} has a decoder already: take ${code} out, or the other one.`,
      });
    byLocomotive.set(locomotive, { addressKind, address, analogAllowed });
  }
  return byLocomotive;
}

const toRange = ({ lowMa, highMa, measured }: Estimate): CurrentRange => ({ lowMa, highMa, measured });
