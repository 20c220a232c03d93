import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { signInEnded } from "../../../src/web/api/ask.ts";
import { askMe, askMeAgain, forgetMe, meState } from "../../../src/web/api/me.ts";
import { answering, type Reply } from "./answering.ts";

const ADA = { person: { name: "Ada Fenwright", email: "ada@example.org" }, clubs: [] };
const known: Reply = { status: 200, body: JSON.stringify(ADA) };
const nobody: Reply = { status: 401, body: JSON.stringify({ title: "Who asks?", code: "not-signed-in" }) };

describe("who is signed in", () => {
  let service: Awaited<ReturnType<typeof answering>>;
  let reply: Reply;
  beforeEach(async () => {
    service = await answering(() => reply);
  });
  afterEach(() => {
    forgetMe();
    return service.close();
  });

  it("is asked once, however many want to know", async () => {
    reply = known;
    await Promise.all([askMe(), askMe()]);
    await askMe();
    expect(meState()).toEqual({ status: "known", me: ADA });
    expect(service.arrived).toHaveLength(1);
  });

  it("is nobody after a 401, which is not a sign-in that has ended", async () => {
    reply = nobody;
    await askMe();
    expect(meState()).toEqual({ status: "signed-out" });
    expect(signInEnded.value).toBe(false);
  });

  it("stays who it was while the sign-in has ended, so that what is typed is not lost", async () => {
    reply = known;
    await askMe();
    reply = nobody;
    await askMeAgain();
    expect(meState()).toEqual({ status: "known", me: ADA });
    expect(signInEnded.value).toBe(true);
    reply = known;
    await askMeAgain();
    expect(signInEnded.value).toBe(false);
  });

  it("is asked anew after no answer came", async () => {
    reply = null;
    await askMe();
    expect(meState()).toMatchObject({ status: "failed", problem: { status: 0 } });
    reply = known;
    await askMe();
    expect(meState().status).toBe("known");
  });
});
