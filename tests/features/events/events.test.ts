import type { AddressInfo } from "node:net";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { type Actor, localActor } from "../../../src/http/actor.ts";
import { Refusal } from "../../../src/lib/refusal.ts";
import { memberOf } from "../../support/actors.ts";
import { runSql } from "../../support/sql.ts";
import { appOn, testApp } from "../../support/test-app.ts";
import { type Hearer, listenTo } from "./hearer.ts";

type App = Awaited<ReturnType<typeof appOn>>;

let first: Awaited<ReturnType<typeof testApp>>;
let second: App;
let actor: () => Actor | undefined;
const hearers: Hearer[] = [];

const CLUB = { name: "Club", timeZone: "Europe/London", scale: 87 };
const EVENTS = "/api/clubs/vale/events";

beforeAll(async () => {
  // the beat of streams is moved by hand; all else runs in its own time
  vi.useFakeTimers({ toFake: ["setInterval", "clearInterval"] });
  actor = () => localActor;
  first = await testApp({ authenticate: async () => actor() });
  second = await appOn(first.connection);
  for (const { app } of [first, second]) await app.listen({ host: "127.0.0.1", port: 0 });
  for (const code of ["vale", "hill"])
    await first.request
      .post("/api/clubs")
      .send({ code, ...CLUB })
      .expect(201);
});
beforeEach(() => {
  actor = () => localActor;
});
afterEach(() => Promise.all(hearers.splice(0).map((hearer) => hearer.hangUp())));
afterAll(async () => {
  await second.close();
  await first.close();
  vi.useRealTimers();
});

const addressOf = ({ app }: App, path = EVENTS) =>
  `http://127.0.0.1:${(app.server.address() as AddressInfo).port}${path}`;

async function hear(
  app: App,
  headers: Readonly<Record<string, string>> = {},
  path = EVENTS,
): Promise<Hearer> {
  const hearer = listenTo(addressOf(app, path), headers);
  hearers.push(hearer);
  await hearer.opened;
  await expect.poll(hearer.lastId).toBeDefined();
  return hearer;
}

const add = (app: App, code: string, club = "vale") =>
  app.request.post(`/api/clubs/${club}/places`).send({ code, name: "Not to be told" }).expect(201);

const listeners = async () =>
  (
    await runSql<{ pid: number }>(
      first.connection,
      `select pid from pg_stat_activity where datname = current_database() and application_name = 'listens to trail'`,
    )
  ).rows.map(({ pid }) => pid);

describe("a stream of events", () => {
  it("is for members alone", async () => {
    actor = () => memberOf("hill", "secretary");
    await first.request.get(EVENTS).expect(404);
    actor = () => undefined;
    await first.request.get(EVENTS).expect(401);
  });

  it("tells of what is done on any server, in this club alone, and not how", async () => {
    const [here, there] = [await hear(first), await hear(second)];
    await add(first, "one");
    await add(second, "other", "hill");
    await add(second, "two");
    for (const hearer of [here, there]) {
      await expect.poll(hearer.codes).toEqual(["one", "two"]);
      const [event] = hearer.events;
      expect(event).toEqual({ seq: event?.seq, kind: "place", code: "one", deed: "made" });
    }
    const { headers } = await here.opened;
    expect(headers["content-type"]).toBe("text/event-stream; charset=utf-8");
    expect(headers["cache-control"]).toBe("no-store");
  });

  it("names the night of what belongs to one", async () => {
    const hearer = await hear(first);
    const slot = {
      code: "S",
      name: "Slot",
      startsAt: "2027-03-27T19:00",
      endsAt: "2027-03-27T20:00",
      layoutStart: "10:00",
    };
    await first.request.post("/api/clubs/vale/timetables").send({ code: "T", name: "T" }).expect(201);
    await first.request.post("/api/clubs/vale/timetables/T/versions").send({}).expect(201);
    await first.request
      .post("/api/clubs/vale/sessions")
      .send({
        code: "night",
        name: "Night",
        clockRatio: 4,
        areas: [],
        slots: [{ ...slot, timetable: "T", timetableVersion: 1 }],
      })
      .expect(201);
    await expect
      .poll(() => hearer.events.at(-1))
      .toMatchObject({ kind: "session", code: "night", session: "night" });
  });

  it("shows that it stands, while nothing happens", async () => {
    const hearer = await hear(first);
    await vi.advanceTimersByTimeAsync(30_000);
    await expect.poll(hearer.comments).toBe(2);
  });
});

describe("after a break", () => {
  it("what was missed comes first, on another server as well, and each once", async () => {
    const before = await hear(first);
    await add(first, "heard");
    await expect.poll(before.codes).toEqual(["heard"]);
    await before.hangUp();
    await add(first, "missed-1");
    await add(second, "missed-2");
    const after = await hear(second, { "last-event-id": String(before.lastId()) });
    await add(first, "later");
    await expect.poll(after.codes).toEqual(["missed-1", "missed-2", "later"]);
  });

  it("a stream that told nothing can be taken up where it was opened", async () => {
    const quiet = await hear(first);
    await quiet.hangUp();
    await add(first, "while-away");
    const after = await hear(first, { "last-event-id": String(quiet.lastId()) });
    await expect.poll(after.codes).toEqual(["while-away"]);
  });

  it.each(["999999999", "not ours", "-1", "1e3"])(
    "of another history (%s) nothing can be told: begin anew",
    async (id) => {
      await first.request.get(EVENTS).set("last-event-id", id).expect(204);
    },
  );

  it("of more than two thousand changes neither", async () => {
    const hearer = await hear(first);
    await hearer.hangUp();
    await runSql(
      first.connection,
      `insert into areas (id, club_id, code, name)
       select gen_random_uuid(), (select id from clubs where code = 'hill'), 'a' || n, '' from generate_series(1, 2001) n`,
    );
    const path = "/api/clubs/hill/events";
    await first.request.get(path).set("last-event-id", "1").expect(204);
    const { rows } = await runSql<{ seq: string }>(
      first.connection,
      "select seq from trail where kind = 'area' and code = 'a2' order by seq",
    );
    const recent = await hear(first, { "last-event-id": rows[0]?.seq ?? "" }, path);
    await expect.poll(() => recent.events.length).toBe(1999);
  });

  it("of the line to the database, what was done meanwhile is told", async () => {
    const hearer = await hear(first);
    const pids = await listeners();
    expect(pids.length).toBeGreaterThan(0);
    // waits until they are gone, and changes something before they can be back
    await runSql(
      first.connection,
      `with gone as (select count(pg_terminate_backend(pid, 5000)) from unnest($1::int[]) pid)
       insert into places (id, club_id, code, name)
       select gen_random_uuid(), id, 'unheard', '' from clubs, gone where code = 'vale'`,
      [pids],
    );
    await expect.poll(hearer.codes, { timeout: 10_000 }).toEqual(["unheard"]);
    await add(second, "heard-again");
    await expect.poll(hearer.codes, { timeout: 10_000 }).toEqual(["unheard", "heard-again"]);
  });
});

describe("a stream ends", () => {
  it("when the sign-in does, or the membership", async () => {
    for (const gone of [() => undefined, () => memberOf("hill", "secretary"), endedSignIn]) {
      actor = () => memberOf("vale", "member");
      const hearer = await hear(first);
      await vi.advanceTimersByTimeAsync(15_000);
      await expect.poll(hearer.comments).toBe(1);
      actor = gone;
      await vi.advanceTimersByTimeAsync(15_000);
      await hearer.ended;
    }
  });

  it("not when it cannot be found out whether it did", async () => {
    const hearer = await hear(first);
    actor = () => {
      throw new Error("no database");
    };
    await vi.advanceTimersByTimeAsync(15_000);
    actor = () => localActor;
    await add(first, "still-there");
    await expect.poll(hearer.codes).toEqual(["still-there"]);
  });

  it("when the service closes, which waits for none", async () => {
    const third = await appOn(first.connection);
    await third.app.listen({ host: "127.0.0.1", port: 0 });
    const streams = await Promise.all(Array.from({ length: 5 }, () => hear(third)));
    await Promise.all([third.close(), ...streams.map(({ ended }) => ended)]);
    const taken = await hear(first, { "last-event-id": String(streams[0]?.lastId()) });
    await add(second, "after-the-close");
    await expect.poll(taken.codes).toEqual(["after-the-close"]);
  });
});

const endedSignIn = () => {
  throw new Refusal("not-signed-in", "It has ended.");
};

describe("nothing is missed", () => {
  it("by those who come and go while many write on both servers at once", async () => {
    const start = (await hear(first)).lastId() ?? "";
    const writers = Array.from({ length: 6 }, async (_, writer) => {
      for (let n = 0; n < 12; n++) await add(writer % 2 ? first : second, `w${writer}-${n}`);
    });
    let isWriting = true;
    const walkers = Array.from({ length: 4 }, async (_, index) => {
      const heard: number[] = [];
      let last = start;
      do {
        const hearer = await hear(index % 2 ? first : second, { "last-event-id": last });
        await new Promise((resolve) => setTimeout(resolve, 20 * (index + 1)));
        await hearer.hangUp();
        heard.push(...hearer.events.map(({ seq }) => seq));
        last = hearer.lastId() ?? last;
      } while (isWriting);
      const rest = await hear(first, { "last-event-id": last });
      return { heard, rest };
    });
    await Promise.all(writers);
    isWriting = false;
    const { rows } = await runSql<{ seq: string }>(
      first.connection,
      "select t.seq from trail t join clubs c on c.id = t.club_id where c.code = 'vale' and t.seq > $1 order by seq",
      [start],
    );
    const all = rows.map(({ seq }) => Number(seq));
    expect(all).toHaveLength(72);
    for (const { heard, rest } of await Promise.all(walkers))
      await expect.poll(() => [...heard, ...rest.events.map(({ seq }) => seq)]).toEqual(all);
  });
});
