import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import type { Needs } from "../handsets/handset-need.ts";
import { firstDeparture, lastArrival } from "../motion/motions.ts";
import type { CommandSystem, Decoder, Interval, Locomotive } from "../problem.ts";
import { type DecoderInUse, decodersInUse, systemsOfTrains } from "./decoders-in-use.ts";
import { findCrowded } from "./most-at-once.ts";

/**
 * Addresses that a command system does not take, that two decoders of the session share, and more addresses or handsets at
 * once than it drives: design section 7. Short 3 and long 3 are two addresses (NMRA S-9.2.1), and so are equal ones of two
 * command systems. Cost: linear in path entries and motive power, sorting aside.
 */
export function addressFindings(plan: Plan, needs: Needs): Finding[] {
  const { problem } = plan;
  const inUse = decodersInUse(plan, systemsOfTrains(plan));
  return problem.commandSystems.flatMap((system, index) => {
    const here = inUse[index] as DecoderInUse[];
    return [
      ...refused(plan, system, index, here),
      ...usedTwice(plan, index, here),
      ...findCrowded(problem, needs, index),
    ];
  });
}

function refused(plan: Plan, system: CommandSystem, index: number, here: readonly DecoderInUse[]): Finding[] {
  return here.flatMap(({ locomotive, decoder, trains }) => {
    const most = decoder.addressKind === "short" ? system.shortAddressMost : system.longAddressMost;
    if (decoder.address <= most) return [];
    return [
      createFinding({
        code: "address-refused",
        severity: "stops",
        span: whileRunning(plan, trains),
        trains,
        commandSystems: [index],
        locomotives: [locomotive],
        measured: decoder.address,
        limit: most,
        unit: "address",
      }),
    ];
  });
}

/** One finding an address; of locomotives that run in another slot of the session only those are told that meet one here. */
function usedTwice(plan: Plan, index: number, here: readonly DecoderInUse[]): Finding[] {
  const { locomotives } = plan.problem;
  const byAddress = new Map<string, { locomotives: number[]; trains: number[]; address: number }>();
  const used = new Set(here.map(({ locomotive }) => locomotive));
  for (const { locomotive, decoder, trains } of here) {
    const key = keyOf(decoder);
    const others = byAddress.get(key) ?? { locomotives: [], trains: [], address: decoder.address };
    others.locomotives.push(locomotive);
    others.trains.push(...trains);
    byAddress.set(key, others);
  }
  locomotives.forEach(({ decoder, elsewhereSystems }: Locomotive, locomotive) => {
    if (decoder === null || used.has(locomotive) || !elsewhereSystems.includes(index)) return;
    byAddress.get(keyOf(decoder))?.locomotives.push(locomotive);
  });
  return [...byAddress.values()]
    .filter((one) => one.locomotives.length > 1)
    .map((one) => {
      const trains = [...new Set(one.trains)].sort((a, b) => a - b);
      return createFinding({
        code: "address-used-twice",
        severity: "stops",
        span: whileRunning(plan, trains),
        trains,
        commandSystems: [index],
        locomotives: one.locomotives.sort((a, b) => a - b),
        measured: one.address,
        unit: "address",
      });
    });
}

const keyOf = ({ addressKind, address }: Decoder) => `${addressKind} ${address}`;

/** From the first departure of the trains to their last arrival. Those with parts are timed. */
function whileRunning({ motions }: Plan, trains: readonly number[]): Interval {
  return {
    startMs: Math.min(...trains.map((train) => firstDeparture(motions, train))),
    endMs: Math.max(...trains.map((train) => lastArrival(motions, train))),
  };
}
