import type { CheckReport } from "../../../shared/check.ts";
import type { Effect } from "../../../shared/what-if.ts";
import { compareReports } from "./compare.ts";
import type { ComingSlot } from "./store.ts";

/** Findings of one slot that an answer lists. */
const MOST_APPEARING = 20;

/** The check of a slot, or what of its plan does not fit together. */
export type Attempt = CheckReport | string;

/** What a change does to one slot, from its check as it is and with the change. */
export function toEffect(slot: ComingSlot, before: Attempt, after: Attempt): Effect {
  const { session, name, slot: code, slotName, startsAt } = slot;
  const both = typeof before !== "string" && typeof after !== "string" ? compareReports(before, after) : null;
  const appears = both?.appears ?? [];
  return {
    session,
    name,
    slot: code,
    slotName,
    startsAt: startsAt.toISOString(),
    before: toVerdict(before),
    after: toVerdict(after),
    breaks: runs(before) && !runs(after),
    appears: appears.slice(0, MOST_APPEARING),
    appearsLeftOut: Math.max(0, appears.length - MOST_APPEARING),
    clears: both?.clears.length ?? 0,
    hindrance: typeof after === "string" ? after : null,
  };
}

const runs = (attempt: Attempt) => typeof attempt !== "string" && attempt.verdict === "runs";

function toVerdict(attempt: Attempt): Effect["before"] {
  if (typeof attempt === "string") return null;
  const { verdict, stops, warnings } = attempt;
  return { verdict, stops, warnings };
}

/**
 * The answer in a sentence: the worst that happens to any of the slots, and to which nights. `leftOut`: slots farther ahead
 * that were not looked at.
 */
export function toHeadline(effects: readonly Effect[], leftOut: number): string {
  if (effects.length === 0) return "No night is booked that this could change.";
  for (const turn of TURNS) {
    const names = namesOf(effects.filter((effect) => turnOf(effect) === turn));
    if (names !== null) return SENTENCES[turn](names);
  }
  const looked = leftOut > 0 ? `None of the next ${effects.length} slots` : null;
  return effects.some(changes)
    ? `${looked ?? "No night"} would stop by this; some findings change.`
    : `${looked ?? "No night to come"} is changed by this.`;
}

/** Worst first. */
const TURNS = ["stops", "is lost", "runs", "can be checked", "was lost"] as const;
type Turn = (typeof TURNS)[number];

/** What becomes of a slot; null: it stays what it was, stopped or running. */
function turnOf({ before, after, breaks }: Effect): Turn | null {
  if (breaks) return "stops";
  if (after === null) return before === null ? "was lost" : "is lost";
  if (after.verdict === "runs") return before?.verdict === "runs" ? null : "runs";
  return before === null ? "can be checked" : null;
}

const SENTENCES = {
  stops: (names) => `${names} would stop.`,
  "is lost": (names) => `${names} could no longer be checked: the plan would not fit together.`,
  runs: (names) => `${names} would run again.`,
  "can be checked": (names) => `${names} could be checked again, and would be stopped.`,
  "was lost": (names) => `${names} cannot be checked, with this or without: the plan does not fit together.`,
} satisfies Record<Turn, (names: string) => string>;

function changes({ appears, clears, before, after }: Effect): boolean {
  // of a slot with very many findings not all are listed
  return appears.length > 0 || clears > 0 || JSON.stringify(before) !== JSON.stringify(after);
}

function namesOf(effects: readonly Effect[]): string | null {
  const names = [...new Set(effects.map(({ name }) => name))];
  return names.length > 1 ? `${names.slice(0, -1).join(", ")} and ${names.at(-1)}` : (names[0] ?? null);
}
