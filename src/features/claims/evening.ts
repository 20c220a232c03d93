import type { BoardHandset, ClaimLocomotive, EveningItem, MyEvening } from "../../../shared/claims.ts";
import type { Handset } from "../../../shared/handsets.ts";
import { placesTonight } from "../../planner/night/tonight.ts";
import { toClaim, toEnd, toIso, toPerson } from "./answers.ts";
import { holderOf, type LiveClaim } from "./live.ts";
import type { Job, NightPlan } from "./plan.ts";
import type { NightView } from "./view.ts";

export function toMyEvening(view: NightView, member: string | null): MyEvening {
  const { plan, live } = view;
  return {
    session: plan.night.code,
    name: plan.night.name,
    state: live.booking.state,
    timeZone: plan.night.club.timeZone,
    venueNote: live.booking.venueNote,
    noteToAll: live.booking.noteToAll,
    member: member === null ? null : toPerson(view, member),
    items: toEvening(view, member),
  };
}

/** What a member has on this night, by time. */
export function toEvening(view: NightView, member: string | null): EveningItem[] {
  const mine = (member === null ? [] : (view.doings.get(member) ?? [])).flatMap(({ claim, job }) =>
    job === null ? [] : [{ claim, job }],
  );
  return mine.map(({ claim, job }, at) => {
    const before = mine[at - 1]?.job;
    return {
      claim: toClaim(view, claim),
      name: job.name,
      from: toEnd(view.plan, job, "start"),
      to: toEnd(view.plan, job, "end"),
      pickUpAt: toIso(job.fromMs),
      handInAt: toIso(job.untilMs),
      locomotives: toLocomotives(view, job),
      control: job.train?.control ?? null,
      handset: toHandset(view.plan, claim.handset),
      walkSeconds: before ? Math.ceil(view.plan.walk(before.endPlace, job.startPlace) / 1_000) : null,
      takesOverFrom: toDriver(view, findNeighbour(view.plan, job, "before")),
      handsOverTo: toDriver(view, findNeighbour(view.plan, job, "after")),
      ...handsetNeighbours(view, claim),
    };
  });
}

/** What its train has tonight: a locomotive that failed gives way to what took its place. */
export function toLocomotives({ plan, live }: NightView, { slot, code, train }: Job): ClaimLocomotive[] {
  const replacements = live.replacements.filter((one) => one.slot === slot && one.train === code);
  return placesTonight(train?.locomotives ?? [], replacements).map(
    ({ tonight }) => plan.locomotives.get(tonight) ?? { code: tonight, name: tonight, address: null },
  );
}

export const toBoardHandset = (handset: Handset): BoardHandset => ({
  code: handset.code,
  name: handset.name,
  kind: handset.kind,
  state: handset.state,
  places: handset.places,
  batteryMinutes: handset.batteryMinutes,
});

function toHandset(plan: NightPlan, code: string | null): BoardHandset | null {
  const handset = code === null ? undefined : plan.handsets.get(code);
  return handset ? toBoardHandset(handset) : null;
}

/** The train of the same slot that has one of its locomotives next before or after it. */
function findNeighbour(plan: NightPlan, job: Job, side: "before" | "after"): Job | undefined {
  const own = new Set(job.train?.locomotives);
  const shares = (other: Job) =>
    other.id !== job.id && other.slot === job.slot && other.train?.locomotives.some((code) => own.has(code));
  if (side === "after") return plan.jobs.find((other) => shares(other) && other.startMs >= job.endMs);
  return plan.jobs.findLast((other) => shares(other) && other.endMs <= job.startMs);
}

function toDriver(view: NightView, job: Job | undefined): EveningItem["takesOverFrom"] {
  if (job === undefined) return null;
  const holder = holderOf(view.live, job);
  return { train: job.code, driver: holder ? toPerson(view, holder.member) : null };
}

function handsetNeighbours(
  view: NightView,
  claim: LiveClaim,
): Pick<EveningItem, "handsetFrom" | "handsetTo"> {
  const uses = (claim.handset === null ? [] : (view.uses.get(claim.handset) ?? [])).filter(
    ({ here }) => here,
  );
  const at = uses.findIndex(({ id }) => id === claim.id);
  const [before, after] = at < 0 ? [] : [uses[at - 1], uses[at + 1]];
  return {
    handsetFrom: before ? toPerson(view, before.member) : null,
    handsetTo: after ? toPerson(view, after.member) : null,
  };
}
