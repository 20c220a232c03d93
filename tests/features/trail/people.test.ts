import type { AddressInfo } from "node:net";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type { TrailEntry } from "../../../shared/trail.ts";
import { makePerson, PASSWORD, type TestPerson } from "../../support/people.ts";
import { runSql } from "../../support/sql.ts";
import { appOn, testApp } from "../../support/test-app.ts";
import { listenTo } from "../events/hearer.ts";
import { makeClub } from "../example-club.ts";

const CLUB = "/api/clubs/vale";

let first: Awaited<ReturnType<typeof testApp>>;
let second: Awaited<ReturnType<typeof appOn>>;
let secretary: TestPerson;

beforeAll(async () => {
  vi.useFakeTimers({ toFake: ["setInterval", "clearInterval"] });
  first = await testApp({ accounts: true });
  second = await appOn(first.connection, { accounts: true });
  const local = await appOn(first.connection);
  await makeClub({ ...first, ...local }, "vale");
  await local.close();
  for (const { app } of [first, second]) await app.listen({ host: "127.0.0.1", port: 0 });
  secretary = await makePerson(first, { club: "vale", roles: ["secretary"] });
});
afterAll(async () => {
  await second.close();
  await first.close();
  vi.useRealTimers();
});

const trail = async (query: string): Promise<TrailEntry[]> =>
  (await secretary.agent.get(`${CLUB}/trail?limit=200&${query}`).expect(200)).body.items;

describe("the trail names whoever was signed in", () => {
  it("each their own deeds, however many work at once on two servers", async () => {
    const owners = await Promise.all(
      Array.from({ length: 6 }, (_, index) =>
        makePerson(index % 2 ? first : second, { club: "vale", roles: ["layout owner"] }),
      ),
    );
    await Promise.all(
      owners.flatMap(({ agent, member }) =>
        Array.from({ length: 5 }, (_, n) =>
          agent
            .post(`${CLUB}/places`)
            .send({ code: `${member}.${n}`, name: "Place" })
            .expect(201),
        ),
      ),
    );
    const made = (await trail("kind=place")).filter(({ code }) => /^m-.*\.\d$/.test(code));
    expect(made).toHaveLength(30);
    for (const { code, by } of made) expect(by?.member).toBe(code.split(".")[0]);
    const [one] = owners;
    const own = await trail(`kind=place&person=${one?.id}`);
    expect(own.map(({ by }) => by)).toEqual(
      Array(5).fill({ person: one?.id, member: one?.member, name: one?.name }),
    );
  });

  it("and nobody once they have left, though what they did stays", async () => {
    const leaver = await makePerson(first, { club: "vale", roles: ["layout owner"] });
    await leaver.agent.post(`${CLUB}/places`).send({ code: "of-leaver", name: "Place" }).expect(201);
    await leaver.agent.post("/api/me/erase").send({ password: PASSWORD }).expect(204);
    const [entry] = await trail("kind=place&code=of-leaver");
    expect([entry?.deed, entry?.by]).toEqual(["made", null]);
    const { rows } = await runSql<{ row: string }>(first.connection, "select t::text as row from trail t");
    const telling = rows.filter(({ row }) => row.includes(leaver.id) || row.includes(leaver.name));
    expect(telling).toEqual([]);
  });
});

it("a stream of events ends with the sign-in that opened it, and not with another of the same person", async () => {
  const person = await makePerson(first, { club: "vale" });
  const { port } = first.app.server.address() as AddressInfo;
  const open = async (cookie: string) => {
    const hearer = listenTo(`http://127.0.0.1:${port}${CLUB}/events`, { cookie });
    expect((await hearer.opened).statusCode).toBe(200);
    return hearer;
  };
  const signIn = await first.request
    .post("/api/sign-in")
    .set("sec-fetch-site", "same-origin")
    .send({ email: person.email, password: PASSWORD });
  const other = String(signIn.headers["set-cookie"]).split(";")[0] ?? "";
  const [leaving, staying] = [await open(person.cookie), await open(other)];
  await person.agent.post("/api/sign-out").set("sec-fetch-site", "same-origin").expect(204);
  await vi.advanceTimersByTimeAsync(15_000);
  await leaving.ended;
  await secretary.agent.post(`${CLUB}/places`).send({ code: "still-heard", name: "Place" }).expect(201);
  await expect.poll(() => staying.codes().at(-1)).toBe("still-heard");
  await staying.hangUp();
});
