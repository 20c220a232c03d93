import { Socket } from "node:net";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { problem, REFUSAL_CODES, REFUSALS } from "../../shared/errors.ts";
import { LIMITS } from "../../shared/limits.ts";
import { Refusal } from "../../src/lib/refusal.ts";
import { probeApp } from "./probe-app.ts";

let probe: Awaited<ReturnType<typeof probeApp>>;

beforeAll(async () => {
  probe = await probeApp();
});
afterAll(() => probe.close());

const post = (body: unknown) => probe.request.post("/api/probe").send(body as object);

// form of every refusal: RFC 9457 section 3
function expectProblem(
  response: { status: number; headers: Record<string, string>; body: unknown },
  code: string,
) {
  expect(response.headers["content-type"]).toMatch(/^application\/problem\+json/);
  const body = problem.parse(response.body);
  expect(body).toMatchObject({ code, type: `/problems/${code}`, status: response.status });
  return body;
}

describe("a field that is wrong is named, with what it must be", () => {
  const good = { name: "L1", currentMa: 5 };
  it.each([
    ["is missing", { name: "L1" }, "/body/currentMa", "Is missing: it must be a number."],
    ["is of another kind", { ...good, name: 4 }, "/body/name", "Must be a string, not a number."],
    ["is below its least", { ...good, currentMa: -1 }, "/body/currentMa", "Must be at least 0."],
    [
      "is no whole number",
      { ...good, currentMa: 1.5 },
      "/body/currentMa",
      "Must be a whole number, not a fraction.",
    ],
    ["is too long", { ...good, name: "abcdef" }, "/body/name", "Must have at most 5 characters."],
    ["is empty", { ...good, name: "" }, "/body/name", "Must have at least 1 character."],
    ["is none of its kinds", { ...good, kind: "bus" }, "/body/kind", 'Must be one of "rake", "train".'],
    ["holds too few", { ...good, few: [] }, "/body/few", "Must have at least 1 entry."],
    ["lies deep inside", { ...good, inner: [{ n: 1 }, { n: 0 }] }, "/body/inner/1/n", "Must be more than 0."],
    [
      "is unknown",
      { ...good, nmae: 1 },
      "/body/nmae",
      "Is not a field here: check its spelling, or leave it out.",
    ],
    // RFC 6901 section 3
    ["has an odd name", { ...good, "odd/na~me": 1 }, "/body/odd~1na~0me", "Must be a boolean, not a number."],
    ["brings its own sentence", { ...good, code: "y" }, "/body/code", "Start it with x."],
  ])("one that %s", async (_, body, pointer, detail) => {
    const response = await post(body);
    expect(response.status).toBe(400);
    expect(expectProblem(response, "validation-failed").errors).toEqual([{ pointer, detail }]);
  });

  it("every one of several, up to fifty, in one answer", async () => {
    const two = expectProblem(await post({ name: "", currentMa: -1 }), "validation-failed");
    expect(two.errors?.map(({ pointer }) => pointer)).toEqual(["/body/name", "/body/currentMa"]);
    const inner = Array.from({ length: 400 }, () => ({ n: 0 }));
    const many = expectProblem(await post({ ...good, inner }), "validation-failed");
    expect(many.errors).toHaveLength(50);
    expect(many.detail).toMatch(/^400 places .*The first 50 are listed/);
  });

  it("a body that is missing, or is not an object", async () => {
    expect(
      expectProblem(await probe.request.post("/api/probe"), "validation-failed").errors?.[0]?.pointer,
    ).toBe("/body");
    expectProblem(await post([]), "validation-failed");
  });

  it("a number that is none", async () => {
    const word = await probe.request.get("/api/numbers?limit=many");
    expect(expectProblem(word, "validation-failed").errors).toEqual([
      { pointer: "/query/limit", detail: "Must be a number." },
    ]);
    // RFC 8259 section 6 lets a number be written that no double holds
    const huge = await probe.request
      .post("/api/probe")
      .set("content-type", "application/json")
      .send('{"name": "L1", "currentMa": 1e999}');
    expect(expectProblem(huge, "validation-failed").errors).toEqual([
      { pointer: "/body/currentMa", detail: "Must be a number, not a number too large to hold." },
    ]);
  });

  it("a query, too", async () => {
    const response = await probe.request.get("/api/numbers?limit=201&colour=red");
    expect(expectProblem(response, "validation-failed").errors?.map(({ pointer }) => pointer)).toEqual([
      "/query/limit",
      "/query/colour",
    ]);
  });
});

describe("a body that can't be read", () => {
  const send = (type: string, text: string) =>
    probe.request.post("/api/probe").set("content-type", type).send(text);

  it.each([
    ["cut short", '{"name": "L1"'],
    ["empty", ""],
    ["meant to change what objects are", '{"__proto__": {"x": 1}}'],
  ])("%s is malformed", async (_, text) => {
    const response = await send("application/json", text);
    expect(response.status).toBe(400);
    expectProblem(response, "malformed-json");
  });

  it("says where it stops being JSON", async () => {
    const response = await send("application/json", '{"name": "L1", currentMa: 1}');
    expect(expectProblem(response, "malformed-json").detail).toMatch(/position 15/);
  });

  // RFC 8259 section 8.1: JSON between systems is in UTF-8
  it("in another encoding is refused, and one with the mark of UTF-8 is read", async () => {
    const sendBytes = (bytes: Buffer) =>
      probe.request
        .post("/api/probe")
        .set("content-type", "application/json")
        .serialize((body) => body as unknown as string)
        .send(bytes);
    const text = '{"name": "Zü", "currentMa": 1}';
    const latin = await sendBytes(Buffer.from(text, "latin1"));
    expect(latin.status).toBe(400);
    expect(expectProblem(latin, "malformed-json").detail).toMatch(/^The body is not in UTF-8\./);
    const marked = await sendBytes(Buffer.from(`\ufeff${text}`));
    expect(marked.body).toEqual({ name: "Zü", currentMa: 1 });
  });

  it.each(["application/xml", "text/plain"])("of another type, %s, is refused by its type", async (type) => {
    const response = await send(type, "<a/>");
    expect(response.status).toBe(415);
    expectProblem(response, "unsupported-media-type");
  });

  it("of exactly the limit is read, one byte more is too large", async () => {
    const padded = (bytes: number) => `{"name":"L1","currentMa":1${" ".repeat(bytes - 27)}}`;
    expect((await send("application/json", padded(LIMITS.bodyBytes))).status).toBe(200);
    const response = await send("application/json", padded(LIMITS.bodyBytes + 1));
    expect(response.status).toBe(413);
    expectProblem(response, "body-too-large");
  });
});

describe("a body of 50 MB", () => {
  let address: string;
  beforeAll(async () => {
    address = await probe.app.listen({ port: 0, host: "127.0.0.1" });
  });

  const MEGABYTE = Buffer.alloc(1024 * 1024, " ");

  /** Sends what `head` announces, reading all the while; resolves with what came back and how much was sent by then. */
  async function upload(head: string, chunk: Buffer): Promise<{ answer: string; sentMb: number }> {
    const socket = new Socket();
    let answer = "";
    socket.setEncoding("utf8").on("data", (text) => {
      answer += text;
    });
    socket.on("error", () => {}); // the service may close while we still send
    socket.connect(Number(new URL(address).port), "127.0.0.1");
    socket.write(head);
    let sentMb = 0;
    while (sentMb < 50 && !socket.destroyed && !answer.includes("\r\n\r\n")) {
      await new Promise<unknown>((resolve) => {
        socket.write(chunk, resolve);
      });
      sentMb++;
      await new Promise((resolve) => setImmediate(resolve));
    }
    for (let waits = 0; waits < 200 && !answer.includes("\r\n\r\n"); waits++)
      await new Promise((resolve) => setTimeout(resolve, 10));
    socket.destroy();
    return { answer, sentMb };
  }

  const HEAD = "POST /api/probe HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\n";

  it("that says its length is refused before it has come", async () => {
    const { answer, sentMb } = await upload(`${HEAD}content-length: ${50 * 1024 * 1024}\r\n\r\n`, MEGABYTE);
    expect(answer).toMatch(/^HTTP\/1\.1 413 /);
    expect(answer).toContain('"code":"body-too-large"');
    expect(sentMb).toBeLessThan(8);
  });

  it("that comes without one is refused once the limit is passed", async () => {
    const chunk = Buffer.concat([Buffer.from("100000\r\n"), MEGABYTE, Buffer.from("\r\n")]);
    const { answer, sentMb } = await upload(`${HEAD}transfer-encoding: chunked\r\n\r\n`, chunk);
    expect(answer).toMatch(/^HTTP\/1\.1 413 /);
    expect(sentMb).toBeGreaterThanOrEqual(8);
    expect(sentMb).toBeLessThan(50);
  });
});

describe("an address that nobody answers to", () => {
  it.each([
    ["an unknown one", "get", "/api/nothing"],
    ["a known one with another method", "delete", "/api/numbers"],
    ["one that a browser asks for under /api", "get", "/api/nothing"],
  ] as const)("%s is not found", async (_, method, path) => {
    const response = await probe.request[method](path).set("accept", "text/html");
    expect(response.status).toBe(404);
    expectProblem(response, "not-found");
  });

  it("that can't be decoded is a refusal like any other", async () => {
    expectProblem(await probe.request.get("/api/%E0%A4%A"), "validation-failed");
  });
});

describe("what goes wrong inside", () => {
  it("is hidden, and answered in the same form", async () => {
    const response = await probe.request.get("/api/mistake");
    expect(response.status).toBe(500);
    expectProblem(response, "internal");
    expect(response.text).not.toContain("password");
  });

  it("includes an answer that breaks its own schema", async () => {
    const response = await probe.request.get("/api/broken-answer");
    expectProblem(response, "internal");
  });

  it("does not include fields that the schema does not list: they stay inside", async () => {
    expect((await probe.request.get("/api/leak")).body).toEqual({ shown: "yes" });
  });

  it("a refusal keeps its form whatever the route says of its status", async () => {
    const body = expectProblem(await probe.request.get("/api/refusal"), "conflict");
    expect(body.detail).toBe(`Two trains want one road. ${REFUSALS.conflict.remedy}`);
  });

  it("a failure that is recognised is refused, with a time to try again", async () => {
    const recognise = (error: unknown) =>
      error instanceof Error
        ? new Refusal("database-unavailable", "The database did not answer.")
        : undefined;
    const lame = await probeApp({ recognise, ping: () => Promise.reject(new Error("gone")) });
    const response = await lame.request.get("/readyz");
    expect(response.status).toBe(503);
    expectProblem(response, "database-unavailable");
    expect(response.headers["retry-after"]).toMatch(/^\d+$/);
    expect((await lame.request.get("/healthz")).status).toBe(200);
    await lame.close();
  });
});

describe("the catalogue", () => {
  it("has a page for every code, for people and for programs", async () => {
    for (const code of REFUSAL_CODES) {
      const { status, title, remedy } = REFUSALS[code];
      const forPrograms = await probe.request.get(`/problems/${code}`);
      expect(forPrograms.body).toEqual({ code, status, title, remedy });
      const forPeople = await probe.request.get(`/problems/${code}`).set("accept", "text/html");
      expect(forPeople.headers["content-type"]).toMatch(/^text\/html/);
      expect(forPeople.text).toContain(`<h1>${title}</h1>`);
    }
    expect((await probe.request.get("/problems")).body.items).toHaveLength(REFUSAL_CODES.length);
    expectProblem(await probe.request.get("/problems/none"), "not-found");
  });
});
