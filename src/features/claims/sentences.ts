import type { BookingState } from "../../../shared/booking.ts";
import type { ClaimHindrance, Hindrance } from "../../../shared/claims.ts";
import { toLocalText } from "../../lib/local-time.ts";
import type { Collision } from "../../planner/people/engagements.ts";
import type { Unavailable, Unusable } from "../../planner/people/handset-fit.ts";
import type { LiveClaim } from "./live.ts";
import type { Job, PlanMember } from "./plan.ts";
import type { Doing, NightView } from "./view.ts";

const of = (code: ClaimHindrance, sentence: string): Hindrance => ({ code, sentence });

/** What people call a job: its kind and code, a duty by its name. */
export const nameOfJob = ({ kind, code, name }: Pick<Job, "kind" | "code" | "name">) =>
  kind === "train" ? `train ${code}` : `the duty ${name}`;

const start = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

const clockOf = ({ plan }: NightView, ms: number) =>
  toLocalText(new Date(ms), plan.night.club.timeZone).slice(11, 16);

/** `2 min 10 s`; whole minutes without seconds. */
function lengthOf(ms: number): string {
  const seconds = Math.max(0, Math.round(ms / 1_000));
  const [minutes, rest] = [Math.floor(seconds / 60), seconds % 60];
  if (minutes === 0) return `${rest} s`;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${rest} s`;
}

const STATES: Readonly<Record<BookingState, string>> = {
  draft: "The night is a draft: nobody may claim before the secretary opens it.",
  open: "The night's timetable is a draft yet: nobody may claim before it is issued.",
  locked: "The night is locked: who does what stays as it is, unless the secretary changes it.",
  running: "The night is running: the marshal says who does what.",
  finished: "The night is over.",
  cancelled: "The night is cancelled.",
};

export const notOpen = (state: BookingState) => of("session-not-open", STATES[state]);

export const taken = (view: NightView, job: Job, by: LiveClaim) =>
  of("taken", `${view.nameOf(by.member)} has ${nameOfJob(job)}.`);

export const notPassed = (member: PlanMember, job: Job, tags: readonly string[]) =>
  of(
    "not-passed",
    `${start(nameOfJob(job))} asks for ${tags.join(" and ")}, and ${member.name} is not passed for it.`,
  );

export const juniorAlone = (view: NightView, member: PlanMember, job: Job) =>
  of(
    "junior-alone",
    `${member.name} is a junior, and no adult has a train or duty in the slot ${view.slotName(job.slot)} or said that they come.`,
  );

export function collides(view: NightView, member: PlanMember, job: Job, found: Collision<Doing>): Hindrance {
  const { other } = found;
  const what = other.job === null ? "something on another night" : nameOfJob(other.job);
  if (found.kind === "together")
    return of(
      "drives-another-then",
      `${member.name} has ${what} from ${clockOf(view, other.fromMs)} to ${clockOf(view, other.untilMs)}.`,
    );
  const [first, then] = found.otherFirst ? [other.job, job] : [job, other.job];
  const [ends, begins] = [placeName(view, first?.endPlace), placeName(view, then?.startPlace)];
  return of(
    "walk-too-short",
    `From ${ends ?? "there"}, where ${first ? nameOfJob(first) : what} ends, it is ${lengthOf(found.needMs)} to ${begins ?? "here"}, where ${then ? nameOfJob(then) : what} begins, and there ${found.haveMs > 0 ? `are only ${lengthOf(found.haveMs)}` : "is no time"} between them.`,
  );
}

const placeName = ({ plan }: NightView, place: string | null | undefined) =>
  place == null ? undefined : (plan.placeNames.get(place) ?? place);

export function secondTooEarly(view: NightView, member: PlanMember, first: Job, from: Date): Hindrance {
  const text = toLocalText(from, view.plan.night.club.timeZone);
  return of(
    "second-claim-too-early",
    `${member.name} has ${nameOfJob(first)}; a second train may be claimed from ${text.slice(0, 10)}, ${text.slice(11, 16)}.`,
  );
}

export const noSuchHandset = (code: string) => of("handset-not-usable", `The club has no handset ${code}.`);

export const needsNone = (job: Job) =>
  of(
    "handset-not-usable",
    job.kind === "duty"
      ? `${start(nameOfJob(job))} takes no handset.`
      : `${start(nameOfJob(job))} is driven from a controller and takes no handset.`,
  );

export function unusable(view: NightView, job: Job, code: string, { fault, ...more }: Unusable): Hindrance {
  const why = {
    "not-ready": `Handset ${code} is ${view.plan.handsets.get(code)?.state ?? "gone"}.`,
    "other-system": `Handset ${code} belongs to another command system than ${nameOfJob(job)}.`,
    "out-of-reach": `Handset ${code} cannot be used at ${placeName(view, "place" in more ? more.place : null)}, where ${nameOfJob(job)} runs.`,
  };
  return of("handset-not-usable", why[fault]);
}

export const noneUsable = (job: Job) =>
  of(
    "handset-not-usable",
    `The club has no ready handset that can be used all along the run of ${nameOfJob(job)}.`,
  );

export function unavailable(view: NightView, code: string, found: Unavailable<LiveClaim>): Hindrance {
  if (found.fault === "battery")
    return of(
      "handset-taken",
      `Handset ${code} would be away from the desk for ${lengthOf(found.awayMs)} in all, longer than its battery lasts.`,
    );
  const { member, fromMs, untilMs } = found.use;
  return of(
    "handset-taken",
    `${view.nameOf(member)} has handset ${code} from ${clockOf(view, fromMs)} to ${clockOf(view, untilMs)}.`,
  );
}

export const allTaken = (job: Job) =>
  of("handset-taken", `Every handset that fits ${nameOfJob(job)} is in other hands then.`);

export const needsHandset = (job: Job) =>
  of(
    "handset-not-usable",
    `${start(nameOfJob(job))} needs a handset as the night is run now, and none is chosen.`,
  );
