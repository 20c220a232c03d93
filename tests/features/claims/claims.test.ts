import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import type { Board } from "../../../shared/claims.ts";
import { localActor } from "../../../src/http/actor.ts";
import { testApp } from "../../support/test-app.ts";
import {
  actorAs,
  claimDocument,
  makeClaimClub,
  moveNight,
  NIGHT,
  openNight,
  run,
  SLOT,
  TRAINS,
} from "./claim-club.ts";

let actor = localActor;
let app: Awaited<ReturnType<typeof testApp>>;
let clubs = 0;

beforeAll(async () => {
  app = await testApp({ authenticate: async () => actor });
});
afterEach(() => {
  actor = localActor;
});
afterAll(() => app.close());

/** A club with its night open for claims. */
async function openClub(): Promise<string> {
  const club = await makeClaimClub(app, `c${++clubs}`);
  await openNight(app, club);
  return club;
}

const claim = (club: string, body: object) => app.request.post(`${club}${SLOT}/claims`).send(body);
const claimed = async (club: string, body: object) => (await claim(club, body).expect(201)).body;
const giveBack = (club: string, id: string) => app.request.delete(`${club}${SLOT}/claims/${id}`);
const wait = (club: string, body: object) => app.request.post(`${club}${SLOT}/queue`).send(body);
const assign = (club: string, body: object) => app.request.put(`${club}${SLOT}/assignments`).send(body);

async function boardOf(club: string, member: string): Promise<Board> {
  actor = actorAs(club, member);
  const { body } = await app.request.get(`${club}${SLOT}/board`).expect(200);
  actor = localActor;
  return body;
}

const rowOf = (board: Board, train: string) => board.trains.find(({ code }) => code === train);

async function refusalOf(request: ReturnType<typeof claim>): Promise<string> {
  const { status, body } = await request;
  return `${status} ${body.code}: ${body.detail.split(". ")[0]}.`;
}

describe("a claim", () => {
  it("is the member's own, with a fitting handset chosen, from pick-up to hand-in", async () => {
    const club = await openClub();
    actor = actorAs(club, "cy");
    const { body, headers } = await claim(club, { train: "1" }).expect(201);
    expect(body).toEqual({
      id: expect.any(String),
      slot: "one",
      kind: "train",
      code: "1",
      member: "cy",
      name: "Cy Marlowe",
      // reaches every place that train 1 runs through, and leaves the radio set for others
      handset: "T1",
      // departs 10:10, which is 19:02:30, picked up a minute before; arrives 10:20, handed in half a minute after
      from: "2027-03-20T19:01:30.000Z",
      until: "2027-03-20T19:05:30.000Z",
      assigned: false,
      problems: [],
    });
    expect(headers.location).toBe(`${club}${SLOT}/claims/${body.id}`);
  });

  it("takes the handset that is asked for, and none on a controller", async () => {
    const club = await openClub();
    expect((await claimed(club, { train: "1", member: "cy", handset: "H1" })).handset).toBe("H1");
    expect((await claimed(club, { train: "7", member: "cy" })).handset).toBeNull();
    expect(await refusalOf(claim(club, { train: "7", member: "dee", handset: "H1" }))).toContain("409 taken");
  });

  it("is refused when somebody has it, with their name", async () => {
    const club = await openClub();
    await claimed(club, { train: "1", member: "ada" });
    expect(await refusalOf(claim(club, { train: "1", member: "cy" }))).toBe(
      "409 taken: Ada Fenwright has train 1.",
    );
  });

  it("is refused when the member has something else at the same time", async () => {
    const club = await openClub();
    await claimed(club, { train: "1", member: "cy" });
    expect(await refusalOf(claim(club, { train: "4", member: "cy" }))).toBe(
      "409 drives-another-then: Cy Marlowe has train 1 from 19:01 to 19:05.",
    );
  });

  it("is refused when there is no time to walk, as stated or as the crow flies, and not when there is", async () => {
    const club = await openClub();
    await claimed(club, { train: "1", member: "cy" });
    // train 1 ends at 19:05:30 in the east; train 3 is picked up at 19:07:00 in the west, 90 s later
    const walks = (seconds: number) =>
      app.request
        .put(`${club}/walks/west-east`)
        .set("if-match", "*")
        .send({ code: "west-east", from: "west", to: "east", seconds })
        .expect(200);
    await walks(91);
    expect(await refusalOf(claim(club, { train: "3", member: "cy" }))).toBe(
      "409 walk-too-short: From East yard, where train 1 ends, it is 1 min 31 s to West yard, where train 3 begins, and there are only 1 min 30 s between them.",
    );
    // train 2 starts where train 1 ends
    const near = await claimed(club, { train: "2", member: "cy" });
    await giveBack(club, near.id).expect(200);
    await walks(90);
    await claimed(club, { train: "3", member: "cy" });
  });

  it("takes a walk as stated, however short, and the check of the night does so too", async () => {
    // train 1 is handed in at 19:05:30 in the east, train 9 picked up at 19:05:45 in the west, 15 s later
    const trains = [...TRAINS, run("9", "10:27", "10:37")];
    const versions = [{ number: 1, state: "issued", trains }];
    const timetables = [{ code: "night", name: "Of the night", versions }];
    const club = await makeClaimClub(app, `c${++clubs}`, { ...claimDocument, timetables });
    await openNight(app, club);
    const walks = (seconds: number) =>
      app.request
        .put(`${club}/walks/west-east`)
        .set("if-match", "*")
        .send({ code: "west-east", from: "west", to: "east", seconds })
        .expect(200);
    await walks(16);
    await claimed(club, { train: "1", member: "cy" });
    expect(await refusalOf(claim(club, { train: "9", member: "cy" }))).toBe(
      "409 walk-too-short: From East yard, where train 1 ends, it is 16 s to West yard, where train 9 begins, and there are only 15 s between them.",
    );
    await walks(15);
    await claimed(club, { train: "9", member: "cy" });
    const check = async () => (await app.request.post(`${club}${SLOT}/check`).expect(200)).body;
    const walksOf = async () =>
      (await check()).findings
        .filter(({ code }: { code: string }) => code === "walk-too-short")
        .map(({ measured, limit }: { measured: number; limit: number }) => [measured, limit]);
    expect(await walksOf()).toEqual([]);
    await walks(16);
    expect(await walksOf()).toEqual([[15_000, 16_000]]);
  });

  it("reckons a walk that nobody has measured by the club's policy, and the check of the night does so too", async () => {
    const club = await openClub();
    await claimed(club, { train: "1", member: "cy" });
    await claimed(club, { train: "3", member: "cy" });
    const check = async () => {
      const { body } = await app.request.post(`${club}${SLOT}/check`).expect(200);
      return body.findings.filter(({ members }: { members: string[] }) => members.length > 0);
    };
    expect(await check()).toEqual([]);
    // the west and the east 100 m apart, a metre a second and 1.4 times as far as the crow flies: 140 s
    await app.request.delete(`${club}/walks/west-east`).set("if-match", "*").expect(204);
    for (const [place, xMm] of [
      ["west", 0],
      ["east", 100_000],
    ] as const) {
      const { version, updatedAt, ...body } = (await app.request.get(`${club}/places/${place}`).expect(200))
        .body;
      await app.request
        .put(`${club}/places/${place}`)
        .set("if-match", "*")
        .send({ ...body, xMm, yMm: 0 })
        .expect(200);
    }
    expect(await check()).toMatchObject([
      { code: "walk-too-short", members: ["cy"], trains: ["1", "3"], measured: 90_000, limit: 140_000 },
    ]);
    const stored = (await app.request.get(club).expect(200)).body;
    const { version, updatedAt, ...record } = stored;
    await app.request
      .put(club)
      .set("if-match", "*")
      .send({ ...record, policy: { ...record.policy, walkingMmPerSecond: 2_000 } })
      .expect(200);
    expect(await check()).toEqual([]);
  });

  it("is refused when the member is not passed for it", async () => {
    const club = await openClub();
    expect(await refusalOf(claim(club, { train: "5", member: "cy" }))).toBe(
      "409 not-passed: Train 5 asks for main line, and Cy Marlowe is not passed for it.",
    );
    await claimed(club, { train: "5", member: "ada" });
  });

  it("of a junior is refused until an adult has something in the slot, or says that they come", async () => {
    const club = await openClub();
    expect(await refusalOf(claim(club, { train: "1", member: "bo" }))).toContain(
      "409 junior-alone: Bo Larkin",
    );
    await app.request.post(`${club}${NIGHT}/booking/coming`).send({ member: "cy", coming: true }).expect(200);
    await claimed(club, { train: "1", member: "bo" });
    const other = await openClub();
    await claimed(other, { train: "8", member: "ada" });
    await claimed(other, { train: "1", member: "bo" });
  });

  it("is refused with a handset that is out of reach, not ready, not there, or in other hands", async () => {
    const club = await openClub();
    const of = (handset: string, train = "1") => refusalOf(claim(club, { train, member: "cy", handset }));
    expect(await of("T2")).toBe(
      "409 handset-not-usable: Handset T2 cannot be used at Middle halt, where train 1 runs.",
    );
    expect(await of("H2")).toBe("409 handset-not-usable: Handset H2 is faulty.");
    expect(await of("H9")).toBe("409 handset-not-usable: The club has no handset H9.");
    expect(await of("H1", "7")).toContain("handset-not-usable: Train 7 is driven from a controller");
    await claimed(club, { train: "4", member: "ada", handset: "H1" });
    expect(await of("H1")).toBe("409 handset-taken: Ada Fenwright has handset H1 from 19:02 to 19:06.");
    await claimed(club, { train: "1", member: "cy" });
    // train 3 runs beside nobody: T1 is back by then
    await claimed(club, { train: "3", member: "dee", handset: "T1" });
    expect(await refusalOf(claim(club, { train: "2", member: "ada", handset: "T1" }))).toContain(
      "409 handset-taken: Dee Oakes has handset T1",
    );
  });

  it("is refused when every handset that fits is in other hands, or its battery would not last the evening", async () => {
    const club = await openClub();
    const { body } = await app.request.get(`${club}/handsets/H1`).expect(200);
    const { version: _, updatedAt: __, ...handset } = body;
    await app.request
      .put(`${club}/handsets/H1`)
      .set("if-match", "*")
      .send({ ...handset, batteryMinutes: 10 })
      .expect(200);
    await claimed(club, { train: "1", member: "cy", handset: "H1" });
    expect(await refusalOf(claim(club, { train: "5", member: "ada", handset: "H1" }))).toBe(
      "409 handset-taken: Handset H1 would be away from the desk for 16 min 30 s in all, longer than its battery lasts.",
    );
    await claimed(club, { train: "4", member: "ada" });
    const { body: board } = await app.request.get(`${club}${SLOT}/board`).expect(200);
    expect(board.trains.find((row: { code: string }) => row.code === "4").claim.handset).toBe("T1");
    const gone = await app.request.delete(`${club}/handsets/T1`).set("if-match", "*").expect(409);
    expect([gone.body.code, gone.body.detail]).toEqual([
      "booking-holds",
      expect.stringMatching(/^Handset T1 is in a claim of a night\./),
    ]);
  });

  it("is refused before the night is open, once it is locked, and when it is over", async () => {
    const club = await makeClaimClub(app, `c${++clubs}`);
    const try_ = () => refusalOf(claim(club, { train: "1", member: "cy" }));
    expect(await try_()).toContain("409 session-not-open: The night is a draft");
    await openNight(app, club);
    for (const to of ["locked", "running", "finished"]) {
      await moveNight(app, club, { to });
      expect(await try_()).toContain("409 session-not-open");
    }
  });

  it("of a second train is refused until the date of the rule; duties and the secretary's word are not", async () => {
    const club = await openClub();
    const rule = (secondClaimFrom: string) =>
      app.request
        .put(`${club}${NIGHT}/booking`)
        .set("if-match", "*")
        .send({ venueNote: "", noteToAll: "", secondClaimFrom })
        .expect(200);
    await app.request
      .post(`${club}${SLOT}/duties`)
      .send({ code: "box", name: "Box", startsAt: "2027-03-20T20:30" })
      .expect(201);
    await rule("2999-01-01T18:00:00Z");
    await claimed(club, { train: "1", member: "cy" });
    expect(await refusalOf(claim(club, { train: "6", member: "cy" }))).toBe(
      "409 second-claim-too-early: Cy Marlowe has train 1; a second train may be claimed from 2999-01-01, 18:00.",
    );
    await claimed(club, { duty: "box", member: "cy" });
    await assign(club, { train: "6", member: "cy" }).expect(200);
    await rule("2020-01-01T18:00:00Z");
    await claimed(club, { train: "8", member: "cy" });
  });

  it("is for oneself: only the secretary claims for others", async () => {
    const club = await openClub();
    actor = actorAs(club, "cy");
    expect((await claim(club, { train: "1", member: "dee" }).expect(403)).body.code).toBe("not-permitted");
    actor = actorAs(club, "ada", "secretary");
    expect((await claimed(club, { train: "1", member: "dee" })).member).toBe("dee");
  });

  it("names what and whom there is", async () => {
    const club = await openClub();
    const pointers = async (body: object, slot = "one") => {
      const answer = await app.request.post(`${club}${NIGHT}/slots/${slot}/claims`).send(body);
      return [answer.status, answer.body.errors?.[0]?.pointer];
    };
    expect(await pointers({ train: "99", member: "cy" })).toEqual([422, "/body/train"]);
    expect(await pointers({ duty: "none", member: "cy" })).toEqual([422, "/body/duty"]);
    expect(await pointers({ train: "1", member: "nobody" })).toEqual([422, "/body/member"]);
    expect(await pointers({ train: "1" })).toEqual([422, "/body/member"]);
    expect(await pointers({ train: "1", duty: "box", member: "cy" })).toEqual([400, "/body"]);
    expect(await pointers({ train: "1", member: "cy" }, "none")).toEqual([404, undefined]);
  });

  it("sent again with its key is answered the same again, also when it was refused", async () => {
    const club = await openClub();
    const send = (body: object, key: string) => claim(club, body).set("idempotency-key", key);
    const first = await send({ train: "1", member: "cy" }, "one-press").expect(201);
    const again = await send({ member: "cy", train: "1" }, "one-press").expect(201);
    expect(again.body).toEqual(first.body);
    expect((await send({ train: "6", member: "cy" }, "one-press").expect(422)).body.code).toBe(
      "idempotency-key-reused",
    );
    const refused = await send({ train: "1", member: "dee" }, "other-press").expect(409);
    await giveBack(club, first.body.id).expect(200);
    expect((await send({ train: "1", member: "dee" }, "other-press").expect(409)).body).toEqual(refused.body);
    await send({ train: "1", member: "dee" }, "third-press").expect(201);
    await send({ train: "1", member: "dee" }, "short").expect(400);
  });
});

describe("two buttons at the same instant", () => {
  it("of sixteen members that claim one train one has it, and the others hear who", async () => {
    const club = await openClub();
    const members = Array.from({ length: 16 }, (_, at) => ({ code: `x${at}`, name: `Member ${at}` }));
    for (const member of members) await app.request.post(`${club}/members`).send(member).expect(201);
    const answers = await Promise.all(members.map(({ code }) => claim(club, { train: "6", member: code })));
    expect(answers.map(({ status }) => status).sort()).toEqual([201, ...Array(15).fill(409)]);
    for (const { status, body } of answers) if (status === 409) expect(body.code).toBe("taken");
  });

  it("a member who claims two trains of the same time gets one", async () => {
    const club = await openClub();
    const answers = await Promise.all(["1", "4"].map((train) => claim(club, { train, member: "cy" })));
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
    expect(answers.find(({ status }) => status === 409)?.body.code).toBe("drives-another-then");
  });

  it("two trains that would take the same handset get two, or one of them none", async () => {
    const club = await openClub();
    const answers = await Promise.all([
      claim(club, { train: "1", member: "cy" }),
      claim(club, { train: "4", member: "dee" }),
    ]);
    expect(answers.map(({ status }) => status)).toEqual([201, 201]);
    expect(answers.map(({ body }) => body.handset).sort()).toEqual(["H1", "T1"]);
    const other = await openClub();
    const same = await Promise.all([
      claim(other, { train: "1", member: "cy", handset: "H1" }),
      claim(other, { train: "4", member: "dee", handset: "H1" }),
    ]);
    expect(same.map(({ status }) => status).sort()).toEqual([201, 409]);
    expect(same.find(({ status }) => status === 409)?.body.code).toBe("handset-taken");
  });

  it("the last adult does not leave while a junior comes", async () => {
    for (let round = 0; round < 6; round++) {
      const club = await openClub();
      const adult = await claimed(club, { train: "1", member: "ada" });
      const [left, came] = await Promise.all([
        giveBack(club, adult.id),
        claim(club, { train: "6", member: "bo" }),
      ]);
      expect([
        [200, "junior-alone"],
        ["last-adult", 201],
      ]).toContainEqual([
        left.body.code ?? left.status,
        came.body.code === "6" ? came.status : came.body.code,
      ]);
    }
  });
});

describe("giving back", () => {
  it("frees it, for oneself alone, while the night is open", async () => {
    const club = await openClub();
    const { id } = await claimed(club, { train: "1", member: "cy" });
    actor = actorAs(club, "dee");
    await giveBack(club, id).expect(403);
    actor = actorAs(club, "cy");
    const { body } = await giveBack(club, id).expect(200);
    expect([body.claim.id, body.next]).toEqual([id, null]);
    await giveBack(club, id).expect(404);
    actor = localActor;
    expect(rowOf(await boardOf(club, "cy"), "1")).toMatchObject({ claim: null, may: true });
  });

  it("is the secretary's once the night is locked", async () => {
    const club = await openClub();
    const { id } = await claimed(club, { train: "1", member: "cy" });
    await moveNight(app, club, { to: "locked" });
    actor = actorAs(club, "cy");
    expect((await giveBack(club, id).expect(409)).body.code).toBe("session-not-open");
    actor = actorAs(club, "ada", "secretary");
    await giveBack(club, id).expect(200);
  });

  it("passes it to who waits first and may have it, once, with a handset; who may not stays in the queue", async () => {
    const club = await openClub();
    const { id } = await claimed(club, { train: "1", member: "cy" });
    for (const member of ["ada", "dee", "bo"]) await wait(club, { train: "1", member }).expect(201);
    // drives at the same time by now
    await claimed(club, { train: "4", member: "ada" });
    const { body } = await giveBack(club, id).expect(200);
    expect(body.next).toMatchObject({ member: "dee", code: "1", handset: "T1", assigned: false });
    const row = rowOf(await boardOf(club, "ada"), "1");
    expect(row?.claim?.member).toBe("dee");
    expect(row?.queue).toEqual({ length: 2, place: 1 });
  });

  it("by two at the same time passes it on once", async () => {
    const club = await openClub();
    const { id } = await claimed(club, { train: "1", member: "cy" });
    for (const member of ["ada", "dee"]) await wait(club, { train: "1", member }).expect(201);
    const answers = await Promise.all([giveBack(club, id), giveBack(club, id), giveBack(club, id)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 404, 404]);
    const row = rowOf(await boardOf(club, "dee"), "1");
    expect([row?.claim?.member, row?.queue.length, row?.queue.place]).toEqual(["ada", 1, 1]);
  });

  it("by the last adult is refused while a junior of the slot has something", async () => {
    const club = await openClub();
    const { id } = await claimed(club, { train: "1", member: "ada" });
    await claimed(club, { train: "6", member: "bo" });
    const { body } = await giveBack(club, id).expect(409);
    expect(body.code).toBe("last-adult");
    await app.request
      .post(`${club}${NIGHT}/booking/coming`)
      .send({ member: "dee", coming: true })
      .expect(200);
    await giveBack(club, id).expect(200);
    const stays = await app.request
      .post(`${club}${NIGHT}/booking/coming`)
      .send({ member: "dee", coming: false })
      .expect(409);
    expect(stays.body.code).toBe("last-adult");
  });
});

describe("the queue", () => {
  it("is for what another has, once, and can be left", async () => {
    const club = await openClub();
    expect((await wait(club, { train: "1", member: "cy" }).expect(409)).body.code).toBe("already-done");
    await claimed(club, { train: "1", member: "cy" });
    expect((await wait(club, { train: "1", member: "cy" }).expect(409)).body.code).toBe("already-done");
    const first = await wait(club, { train: "1", member: "dee" }).expect(201);
    expect(first.body).toMatchObject({ code: "1", member: "dee", place: 1, length: 1 });
    expect((await wait(club, { train: "1", member: "dee" }).expect(409)).body.code).toBe("already-done");
    expect((await wait(club, { train: "1", member: "ada" }).expect(201)).body.place).toBe(2);
    const leave = () => app.request.delete(`${club}${SLOT}/queue`).send({ train: "1", member: "dee" });
    await leave().expect(204);
    await leave().expect(404);
    await claimed(club, { train: "5", member: "ada" });
    expect((await wait(club, { train: "5", member: "dee" }).expect(409)).body.code).toBe("not-passed");
  });
});

describe("a swap", () => {
  async function two(club: string) {
    const early = await claimed(club, { train: "1", member: "cy" });
    const late = await claimed(club, { train: "6", member: "dee" });
    return { early, late };
  }
  const offer = (club: string, gives: string, wants: string) =>
    app.request.post(`${club}${SLOT}/swaps`).send({ gives, wants, message: "Please" });
  const answer = (club: string, id: string, how: string) =>
    app.request.post(`${club}${SLOT}/swaps/${id}/${how}`);

  it("is offered by one, accepted by the other, and both change hands", async () => {
    const club = await openClub();
    const { early, late } = await two(club);
    actor = actorAs(club, "dee");
    await offer(club, early.id, late.id).expect(403);
    actor = actorAs(club, "cy");
    const { body } = await offer(club, early.id, late.id).expect(201);
    expect(body).toMatchObject({
      from: { member: "cy" },
      to: { member: "dee" },
      gives: { code: "1" },
      wants: { code: "6" },
    });
    expect((await boardOf(club, "dee")).swaps.map(({ id }) => id)).toEqual([body.id]);
    expect((await boardOf(club, "ada")).swaps).toEqual([]);
    actor = actorAs(club, "cy");
    await answer(club, body.id, "accept").expect(403);
    actor = actorAs(club, "dee");
    const done = await answer(club, body.id, "accept").expect(200);
    expect(
      done.body.claims.map((one: { code: string; member: string }) => `${one.code} ${one.member}`),
    ).toEqual(["1 dee", "6 cy"]);
    await answer(club, body.id, "accept").expect(404);
    expect((await boardOf(club, "dee")).evening.map(({ claim: { code } }) => code)).toEqual(["1"]);
  });

  it("of two trains at the same time is one moment, in which nobody has both", async () => {
    const club = await openClub();
    const one = await claimed(club, { train: "1", member: "cy" });
    const other = await claimed(club, { train: "4", member: "dee" });
    const { body } = await offer(club, one.id, other.id).expect(201);
    await answer(club, body.id, "accept").expect(200);
    expect(rowOf(await boardOf(club, "cy"), "4")?.mine).toBe(true);
  });

  it("does not happen where one of them may not have what they would get", async () => {
    const club = await openClub();
    const one = await claimed(club, { train: "5", member: "ada" });
    const other = await claimed(club, { train: "6", member: "dee" });
    const { body } = await offer(club, one.id, other.id).expect(201);
    expect((await answer(club, body.id, "accept").expect(409)).body.code).toBe("not-passed");
    expect(rowOf(await boardOf(club, "ada"), "5")?.mine).toBe(true);
  });

  it("is refused by whom it was offered to, withdrawn by who offered it, and ends with its claims", async () => {
    const club = await openClub();
    const { early, late } = await two(club);
    const make = async () => (await offer(club, early.id, late.id).expect(201)).body.id;
    const refused = await make();
    actor = actorAs(club, "cy");
    await answer(club, refused, "refuse").expect(403);
    actor = actorAs(club, "dee");
    await answer(club, refused, "withdraw").expect(403);
    await answer(club, refused, "refuse").expect(204);
    actor = localActor;
    const withdrawn = await make();
    actor = actorAs(club, "cy");
    await answer(club, withdrawn, "withdraw").expect(204);
    actor = localActor;
    const orphan = await make();
    await giveBack(club, late.id).expect(200);
    await answer(club, orphan, "accept").expect(404);
  });

  it("accepted while one of the claims is given back is done or not, never by half", async () => {
    for (let round = 0; round < 6; round++) {
      const club = await openClub();
      const { early, late } = await two(club);
      const { body } = await offer(club, early.id, late.id).expect(201);
      const [accepted, given] = await Promise.all([
        answer(club, body.id, "accept"),
        giveBack(club, early.id),
      ]);
      expect(given.status).toBe(200);
      expect([200, 404]).toContain(accepted.status);
      expect(given.body.claim.member).toBe(accepted.status === 200 ? "dee" : "cy");
    }
  });
});

describe("the secretary", () => {
  it("assigns, reassigns and takes off, also once the night is locked; what is impossible stays so", async () => {
    const club = await openClub();
    const first = await assign(club, { train: "1", member: "cy" }).expect(200);
    expect([first.body.before, first.body.now.member, first.body.now.assigned]).toEqual([null, "cy", true]);
    await moveNight(app, club, { to: "locked" });
    const second = await assign(club, { train: "1", member: "dee", handset: "H1" }).expect(200);
    expect([second.body.before.member, second.body.now.member, second.body.now.handset]).toEqual([
      "cy",
      "dee",
      "H1",
    ]);
    expect((await assign(club, { train: "4", member: "dee" }).expect(409)).body.code).toBe(
      "drives-another-then",
    );
    expect((await assign(club, { train: "5", member: "dee" }).expect(409)).body.code).toBe("not-passed");
    const off = await assign(club, { train: "1", member: null }).expect(200);
    expect([off.body.before.member, off.body.now]).toEqual(["dee", null]);
    actor = actorAs(club, "cy", "session marshal");
    await assign(club, { train: "1", member: "cy" }).expect(403);
  });

  it("gives another handset, as does whoever has the train", async () => {
    const club = await openClub();
    const { id } = await claimed(club, { train: "1", member: "cy", handset: "T1" });
    const change = (handset: string) =>
      app.request.put(`${club}${SLOT}/claims/${id}/handset`).send({ handset });
    actor = actorAs(club, "dee");
    await change("H1").expect(403);
    actor = actorAs(club, "cy");
    expect((await change("H1").expect(200)).body.handset).toBe("H1");
    expect((await change("T2").expect(409)).body.code).toBe("handset-not-usable");
  });

  it("sees who has driven how much in a year, least first", async () => {
    const club = await openClub();
    await claimed(club, { train: "1", member: "cy" });
    await claimed(club, { train: "6", member: "cy" });
    await claimed(club, { train: "8", member: "dee" });
    const fairness = async (year = 2027) =>
      (await app.request.get(`${club}/fairness?year=${year}`).expect(200)).body.items.map(
        (item: Record<string, unknown>) => [
          item.member,
          item.nights,
          item.trains,
          item.drivenMinutes,
          item.coming,
        ],
      );
    expect(await fairness()).toEqual([
      ["ada", 0, 0, 0, 0],
      ["bo", 0, 0, 0, 0],
      ["dee", 0, 0, 0, 1],
      ["cy", 0, 0, 0, 2],
    ]);
    for (const to of ["locked", "running", "finished"]) await moveNight(app, club, { to });
    // two and a half real minutes each, without the time for the handset
    expect(await fairness()).toEqual([
      ["ada", 0, 0, 0, 0],
      ["bo", 0, 0, 0, 0],
      ["dee", 1, 1, 3, 0],
      ["cy", 1, 2, 5, 0],
    ]);
    expect((await fairness(2026)).every((row: unknown[]) => row[2] === 0)).toBe(true);
    actor = actorAs(club, "cy");
    await app.request.get(`${club}/fairness?year=2027`).expect(403);
  });
});

describe("the board", () => {
  it("says of each train whether one may claim it, with which handset, how far one walks, or why not", async () => {
    const club = await openClub();
    await claimed(club, { train: "1", member: "cy" });
    await claimed(club, { train: "6", member: "dee" });
    const board = await boardOf(club, "cy");
    expect(board.me).toEqual({
      member: "cy",
      name: "Cy Marlowe",
      junior: false,
      passedFor: [],
      coming: false,
    });
    expect(board.trains.map(({ code }) => code)).toEqual(["1", "4", "2", "3", "5", "6", "7", "8"]);
    expect(rowOf(board, "1")).toMatchObject({ mine: true, may: false, why: null, walk: null });
    expect(rowOf(board, "4")?.why?.code).toBe("drives-another-then");
    expect(rowOf(board, "5")?.why?.code).toBe("not-passed");
    expect(rowOf(board, "6")).toMatchObject({ may: false, mayQueue: true, why: { code: "taken" } });
    expect(rowOf(board, "8")).toMatchObject({
      may: true,
      handset: "T1",
      handsets: ["T1", "H1"],
      control: "handset",
      from: { place: "west", road: "W1", layout: "13:00", at: "2027-03-20T19:45:00.000Z" },
      to: { place: "east", road: "E1", layout: "13:10" },
      walk: { from: "east", fromName: "East yard", seconds: 60 },
    });
    expect(rowOf(board, "7")).toMatchObject({
      control: "controller",
      handset: null,
      handsets: [],
      may: true,
    });
    expect(board.handsets.map(({ code }) => code)).toEqual(["H1", "T1"]);
  });

  it("has one's evening on top: what, when, where, with what, and who hands over to whom", async () => {
    const club = await openClub();
    await claimed(club, { train: "1", member: "cy", handset: "T1" });
    await claimed(club, { train: "2", member: "dee", handset: "T1" });
    const { evening } = await boardOf(club, "dee");
    expect(evening).toHaveLength(1);
    expect(evening[0]).toMatchObject({
      claim: { code: "2" },
      from: { placeName: "East yard", roadName: "Section E1", layout: "10:30" },
      locomotives: [{ code: "E7", name: "Goods engine", address: { kind: "long", number: 4_711 } }],
      handset: { code: "T1" },
      takesOverFrom: { train: "1", driver: { member: "cy" } },
      handsOverTo: null,
      handsetFrom: { member: "cy" },
      handsetTo: null,
    });
    actor = actorAs(club, "dee");
    const mine = await app.request.get(`${club}${NIGHT}/my-evening`).expect(200);
    expect(mine.body.items).toEqual(evening);
    await app.request.get(`${club}${NIGHT}/my-evening?member=cy`).expect(403);
    actor = actorAs(club, "dee", "session marshal");
    expect((await app.request.get(`${club}${NIGHT}/my-evening?member=cy`).expect(200)).body.member.name).toBe(
      "Cy Marlowe",
    );
  });

  it("follows what changes: a handset that breaks is a claim's problem, a member's passing opens a train", async () => {
    const club = await openClub();
    await claimed(club, { train: "1", member: "cy", handset: "T1" });
    const change = async (path: string, changed: object) => {
      const { body } = await app.request.get(`${club}/${path}`).expect(200);
      const { version: _, updatedAt: __, ...record } = body;
      await app.request
        .put(`${club}/${path}`)
        .set("if-match", "*")
        .send({ ...record, ...changed })
        .expect(200);
    };
    await change("handsets/T1", { state: "faulty" });
    await change("members/cy", { passedFor: ["main line"] });
    const board = await boardOf(club, "cy");
    expect(rowOf(board, "1")?.claim?.problems).toEqual([
      { code: "handset-not-usable", sentence: "Handset T1 is faulty." },
    ]);
    expect(rowOf(board, "5")?.may).toBe(true);
    await change("members/cy", { code: "cyrus" });
    expect(rowOf(await boardOf(club, "cyrus"), "1")?.mine).toBe(true);
    const gone = await app.request.delete(`${club}/members/cyrus`).set("if-match", "*").expect(409);
    expect(gone.body.code).toBe("booking-holds");
  });

  it("shows those who are in no list of members everything but what is theirs", async () => {
    const club = await openClub();
    const { body } = await app.request.get(`${club}${SLOT}/board`).expect(200);
    expect([body.me, body.evening, body.trains[0].may, body.trains[0].why]).toEqual([null, [], false, null]);
  });

  it("keeps claims from vanishing under a night: it is not a draft again, nor removed, while there are any", async () => {
    const club = await openClub();
    const { id } = await claimed(club, { train: "1", member: "cy" });
    const draft = () =>
      app.request.post(`${club}${NIGHT}/booking/moves`).set("if-match", "*").send({ to: "draft" });
    expect((await draft().expect(409)).body.code).toBe("booking-holds");
    await giveBack(club, id).expect(200);
    await draft().expect(200);
  });
});
