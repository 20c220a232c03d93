import type { Candidate, Candidates, NewReplacement, NightTrain } from "../../../shared/night.ts";
import type { Database } from "../../database/client.ts";
import { readPlanParts } from "../../database/records/read-plan.ts";
import { toLocalText } from "../../lib/local-time.ts";
import { Refusal } from "../../lib/refusal.ts";
import { type Asked, changeNight, DEEDS, type NightInHand, reachNight } from "./change-night.ts";
import type { NightDeps } from "./deps.ts";
import { noTrain, notFailed, notInTrain, unknownIn, unsuitable } from "./errors.ts";
import { type NightFacts, readFacts } from "./facts.ts";
import { listCandidates } from "./stand-ins.ts";
import { readLocomotives, type TimetableTrain } from "./store.ts";
import { findReport, placesOf } from "./train-board.ts";
import { findTrain, presentTrain, type TrainAddress } from "./train-service.ts";

/**
 * Who could take the place of a locomotive of a train for the rest of its working.
 * @throws Refusal not-found, unprocessable
 */
export async function readCandidates(
  deps: NightDeps,
  address: TrainAddress,
  locomotive: string,
): Promise<Candidates> {
  const facts = await readFacts(deps.database, deps, await reachNight(deps.database, address));
  const train = findTrain(facts, address);
  assertInTrain(facts, train, locomotive);
  return { locomotive, items: await findCandidates(deps, deps.database, facts, train, locomotive) };
}

async function findCandidates(
  { toProblem }: NightDeps,
  database: Database,
  facts: NightFacts,
  train: TimetableTrain,
  locomotive: string,
): Promise<Candidate[]> {
  const { session } = facts;
  const parts = await readPlanParts(database, session.club, session.code, train.slot);
  if (parts === undefined) throw noTrain(train.slot, train.code);
  const roster = await readLocomotives(database, session);
  return listCandidates({ facts, train, locomotive, problem: toProblem(parts), roster });
}

function assertInTrain(facts: NightFacts, train: TimetableTrain, locomotive: string): void {
  const has = placesOf(facts, train).map(({ tonight }) => tonight);
  if (!has.includes(locomotive)) throw notInTrain(locomotive, train.code, has);
}

/**
 * Records that a locomotive of a train failed, and what takes its place from now on; the timetable stays as it is. The
 * failure is noted on the locomotive's record.
 * @throws Refusal not-found, night-not-running, locomotive-unsuitable, conflict, unprocessable
 */
export function replaceLocomotive(
  deps: NightDeps,
  asked: Asked<TrainAddress>,
  failure: NewReplacement,
): Promise<NightTrain> {
  return changeNight(deps, asked, DEEDS.replacement, async (night) => {
    const facts = await night.read();
    const train = findTrain(facts, asked.address);
    assertUnderWay(facts, train);
    assertInTrain(facts, train, failure.locomotive);
    if (failure.replacement !== null) {
      const items = await findCandidates(deps, night.transaction, facts, train, failure.locomotive);
      const chosen = items.find(({ code }) => code === failure.replacement);
      if (chosen === undefined) throw unknownIn("replacement", "other locomotive", failure.replacement);
      if (!chosen.suits) throw unsuitable(chosen.code, chosen.reasons);
    }
    await record(night, facts, train, failure);
    return presentTrain(await night.read(), asked.address);
  });
}

function assertUnderWay(facts: NightFacts, train: TimetableTrain): void {
  const state = findReport(facts, train)?.state;
  if (state === "arrived") throw new Refusal("conflict", `Train ${train.code} has arrived.`);
  if (state === "left out") throw new Refusal("conflict", `Train ${train.code} is left out tonight.`);
}

async function record(
  night: NightInHand,
  facts: NightFacts,
  train: TimetableTrain,
  { locomotive, replacement, note }: NewReplacement,
): Promise<void> {
  const { transaction, session } = night;
  const place = { slotCode: train.slot, trainCode: train.code, locomotiveCode: locomotive };
  await transaction.nightReplacement.upsert({
    where: { sessionId_slotCode_trainCode_locomotiveCode: { sessionId: session.id, ...place } },
    create: {
      clubId: session.club.id,
      sessionId: session.id,
      ...place,
      replacementCode: replacement,
      at: facts.now,
      note,
    },
    update: { replacementCode: replacement, ...(note !== "" && { note }) },
  });
  const known = facts.log.replacements.some(({ locomotiveCode }) => locomotiveCode === locomotive);
  if (!known || note !== "") await noteDefect(night, facts.now, train, locomotive, note);
}

const MOST_NOTE = 2_000;

/** A line below what stands on the record already; a record that is full keeps what it has. */
async function noteDefect(
  { transaction, session }: NightInHand,
  now: Date,
  train: TimetableTrain,
  code: string,
  note: string,
): Promise<void> {
  const where = { clubId_code: { clubId: session.club.id, code } };
  const before = await transaction.locomotive.findUniqueOrThrow({ where, select: { note: true } });
  const date = toLocalText(now, session.club.timeZone).slice(0, "2027-03-20".length);
  const line = `${date}, ${session.name}: failed in train ${train.code}${note === "" ? "." : `: ${note}`}`;
  const after = before.note === "" ? line : `${before.note}\n${line}`;
  if (after.length <= MOST_NOTE) await transaction.locomotive.update({ where, data: { note: after } });
}

/**
 * A locomotive that failed in a train runs after all: it is in the train again. What was noted on its record stays.
 * @throws Refusal not-found, night-not-running, unprocessable
 */
export function mendLocomotive(
  deps: NightDeps,
  asked: Asked<TrainAddress>,
  locomotive: string,
): Promise<NightTrain> {
  return changeNight(deps, asked, DEEDS.replacement, async (night) => {
    const { transaction, session } = night;
    const { slot, train } = asked.address;
    findTrain(await night.read(), asked.address);
    const { count } = await transaction.nightReplacement.deleteMany({
      where: { sessionId: session.id, slotCode: slot, trainCode: train, locomotiveCode: locomotive },
    });
    if (count === 0) throw notFailed(locomotive, train);
    return presentTrain(await night.read(), asked.address);
  });
}
