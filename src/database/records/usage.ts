import { toWords } from "../../lib/words.ts";
import type { Database } from "../client.ts";
import { versionCode } from "./known-codes.ts";

/** Kinds that something else refers to, so that they cannot vanish while it does. */
export type UsedKind =
  | "club"
  | "area"
  | "place"
  | "section"
  | "commandSystem"
  | "supply"
  | "district"
  | "output"
  | "locomotive"
  | "rake"
  | "timetable"
  | "timetableVersion"
  | "session"
  | "slot";

type Finder = (database: Database, clubId: string, codes: string[]) => Promise<string[]>;

// enough to begin with; the refusal says that there are more
const NAMED_A_KIND = 4;
const few = { take: NAMED_A_KIND, select: { code: true }, orderBy: { code: "asc" } } as const;
const named = (noun: string, rows: readonly { readonly code: string }[]) =>
  rows.map(({ code }) => `${noun} ${code}`);

/** What a club is not kept for; nor is it for members that stand for people who sign in. */
const GOES_WITH_CLUB: ReadonlySet<string> = new Set([
  "memberships",
  "accessTokens",
  "oneTimeLinks",
  "mails",
  "trail",
]);

const FINDERS = {
  club: async (database, _, [code = ""]) => {
    const found = await database.club.findUnique({ where: { code }, select: { _count: true } });
    const accounts = found?._count.memberships ?? 0;
    return Object.entries(found?._count ?? {})
      .map(([kind, count]) => [kind, kind === "members" ? count - accounts : count] as const)
      .filter(([kind, count]) => count > 0 && !GOES_WITH_CLUB.has(kind))
      .map(([kind, count]) => `its ${toWords(kind)} (${count})`);
  },
  area: async (database, clubId, codes) => [
    ...named(
      "section",
      await database.section.findMany({ where: { clubId, areaCode: { in: codes } }, ...few }),
    ),
    ...named(
      "session",
      await database.session.findMany({
        where: { clubId, areas: { some: { areaCode: { in: codes } } } },
        ...few,
      }),
    ),
  ],
  place: async (database, clubId, codes) => {
    const placeCode = { in: codes };
    return [
      ...named("section", await database.section.findMany({ where: { clubId, placeCode }, ...few })),
      ...named(
        "line",
        await database.line.findMany({ where: { clubId, stops: { some: { placeCode } } }, ...few }),
      ),
      ...named("controller", await database.controller.findMany({ where: { clubId, placeCode }, ...few })),
      ...named(
        "handset",
        await database.handset.findMany({ where: { clubId, places: { some: { placeCode } } }, ...few }),
      ),
      ...named(
        "walk",
        await database.walk.findMany({
          where: { clubId, OR: [{ fromCode: placeCode }, { toCode: placeCode }] },
          ...few,
        }),
      ),
      ...named("duty", await database.duty.findMany({ where: { clubId, placeCode }, ...few })),
    ];
  },
  section: async (database, clubId, codes) => {
    const either = [{ fromCode: { in: codes } }, { toCode: { in: codes } }];
    return [
      ...named("link", await database.link.findMany({ where: { clubId, OR: either }, ...few })),
      ...named(
        "selector",
        await database.selector.findMany({ where: { clubId, sectionCode: { in: codes } }, ...few }),
      ),
      ...(await findTrains(database, { clubId, path: { some: { sectionCode: { in: codes } } } })),
    ];
  },
  commandSystem: async (database, clubId, codes) => {
    const where = { clubId, commandSystemCode: { in: codes } };
    return [
      ...named("supply", await database.supply.findMany({ where, ...few })),
      ...named("handset", await database.handset.findMany({ where, ...few })),
    ];
  },
  supply: async (database, clubId, codes) =>
    named(
      "district",
      await database.district.findMany({ where: { clubId, supplyCode: { in: codes } }, ...few }),
    ),
  district: async (database, clubId, codes) => {
    const where = { clubId, districtCode: { in: codes } };
    return [
      ...named("section", await database.section.findMany({ where, ...few })),
      ...named("short test", await database.shortTest.findMany({ where, ...few })),
      ...named("reading", await database.reading.findMany({ where, ...few })),
    ];
  },
  output: async (database, clubId, codes) =>
    named(
      "selector",
      await database.selector.findMany({
        where: { clubId, outputs: { some: { outputCode: { in: codes } } } },
        ...few,
      }),
    ),
  locomotive: async (database, clubId, codes) => {
    const locomotiveCode = { in: codes };
    return [
      ...named("decoder", await database.decoder.findMany({ where: { clubId, locomotiveCode }, ...few })),
      ...named("reading", await database.reading.findMany({ where: { clubId, locomotiveCode }, ...few })),
      ...(await findTrains(database, { clubId, motivePower: { some: { locomotiveCode } } })),
    ];
  },
  rake: (database, clubId, codes) =>
    findTrains(database, { clubId, rakes: { some: { rakeCode: { in: codes } } } }),
  timetable: async (database, clubId, codes) => {
    const slots = { some: { timetableCode: { in: codes } } };
    return named("session", await database.session.findMany({ where: { clubId, slots }, ...few }));
  },
  session: async (database, clubId, codes) =>
    named(
      "reading",
      await database.reading.findMany({ where: { clubId, sessionCode: { in: codes } }, ...few }),
    ),
  slot: async (database, clubId, codes) => {
    const slots = codes.map((code) => {
      const [sessionCode = "", slotCode = ""] = code.split(" ");
      return { sessionCode, slotCode };
    });
    return named("reading", await database.reading.findMany({ where: { clubId, OR: slots }, ...few }));
  },
  timetableVersion: async (database, clubId, codes) => {
    const runs = codes.map((code) => {
      const [timetableCode = "", number] = code.split(" ");
      return { timetableCode, timetableVersion: Number(number) };
    });
    const where = { clubId, slots: { some: { OR: runs } } };
    return named("session", await database.session.findMany({ where, ...few }));
  },
} as const satisfies Record<UsedKind, Finder>;

/** Who refers to the records with these codes, a few of each kind: `link L1-B1`, `train 4711 of winter 2`. */
export function findUsers(
  database: Database,
  clubId: string,
  kind: UsedKind,
  codes: readonly string[],
): Promise<string[]> {
  return FINDERS[kind](database, clubId, [...codes]);
}

async function findTrains(
  database: Database,
  where: NonNullable<Parameters<Database["train"]["findMany"]>[0]>["where"] & object,
): Promise<string[]> {
  const trains = await database.train.findMany({
    where,
    take: NAMED_A_KIND,
    orderBy: [{ code: "asc" }, { id: "asc" }],
    select: { code: true, timetableVersion: { select: { timetableCode: true, number: true } } },
  });
  return trains.map(
    ({ code, timetableVersion: { timetableCode, number } }) =>
      `train ${code} of ${versionCode(timetableCode, number)}`,
  );
}
