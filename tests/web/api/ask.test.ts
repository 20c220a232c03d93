import { afterEach, describe, expect, it } from "vitest";
import { change, read, signInEnded } from "../../../src/web/api/ask.ts";
import { Problem } from "../../../src/web/api/problem.ts";
import { type Arrived, answering, type Reply } from "./answering.ts";

describe("a change asked of the service", () => {
  let service: Awaited<ReturnType<typeof answering>>;
  const answered = async (reply: Reply) => {
    service = await answering(() => reply);
  };
  const refusal = (status: number, body: object): Reply => ({ status, body: JSON.stringify(body) });
  const problemOf = (asked: Promise<unknown>) =>
    asked.then(
      () => null,
      (error: unknown) => (error instanceof Problem ? error : null),
    );

  afterEach(() => {
    signInEnded.value = false;
    return service.close();
  });

  it("carries its body, the version it is of and the key it is known by", async () => {
    await answered({ status: 200, headers: { etag: '"4"' }, body: '{"name":"Ada"}' });
    const answer = await change("PUT", "/api/me", {
      body: { name: "Ada" },
      etag: '"3"',
      key: "a-key-of-one",
    });
    expect(answer).toEqual({ value: { name: "Ada" }, etag: '"4"' });
    expect(service.arrived).toHaveLength(1);
    const [{ method, path, headers, body }] = service.arrived as [Arrived];
    expect([method, path, body]).toEqual(["PUT", "/api/me", '{"name":"Ada"}']);
    expect(headers["content-type"]).toBe("application/json");
    expect([headers["if-match"], headers["idempotency-key"]]).toEqual(['"3"', "a-key-of-one"]);
  });

  it("says nothing of a body, version or key that it has not", async () => {
    await answered({ status: 204 });
    expect(await change("POST", "/api/sign-out")).toEqual({ value: undefined, etag: null });
    const headers = service.arrived[0]?.headers ?? {};
    expect(["content-type", "if-match", "idempotency-key"].filter((name) => name in headers)).toEqual([]);
  });

  it("is told of a refusal in sentences, with its name and every place that is wrong", async () => {
    const errors = [{ pointer: "/body/email", detail: "Must be an address." }];
    await answered(
      refusal(400, { title: "Part is wrong", detail: "One place.", code: "validation-failed", errors }),
    );
    const problem = await problemOf(change("POST", "/api/reset-requests", { body: {} }));
    expect(problem).toMatchObject({
      status: 400,
      happened: "Part is wrong",
      detail: "One place.",
      code: "validation-failed",
      faults: errors,
      remedies: ["/body/email: Must be an address."],
    });
  });

  it("raises a sign-in that has ended, and not a password that was wrong", async () => {
    await answered(refusal(401, { title: "Wrong", code: "wrong-password" }));
    await problemOf(change("POST", "/api/sign-in", { body: {} }));
    expect(signInEnded.value).toBe(false);
    await service.close();
    await answered(refusal(401, { title: "Who asks?", code: "not-signed-in" }));
    await problemOf(read("/api/clubs", new AbortController().signal));
    expect(signInEnded.value).toBe(true);
  });

  it("is told that no answer came, and that another's answer makes no sense", async () => {
    await answered(null);
    expect(await problemOf(change("POST", "/api/sign-out"))).toMatchObject({ status: 0, code: null });
    await service.close();
    await answered({ status: 502, body: "<h1>Bad gateway</h1>" });
    expect(await problemOf(change("POST", "/api/sign-out"))).toMatchObject({
      status: 502,
      happened: "The service answered with status 502.",
    });
  });
});
