import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { Candidate } from "../../../shared/night.ts";
import type { Finding } from "../../planner/findings.ts";
import { findLateness } from "../../planner/night/lateness.ts";
import {
  findHindrances,
  findNextNeed,
  type NightStock,
  type RestOfWorking,
  type Use,
} from "../../planner/night/stand-in.ts";
import { type StandInFinding, tryStandIns } from "../../planner/night/try-stand-ins.ts";
import type { Problem } from "../../planner/problem.ts";
import { layoutSecondsAt } from "./clock-board.ts";
import type { NightFacts } from "./facts.ts";
import type { RosterLocomotive, TimetableTrain } from "./store.ts";
import { failedTonight, findReport, placesOf, toWorking } from "./train-board.ts";
import { toFindingSentence, toHindranceSentence } from "./wording.ts";

/** A locomotive of a train that failed, and all there is to know about who could take its place. */
export interface Vacancy {
  readonly facts: NightFacts;
  readonly train: TimetableTrain;
  readonly locomotive: string;
  /** The train's slot as the planner takes it, by the timetable. */
  readonly problem: Problem;
  readonly roster: readonly RosterLocomotive[];
}

/** Every other locomotive of the club, with why it would not do; those that suit first, then those not needed again. */
export function listCandidates(vacancy: Vacancy): Candidate[] {
  const { facts, train, locomotive, roster } = vacancy;
  const tonight = toTonight(vacancy);
  const rest = toRest(vacancy, tonight);
  const uses = toUses(facts, train.slot, tonight);
  const failed = new Set([...failedTonight(facts), locomotive]);
  const night: NightStock = { stock: roster, uses, failed };
  const others = roster.filter(({ code }) => code !== locomotive);
  const hindrances = others.map((one) => findHindrances(one, rest, night));
  const tried = tryFree(
    vacancy,
    tonight,
    others.filter((_, i) => hindrances[i]?.length === 0),
  );
  return others
    .map(({ code, name, decoder }, i): Candidate => {
      const found = tried.get(code) ?? [];
      const say = (severity: Finding["severity"]) =>
        found.filter((one) => one.severity === severity).map((one) => toFindingSentence(one, tonight));
      const reasons = [...(hindrances[i] ?? []).map(toHindranceSentence), ...say("stops")];
      const next = findNextNeed(code, rest, uses);
      return {
        code,
        name,
        address: decoder ? { kind: decoder.kind, number: decoder.address } : null,
        suits: reasons.length === 0,
        reasons,
        warnings: [
          ...say("warns"),
          ...(next ? [`Train ${next.train} needs it from ${toLayoutTimeText(next.fromS)}.`] : []),
        ],
        neededFrom: next ? toLayoutTimeText(next.fromS) : null,
      };
    })
    .sort(
      (a, b) =>
        Number(b.suits) - Number(a.suits) ||
        Number(a.neededFrom !== null) - Number(b.neededFrom !== null) ||
        (a.code < b.code ? -1 : 1),
    );
}

/** The slot as it is run tonight: without the trains left out, with the locomotives that stand in. */
function toTonight({ facts, train, problem }: Vacancy): Problem {
  const index = new Map(problem.locomotives.map(({ code }, i) => [code, i]));
  const inSlot = new Map(
    facts.trains.filter(({ slot }) => slot === train.slot).map((one) => [one.code, one]),
  );
  return {
    ...problem,
    trains: problem.trains.flatMap((planned) => {
      const known = inSlot.get(planned.code);
      if (known === undefined || toWorking(facts, known).state === "left out") return [];
      const places = placesOf(facts, known);
      const power = planned.power.map((one, i) => ({
        ...one,
        locomotive: index.get(places[i]?.tonight ?? "") ?? one.locomotive,
      }));
      const lengthOf = (at: number) => problem.locomotives[at]?.lengthMm ?? 0;
      const longer = power.reduce(
        (sum, one, i) => sum + lengthOf(one.locomotive) - lengthOf(planned.power[i]?.locomotive ?? -1),
        0,
      );
      return [{ ...planned, power, lengthMm: planned.lengthMm + longer }];
    }),
  };
}

const plannedTrain = (tonight: Problem, code: string) => tonight.trains.findIndex((one) => one.code === code);

/** Where in its path the train is by the clock, less what it is late: the call it departed from last. */
function findEntry({ facts, train, problem }: Vacancy, tonight: Problem): number {
  if (findReport(facts, train)?.state !== "running") return 0;
  const slot = facts.slots.find(({ code }) => code === train.slot);
  const nowS = layoutSecondsAt(facts, train.slot, facts.now);
  const plannedS = nowS - findLateness(toWorking(facts, train), nowS).lateS;
  const ms =
    problem.slot.startMs + ((plannedS - (slot?.layoutStartS ?? 0)) * 1_000) / facts.session.clockRatio;
  const path = tonight.trains[plannedTrain(tonight, train.code)]?.path ?? [];
  return Math.max(
    0,
    path.findLastIndex(({ departMs }) => departMs !== null && departMs <= ms),
  );
}

function toRest(vacancy: Vacancy, tonight: Problem): RestOfWorking {
  const { facts, train } = vacancy;
  const path =
    tonight.trains[plannedTrain(tonight, train.code)]?.path.slice(findEntry(vacancy, tonight)) ?? [];
  const sections = path.map(({ section }) => section);
  const nowS = layoutSecondsAt(facts, train.slot, facts.now);
  const fed = (control: string) =>
    sections.map((i) => tonight.sections[i]).find((section) => section?.control === control)?.code ?? null;
  return {
    train: train.code,
    locomotives: placesOf(facts, train).map((place) => place.tonight),
    toS: findLateness(toWorking(facts, train), nowS).arriveS,
    analogSection: fed("analog"),
    digitalSection: fed("digital"),
    systems: systemsOf(tonight, sections),
  };
}

function toUses(facts: NightFacts, slot: string, tonight: Problem): Use[] {
  const nowS = layoutSecondsAt(facts, slot, facts.now);
  return facts.trains
    .filter((train) => train.slot === slot)
    .flatMap((train) => {
      const working = toWorking(facts, train);
      if (working.state === "left out") return [];
      const late = findLateness(working, nowS);
      const path = tonight.trains[plannedTrain(tonight, train.code)]?.path ?? [];
      return [
        {
          train: train.code,
          locomotives: placesOf(facts, train).map((place) => place.tonight),
          state: working.state,
          fromS: late.departS,
          toS: late.arriveS,
          systems: systemsOf(
            tonight,
            path.map(({ section }) => section),
          ),
        },
      ];
    });
}

function systemsOf(
  { sections, districts, supplies, commandSystems }: Problem,
  path: readonly number[],
): string[] {
  const found = path.flatMap((i) => {
    const section = sections[i];
    if (section?.control !== "digital" && section?.control !== "changeover") return [];
    const supply = supplies[districts[section.district]?.supply ?? -1];
    return commandSystems[supply?.commandSystem ?? -1]?.code ?? [];
  });
  return [...new Set(found)];
}

/** What the check finds with each of them in the train, by code. */
function tryFree(
  vacancy: Vacancy,
  tonight: Problem,
  free: readonly RosterLocomotive[],
): ReadonlyMap<string, readonly StandInFinding[]> {
  const index = new Map(tonight.locomotives.map(({ code }, i) => [code, i]));
  const found = tryStandIns(
    tonight,
    {
      train: plannedTrain(tonight, vacancy.train.code),
      locomotive: index.get(vacancy.locomotive) ?? -1,
      fromEntry: findEntry(vacancy, tonight),
    },
    free.map(({ code }) => index.get(code) ?? -1),
  );
  return new Map(free.map(({ code }, i) => [code, found[i] ?? []]));
}
