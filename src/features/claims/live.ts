import type { BookingState } from "../../../shared/booking.ts";
import type { BookedNight, BookingNow } from "../../database/bookings.ts";
import type { Database } from "../../database/client.ts";
import type { Replacement } from "../../planner/night/tonight.ts";
import { type Job, jobKey, type NightPlan } from "./plan.ts";

/** A claim as its row has it; ms since 1970. */
export interface LiveClaim {
  readonly id: string;
  /** false: it is of another night, and only its time counts. */
  readonly here: boolean;
  readonly key: string;
  readonly member: string;
  readonly handset: string | null;
  readonly fromMs: number;
  readonly untilMs: number;
  readonly assigned: boolean;
}

export interface LiveWait {
  readonly id: string;
  readonly key: string;
  readonly member: string;
}

export interface LiveSwap {
  readonly id: string;
  readonly givesId: string;
  readonly wantsId: string;
  readonly message: string;
  readonly offeredAt: string;
}

/** What changes with every claim, as of one moment. */
export interface LiveNight {
  readonly booking: BookingNow;
  /** Of the session's record: the plan must be of the same. */
  readonly sessionVersion: number;
  /** Of this night, and of others where they are at the same time; by time. */
  readonly claims: readonly LiveClaim[];
  /** First come, first served. */
  readonly queue: readonly LiveWait[];
  readonly swaps: readonly LiveSwap[];
  readonly attending: ReadonlySet<string>;
  /** Locomotives that failed tonight, and what took their places. */
  readonly replacements: readonly LiveReplacement[];
}

/** In one train of one slot. */
export interface LiveReplacement extends Replacement {
  readonly slot: string;
  readonly train: string;
}

/** What a claim is of; slots may run the same timetable, so that a train may stand in several. */
interface Called {
  readonly kind: Job["kind"];
  readonly slot: string;
  readonly job: string;
}

interface LiveRow {
  readonly booking: {
    readonly state: BookingState;
    readonly reason: string | null;
    readonly venueNote: string;
    readonly noteToAll: string;
    readonly secondClaimFrom: string | null;
    readonly version: number;
  } | null;
  readonly sessionVersion: number;
  readonly pickUpMs: number;
  readonly handInMs: number;
  readonly claims: (Omit<LiveClaim, "key"> & Called)[] | null;
  readonly queue: (Called & { readonly id: string; readonly member: string })[] | null;
  readonly swaps: LiveSwap[] | null;
  readonly attending: string[];
  readonly replacements: LiveReplacement[] | null;
}

/** One query. A claim's times are what it was made with; those of a draft, which has none, follow the policy of today. */
export async function readLive(database: Database, { id }: BookedNight): Promise<LiveNight> {
  const [row] = await database.$queryRaw<LiveRow[]>`
    select s.version as "sessionVersion",
      case when b.state is null or b.state = 'draft' then coalesce(s.pick_up_ms, c.pick_up_ms) else b.pick_up_ms end as "pickUpMs",
      case when b.state is null or b.state = 'draft' then coalesce(s.hand_in_ms, c.hand_in_ms) else b.hand_in_ms end as "handInMs",
      case when b.id is null then null else jsonb_build_object('state', b.state, 'reason', b.reason, 'venueNote', b.venue_note,
        'noteToAll', b.note_to_all, 'secondClaimFrom', b.second_claim_from, 'version', b.version) end as booking,
      (select jsonb_agg(jsonb_build_object('id', x.id, 'here', x.session_id = s.id,
          'kind', case when x.train_id is null then 'duty' else 'train' end, 'slot', x.slot_code, 'job', coalesce(x.train_id, x.duty_id),
          'member', x.member_code, 'handset', x.handset_code, 'assigned', x.assigned,
          'fromMs', round(extract(epoch from x.from_at) * 1000), 'untilMs', round(extract(epoch from x.until_at) * 1000))
          order by x.from_at, x.id)
        from claims x where x.club_id = s.club_id and (x.session_id = s.id
          or tstzrange(x.from_at, x.until_at) && (select tstzrange(min(starts_at) - interval '1 hour', max(ends_at) + interval '12 hours')
            from slots where session_id = s.id))) as claims,
      (select jsonb_agg(jsonb_build_object('id', q.id, 'kind', case when q.train_id is null then 'duty' else 'train' end,
          'slot', q.slot_code, 'job', coalesce(q.train_id, q.duty_id), 'member', q.member_code) order by q.number)
        from queue_places q where q.session_id = s.id) as queue,
      (select jsonb_agg(jsonb_build_object('id', w.id, 'givesId', w.gives_id, 'wantsId', w.wants_id, 'message', w.message,
          'offeredAt', w.created_at) order by w.id)
        from swaps w where w.session_id = s.id) as swaps,
      array(select a.member_code from booking_attendees a where a.session_id = s.id) as attending,
      (select jsonb_agg(jsonb_build_object('slot', r.slot_code, 'train', r.train_code, 'failed', r.locomotive_code,
          'by', r.replacement_code))
        from night_replacements r where r.session_id = s.id) as replacements
    from sessions s join clubs c on c.id = s.club_id left join bookings b on b.session_id = s.id
    where s.id = ${id}::uuid`;
  if (row === undefined) throw new Error("the night was found a moment ago");
  return toLive(row);
}

function toLive(row: LiveRow): LiveNight {
  const { booking, pickUpMs, handInMs } = row;
  return {
    booking: {
      state: booking?.state ?? "draft",
      reason: booking?.reason ?? null,
      venueNote: booking?.venueNote ?? "",
      noteToAll: booking?.noteToAll ?? "",
      secondClaimFrom: booking?.secondClaimFrom ? new Date(booking.secondClaimFrom) : null,
      version: booking?.version ?? 1,
      pickUpMs,
      handInMs,
    },
    sessionVersion: row.sessionVersion,
    claims: (row.claims ?? []).map(({ kind, slot, job, ...claim }) => ({
      ...claim,
      key: jobKey(kind, slot, job),
    })),
    queue: (row.queue ?? []).map(({ kind, slot, job, ...wait }) => ({
      ...wait,
      key: jobKey(kind, slot, job),
    })),
    swaps: (row.swaps ?? []).map((swap) => ({ ...swap, offeredAt: new Date(swap.offeredAt).toISOString() })),
    attending: new Set(row.attending),
    replacements: row.replacements ?? [],
  };
}

export const keyOf = ({ kind, slot, id }: Pick<Job, "kind" | "slot" | "id">) => jobKey(kind, slot, id);

/** Claims of this night. */
export const claimsHere = ({ claims }: LiveNight): readonly LiveClaim[] => claims.filter(({ here }) => here);

export const holderOf = (live: LiveNight, job: Job): LiveClaim | undefined =>
  live.claims.find(({ here, key }) => here && key === keyOf(job));

/** The jobs of a plan by what claims call them. */
export function indexJobs(plan: NightPlan): ReadonlyMap<string, Job> {
  return new Map(plan.jobs.map((job) => [keyOf(job), job]));
}
