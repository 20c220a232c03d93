import type { Plan } from "../compile-plan.ts";
import type { Decoder, Train } from "../problem.ts";

/** A locomotive whose decoder a command system has to reach in this slot, and the trains in which it does. */
export interface DecoderInUse {
  readonly locomotive: number;
  readonly decoder: Decoder;
  /** By index. */
  readonly trains: readonly number[];
}

/** Systems that drive each train somewhere on its path, ascending; by train. Cost: linear in path entries. */
export function systemsOfTrains({ motions, parts, track }: Plan): number[][] {
  return Array.from(motions.timed, (_, train) => {
    const systems = new Set<number>();
    const row = motions.firstRow[train] as number;
    const end = parts.firstPart[train + 1] as number;
    for (let part = parts.firstPart[train] as number; part < end; part++) {
      if (parts.analog[part] === 1) continue;
      const last = row + (parts.lastEntry[part] as number);
      for (let at = row + (parts.firstEntry[part] as number); at <= last; at++)
        systems.add(track.commandSystem[motions.section[at] as number] as number);
    }
    systems.delete(-1);
    return [...systems].sort((a, b) => a - b);
  });
}

/** Decoders that each command system has to reach, by system, then locomotive. Cost: linear in motive power. */
export function decodersInUse({ problem }: Plan, systemsOf: readonly number[][]): DecoderInUse[][] {
  const trains = problem.commandSystems.map(() => new Map<number, number[]>());
  problem.trains.forEach(({ power }: Train, train) => {
    for (const system of systemsOf[train] as number[])
      for (const locomotive of new Set(power.map((one) => one.locomotive))) {
        const before = trains[system]?.get(locomotive);
        if (before) before.push(train);
        else trains[system]?.set(locomotive, [train]);
      }
  });
  return trains.map((byLocomotive) =>
    [...byLocomotive]
      .sort(([a], [b]) => a - b)
      .flatMap(([locomotive, of]) => {
        const decoder = problem.locomotives[locomotive]?.decoder;
        return decoder ? [{ locomotive, decoder, trains: of }] : [];
      }),
  );
}
