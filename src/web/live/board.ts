import type { ReadonlySignal } from "@preact/signals";
import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { DeskState, Night, NightHandset, NightTrain } from "../../../shared/night.ts";

/** Something that the marshal does, as it is sent. */
export interface NightDeed {
  /** What stands at the path is made what is sent; left out, something is done there. */
  readonly method?: "PUT";
  /** Under the night's address: `clock`, `trains/first/5`. */
  readonly path: string;
  readonly body: object;
  /** The version that the change is of, looked up in the board as it is when the button is pressed. */
  readonly version?: (night: Night) => number | undefined;
  /** What to say once it is done. */
  readonly done: string;
  readonly undo?: NightDeed;
}

/** The night as the live board shows it, and how to change it. */
export interface LiveBoard {
  readonly club: string;
  readonly night: Night;
  /** What the layout clock shows, in seconds; it moves once a second. */
  readonly now: ReadonlySignal<number>;
  /** Whether whoever looks may change anything, as the night stands. */
  readonly mayRun: boolean;
  readonly act: (deed: NightDeed) => void;
}

export const LiveContext = createContext<LiveBoard | null>(null);

export function useBoard(): LiveBoard {
  const board = useContext(LiveContext);
  if (!board) throw new Error("This part stands outside a live board.");
  return board;
}

const trainPath = ({ slot, train }: NightTrain) =>
  `trains/${encodeURIComponent(slot)}/${encodeURIComponent(train)}`;

const versionOfTrain = (train: NightTrain) => (night: Night) =>
  night.trains.find((t) => t.slot === train.slot && t.train === train.train)?.version;

type Report = Partial<Pick<NightTrain, "state" | "note">> & { readonly lateMinutes?: number | null };

/** A train reported on; undone, it is as it was before. */
export function reportTrain(train: NightTrain, report: Report, done: string): NightDeed {
  const { state, note, statedLateMinutes: lateMinutes } = train;
  const before = { state, lateMinutes, note };
  const deed = { method: "PUT", path: trainPath(train), version: versionOfTrain(train) } as const;
  return {
    ...deed,
    body: { ...before, ...report },
    done,
    undo: { ...deed, body: before, done: `Train ${train.train} is as it was.` },
  };
}

/** Another locomotive for one that failed; null: none yet. */
export function replaceLocomotive(
  train: NightTrain,
  locomotive: string,
  replacement: string | null,
  note: string,
): NightDeed {
  return {
    path: `${trainPath(train)}/replacements`,
    body: { locomotive, replacement, note },
    done:
      replacement === null
        ? `${locomotive} is noted as failed; train ${train.train} waits for another.`
        : `Train ${train.train} runs with ${replacement} instead of ${locomotive}.`,
    undo: {
      path: `${trainPath(train)}/mendings`,
      body: { locomotive },
      done: `Train ${train.train} runs with ${locomotive} after all.`,
    },
  };
}

/** A handset handed over the desk. */
export function moveHandset(handset: NightHandset, to: DeskState, done: string, member?: string): NightDeed {
  const { code, state, holder } = handset;
  const path = "handset-desk";
  const before = { handset: code, to: state, ...(holder ? { member: holder.member } : {}) };
  return {
    path,
    body: { handset: code, to, ...(member === undefined ? {} : { member }) },
    done,
    undo: { path, body: before, done: `Handset ${code} is as it was.` },
  };
}
