import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import type { Decoder, Problem, Train } from "../../src/planner/problem.ts";
import { controlStretches } from "./control.ts";
import { journey, runsBackwards } from "./journey.ts";
import { needMs } from "./load-samples.ts";
import { createNeedSampler } from "./need.ts";
import { forRandomPlans, PATIENCE_MS } from "./plans.ts";

/** The plan with decoders, limits and return loops that often do not fit, made from what it holds. */
function withTrouble(problem: Problem): Problem {
  let state = problem.trains.reduce((sum, { lengthMm, path }) => sum * 31 + lengthMm + path.length, 7);
  const draw = (most: number) => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fff_ffff;
    return (state >> 8) % (most + 1);
  };
  const decoder = (): Decoder | null =>
    draw(3) === 0
      ? null
      : {
          addressKind: draw(1) === 0 ? "short" : "long",
          address: 127 + draw(2),
          analogAllowed: draw(1) === 0,
        };
  return {
    ...problem,
    locomotives: problem.locomotives.map((one) => ({
      ...one,
      decoder: decoder(),
      elsewhereSystems: draw(2) === 0 ? [draw(1)] : [],
    })),
    commandSystems: problem.commandSystems.map((one) => ({
      ...one,
      mostHandsets: draw(3),
      mostAddresses: draw(3),
      shortAddressMost: 126 + draw(1),
      longAddressMost: 128 + draw(2),
    })),
    sections: problem.sections.map((one) => ({ ...one, returnLoop: draw(3) === 0 })),
  };
}

/** The command systems of a train's digital stretches, and whether it has stretches of either kind. */
function drivenBy(problem: Problem, train: Train) {
  if (runsBackwards(train)) return { systems: new Set<number>(), kinds: new Set<string>() };
  const stretches = controlStretches(problem, journey(problem, train));
  const systems = new Set<number>();
  for (const { control, firstEntry, lastEntry } of stretches)
    for (const { section: at } of train.path.slice(firstEntry, lastEntry + 1)) {
      const section = problem.sections[at];
      if (control !== "digital" || section === undefined || section.control === "dead") continue;
      const supply = problem.supplies[problem.districts[section.district]?.supply ?? -1];
      if (supply) systems.add(supply.commandSystem);
    }
  return { systems, kinds: new Set(stretches.map(({ control }) => control as string)) };
}

const engines = (train: Train) => [...new Set(train.power.map(({ locomotive }) => locomotive))];

test("every decoder that does not suit the track or the system it runs on is found, and no other", {
  timeout: PATIENCE_MS,
}, () => {
  let found = 0;
  forRandomPlans("decoders", (plain) => {
    const problem = withTrouble(plain);
    const { findings } = check(problem, { mostFindings: 1_000_000 });
    const of = (code: string) => findings.filter((finding) => finding.code === code);
    const told = (code: string) =>
      of(code)
        .map(({ trains, locomotives, commandSystems, measured }) =>
          JSON.stringify([trains, locomotives, commandSystems, measured]),
        )
        .sort();
    const driven = problem.trains.map((train) => drivenBy(problem, train));
    const misfits = (hasDecoder: boolean) =>
      problem.trains.flatMap((train, at) =>
        engines(train)
          .filter((engine) => {
            const decoder = problem.locomotives[engine]?.decoder ?? null;
            return hasDecoder
              ? decoder !== null && !decoder.analogAllowed && driven[at]?.kinds.has("analog")
              : decoder === null && driven[at]?.kinds.has("digital");
          })
          .map((engine) => JSON.stringify([[at], [engine], [], null])),
      );
    expect(told("analog-only-on-digital")).toEqual(misfits(false).sort());
    expect(told("decoder-not-for-analog")).toEqual(misfits(true).sort());

    const refused: string[] = [];
    const twice: string[] = [];
    problem.commandSystems.forEach((system, s) => {
      const trainsOf = (engine: number) =>
        problem.trains.flatMap((train, at) =>
          engines(train).includes(engine) && driven[at]?.systems.has(s) ? [at] : [],
        );
      const here = problem.locomotives.map((_, engine) => trainsOf(engine));
      const addresses = new Set<string>();
      problem.locomotives.forEach(({ decoder }, engine) => {
        const trains = here[engine] ?? [];
        if (decoder === null || trains.length === 0) return;
        const most = decoder.addressKind === "short" ? system.shortAddressMost : system.longAddressMost;
        if (decoder.address > most) refused.push(JSON.stringify([trains, [engine], [s], decoder.address]));
        addresses.add(`${decoder.addressKind} ${decoder.address}`);
      });
      for (const address of addresses) {
        const sharing = problem.locomotives.flatMap(({ decoder, elsewhereSystems }, engine) =>
          decoder !== null &&
          `${decoder.addressKind} ${decoder.address}` === address &&
          ((here[engine] ?? []).length > 0 || elsewhereSystems.includes(s))
            ? [engine]
            : [],
        );
        if (sharing.length < 2) continue;
        const trains = [...new Set(sharing.flatMap((engine) => here[engine] ?? []))].sort((a, b) => a - b);
        twice.push(JSON.stringify([trains, sharing, [s], Number(address.split(" ")[1])]));
      }
    });
    expect(told("address-refused")).toEqual(refused.sort());
    expect(told("address-used-twice")).toEqual(twice.sort());
    found += refused.length + twice.length;
  });
  expect(found).toBeGreaterThan(50);
});

test("more handsets or addresses than a system drives are found where some millisecond asks for more", {
  timeout: PATIENCE_MS,
}, () => {
  let found = 0;
  forRandomPlans("most at once", (plain) => {
    const problem = withTrouble(plain);
    const { findings } = check(problem, { mostFindings: 1_000_000 });
    const instants = needMs(problem);
    const byMs = instants.map(createNeedSampler(problem));
    problem.commandSystems.forEach(({ mostHandsets, mostAddresses }, system) => {
      const expectMost = (code: string, most: number, namesOf: (train: number) => readonly string[]) => {
        const counts = byMs.map((all) => new Set((all[system] ?? []).flatMap(namesOf)).size);
        const peak = Math.max(0, ...counts);
        const told = findings
          .filter((finding) => finding.code === code && finding.commandSystems.includes(system))
          .map(({ measured, limit, atMs, overMs }) => ({ measured, limit, atMs, overMs }));
        const over = counts.filter((count) => count > most).length;
        const expected = { measured: peak, limit: most, atMs: instants[counts.indexOf(peak)], overMs: over };
        expect(told).toEqual(most > 0 && peak > most ? [expected] : []);
        found += told.length;
      };
      // a train has one handset of a system; an address is one, whoever answers to it in however many trains
      expectMost("handsets-too-many", mostHandsets, (train) => [`handset of ${train}`]);
      expectMost("addresses-too-many", mostAddresses, (train) =>
        engines(problem.trains[train] as Train).flatMap((engine) => {
          const decoder = problem.locomotives[engine]?.decoder;
          return decoder ? [`${decoder.addressKind} ${decoder.address}`] : [];
        }),
      );
    });
  });
  expect(found).toBeGreaterThan(20);
});

test("a train longer than a return loop on its path is found, section by section", {
  timeout: PATIENCE_MS,
}, () => {
  let found = 0;
  forRandomPlans("return loops", (plain) => {
    const problem = withTrouble(plain);
    const { findings } = check(problem, { mostFindings: 1_000_000 });
    const told = findings
      .filter(({ code }) => code === "return-loop-too-short")
      .map(({ trains, pathEntry, measured, limit }) => `${trains[0]} ${pathEntry} ${measured} ${limit}`);
    const expected = problem.trains.flatMap(({ path, lengthMm }, train) =>
      path.flatMap(({ section }, entry) => {
        const marked = (at: number) => problem.sections[path[at]?.section ?? -1]?.returnLoop === true;
        if (!marked(entry) || marked(entry - 1)) return [];
        let end = entry;
        while (marked(end)) end++;
        const loop = new Set(path.slice(entry, end).map((one) => one.section));
        const holds = [...loop].reduce((mm, at) => mm + (problem.sections[at]?.lengthMm ?? 0), 0);
        return section >= 0 && lengthMm > holds ? [`${train} ${entry} ${lengthMm} ${holds}`] : [];
      }),
    );
    expect(told.sort()).toEqual(expected.sort());
    found += told.length;
  });
  expect(found).toBeGreaterThan(50);
});
