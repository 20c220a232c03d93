import type { z } from "zod";
import type { clubDocument } from "../../shared/documents.ts";
import type { handset } from "../../shared/handsets.ts";
import type { member } from "../../shared/members.ts";
import { createRandom, type Random } from "../bench/random.ts";
import { roadCode, track } from "./made-track.ts";

export type ClubInput = z.input<typeof clubDocument>;

export interface ClubSize {
  readonly members: number;
  /** Roads between two places, each with one locomotive that goes back and forth. */
  readonly lanes: number;
  /** Trains of each lane, one after the other. */
  readonly turns: number;
  readonly seed: number;
}

export const CLUB = {
  code: "soak",
  name: "Marrowfield Model Railway Society",
  timeZone: "Europe/London",
  scale: 87,
} as const;
export const NIGHT = { session: "soak-night", slot: "evening" } as const;

/** A member who drives nothing. */
export const SECRETARY = "secretary";

/** Layout hours that the night is long: three real ones by a clock four times as fast. */
const NIGHT_HOURS = 12;
const FIRST_HOUR = 6;
const TAGS = ["main line", "branch"] as const;

export const memberCode = (at: number) => `m${at + 1}`;

/**
 * An invented club whose night runs clean, with too many members for its trains and too few handsets for everybody's
 * wishes: what two people want at once is the rule. The same size and seed, the same club.
 */
export function madeClub(size: ClubSize): ClubInput {
  const random = createRandom(size.seed);
  return {
    ...track(size.lanes),
    handsets: handsets(size.lanes),
    members: [
      ...Array.from({ length: size.members }, (_, at) => person(at, random)),
      { code: SECRETARY, name: "The secretary" },
    ],
    timetables: [
      {
        code: "all-day",
        name: "All day",
        versions: [{ number: 1, state: "issued", trains: trains(size, random) }],
      },
    ],
    sessions: [
      {
        code: NIGHT.session,
        name: "Soak night",
        clockRatio: 4,
        areas: [{ area: "all", control: "digital" }],
        slots: [
          {
            code: NIGHT.slot,
            name: "Evening",
            startsAt: "2027-03-20T19:00",
            endsAt: "2027-03-20T22:00",
            layoutStart: `${FIRST_HOUR}:00`,
            timetable: "all-day",
            timetableVersion: 1,
          },
        ],
      },
    ],
  };
}

/** Codes of the adults who are passed for every train of it. */
export const allRounders = (size: ClubSize): ReadonlySet<string> =>
  new Set(
    (madeClub(size).members ?? [])
      .filter(({ junior, passedFor }) => junior !== true && passedFor?.length === TAGS.length)
      .map(({ code }) => code),
  );

function person(at: number, random: Random): z.input<typeof member> {
  return {
    code: memberCode(at),
    name: `Member ${at + 1}`,
    passedFor: TAGS.filter(() => random.chance(0.75)),
    junior: random.chance(0.1),
  };
}

/**
 * Enough of them that the check is content and no more: of every five, two are good at three places only and one not for the
 * whole night; and two not at all.
 */
function handsets(lanes: number): z.input<typeof handset>[] {
  const ready = Array.from({ length: Math.ceil(lanes * 1.25) }, (_, at): z.input<typeof handset> => {
    const radio = {
      code: `R${at + 1}`,
      name: `Radio ${at + 1}`,
      commandSystem: "club",
      kind: "radio",
    } as const;
    if (at % 5 === 0) return { ...radio, batteryMinutes: 120 };
    if (at % 5 !== 1 && at % 5 !== 3) return radio;
    const places = [at % 6, (at + 1) % 6, (at + 2) % 6].map((place) => `P${place + 1}`);
    return { ...radio, code: `K${at + 1}`, name: `Cable ${at + 1}`, kind: "tethered", places };
  });
  const broken = { name: "On the bench", commandSystem: "club", kind: "radio" } as const;
  return [...ready, { ...broken, code: "X1", state: "faulty" }, { ...broken, code: "X2", state: "away" }];
}

type TrainInput = NonNullable<
  NonNullable<NonNullable<ClubInput["timetables"]>[number]["versions"]>[number]["trains"]
>[number];

/** Each lane's trains share out the night: none begins before the one that brings its locomotive has ended. */
function trains({ lanes, turns }: ClubSize, random: Random): TrainInput[] {
  const share = (NIGHT_HOURS * 60) / turns;
  return Array.from({ length: lanes * turns }, (_, at) => {
    const lane = Math.floor(at / turns);
    const turn = at % turns;
    const begins = FIRST_HOUR * 60 + turn * share;
    const departs = begins + random.whole(8, Math.floor(share * 0.3));
    const arrives = departs + random.whole(Math.ceil(share * 0.3), Math.floor(share * 0.6));
    return oneTrain(lane, turn, departs, arrives);
  });
}

function oneTrain(lane: number, turn: number, departs: number, arrives: number): TrainInput {
  const there = ["a", "l", "b"].map((part) => roadCode(lane, part));
  const [first = "", over = "", last = ""] = turn % 2 === 0 ? there : there.reverse();
  return {
    code: `${lane + 1}.${turn + 1}`,
    name: `Lane ${lane + 1}, turn ${turn + 1}`,
    motivePower: [{ locomotive: `E${lane + 1}` }],
    requires: lane % 3 === 2 ? [] : [TAGS[lane % 3] ?? ""],
    path: [
      { section: first, depart: clockReading(departs) },
      { section: over },
      { section: last, arrive: clockReading(arrives) },
    ],
  };
}

const clockReading = (minutes: number) =>
  `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;
