import type { NightTrain, TrainReport } from "../../../shared/night.ts";
import { assertCurrent, type Precondition } from "../../lib/precondition.ts";
import { type Asked, changeNight, DEEDS, type NightAddress, type NightInHand, pick } from "./change-night.ts";
import type { NightDeps } from "./deps.ts";
import { noTrain } from "./errors.ts";
import type { NightFacts } from "./facts.ts";
import type { TimetableTrain } from "./store.ts";
import { findReport, toTrains } from "./train-board.ts";

export interface TrainAddress extends NightAddress {
  readonly slot: string;
  readonly train: string;
}

/** @throws Refusal not-found */
export function findTrain({ trains }: NightFacts, { slot, train }: TrainAddress): TimetableTrain {
  const found = trains.find((one) => one.slot === slot && one.code === train);
  if (found) return found;
  throw noTrain(slot, train);
}

/**
 * Records what became of a train. When it departed and arrived is the instant of the report that first said so.
 * @throws Refusal not-found, night-not-running, version-mismatch
 */
export function reportTrain(
  deps: NightDeps,
  asked: Asked<TrainAddress>,
  report: TrainReport,
  precondition: Precondition,
): Promise<NightTrain> {
  return changeNight(deps, asked, DEEDS.train, async (night) => {
    const facts = await night.read();
    const train = findTrain(facts, asked.address);
    assertCurrent(precondition, findReport(facts, train)?.version ?? 1);
    await write(night, facts, train, report);
    return presentTrain(await night.read(), asked.address);
  });
}

export const presentTrain = (facts: NightFacts, { slot, train }: TrainAddress): NightTrain =>
  pick(toTrains(facts), (one) => one.slot === slot && one.train === train);

async function write(
  { transaction, session }: NightInHand,
  facts: NightFacts,
  train: TimetableTrain,
  { state, lateMinutes, note }: TrainReport,
): Promise<void> {
  const before = findReport(facts, train);
  const departedAt = before?.departedAt ?? (state === "running" ? facts.now : null);
  const arrivedAt = before?.arrivedAt ?? latest(facts.now, departedAt);
  const data = {
    state,
    lateMinutes,
    note,
    departedAt: state === "running" || state === "arrived" ? departedAt : null,
    arrivedAt: state === "arrived" ? arrivedAt : null,
  };
  const key = { sessionId: session.id, slotCode: train.slot, trainCode: train.code };
  await transaction.nightTrain.upsert({
    where: { sessionId_slotCode_trainCode: key },
    create: { clubId: session.club.id, ...key, ...data },
    update: data,
  });
}

const latest = (a: Date, b: Date | null): Date => (b !== null && b > a ? b : a);
