import { describe, expect, it } from "vitest";
import type { Actor } from "../../src/http/actor.ts";
import { installAuthorisation } from "../../src/http/authorise.ts";
import { createHttp } from "../../src/http/create-http.ts";
import { memberOf } from "../support/actors.ts";

const createApp = () =>
  createHttp({
    logger: false,
    listenHost: "127.0.0.1",
    trustedProxies: [],
    clientDir: undefined,
    api: { version: "1", description: "" },
    recognise: () => undefined,
    ping: async () => {},
  });

async function appFor(actor: Actor | undefined) {
  const app = await createApp();
  installAuthorisation(app, async () => actor);
  const reached: string[] = [];
  const note = async (request: { method: string; url: string }) => {
    reached.push(`${request.method} ${request.url}`);
    return {};
  };
  app.get("/api/clubs/:club", note);
  app.post("/api/clubs/:club/sections", { config: { access: "keep-layout" } }, note);
  app.post("/api/clubs/:club/check", { config: { access: "read", changesNothing: true } }, note);
  app.post("/api/clubs", { config: { access: "signed-in" } }, note);
  app.get("/api/open", { config: { access: "public" } }, note);
  await app.ready();
  const ask = async (method: "GET" | "POST", url: string) => {
    const response = await app.inject({ method, url, ...(method === "POST" && { payload: {} }) });
    return response.statusCode === 200 ? 200 : response.json().code;
  };
  return { app, ask, reached };
}

describe("a route of the API", () => {
  it("is open to nobody who is not signed in, unless it is public, whether the club is there or not", async () => {
    const { app, ask, reached } = await appFor(undefined);
    expect(await ask("GET", "/api/clubs/north")).toBe("not-signed-in");
    expect(await ask("GET", "/api/clubs/nowhere")).toBe("not-signed-in");
    expect(await ask("POST", "/api/clubs/north/sections")).toBe("not-signed-in");
    expect(await ask("POST", "/api/clubs")).toBe("not-signed-in");
    expect(await ask("GET", "/api/open")).toBe(200);
    expect(reached).toEqual(["GET /api/open"]);
    await app.close();
  });

  it("of another club is not there, whatever it would take to use it", async () => {
    const { app, ask, reached } = await appFor(memberOf("south", "secretary"));
    expect(await ask("GET", "/api/clubs/north")).toBe("not-found");
    expect(await ask("POST", "/api/clubs/north/sections")).toBe("not-found");
    expect(reached).toEqual([]);
    await app.close();
  });

  it("is open to whoever has a role that may use it", async () => {
    const { app, ask } = await appFor(memberOf("north", "layout owner"));
    expect(await ask("GET", "/api/clubs/north")).toBe(200);
    expect(await ask("POST", "/api/clubs/north/sections")).toBe(200);
    await app.close();
    const other = await appFor(memberOf("north", "member"));
    expect(await other.ask("GET", "/api/clubs/north")).toBe(200);
    expect(await other.ask("POST", "/api/clubs/north/sections")).toBe("not-permitted");
    await other.app.close();
  });

  it("that changes something is shut to a token for reading, that computes is not", async () => {
    const { app, ask } = await appFor({ ...memberOf("north", "secretary"), mayWrite: false });
    expect(await ask("POST", "/api/clubs/north/check")).toBe(200);
    expect(await ask("POST", "/api/clubs/north/sections")).toBe("not-permitted");
    expect(await ask("POST", "/api/clubs")).toBe("not-permitted");
    await app.close();
  });

  it("is turned away from before its body is read", async () => {
    const { app } = await appFor(memberOf("south"));
    const response = await app.inject({
      method: "POST",
      url: "/api/clubs/north/sections",
      headers: { "content-type": "application/json" },
      payload: "{ not json",
    });
    expect(response.statusCode).toBe(404);
    await app.close();
  });

  it("that does not say who may use it stops the start", async () => {
    const app = await createApp();
    installAuthorisation(app, async () => undefined);
    expect(() => app.post("/api/clubs/:club/sections", async () => ({}))).toThrow("who may use it");
    expect(() => app.get("/api/people", async () => ({}))).toThrow("who may use it");
    expect(() => app.get("/api/people", { config: { access: "book" } }, async () => ({}))).toThrow("no club");
    await app.close();
  });
});
