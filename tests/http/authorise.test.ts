import { describe, expect, it } from "vitest";
import { installAuthorisation } from "../../src/http/authorise.ts";
import { createHttp } from "../../src/http/create-http.ts";
import { Refusal } from "../../src/lib/refusal.ts";

async function appThatNotes(admit: boolean) {
  const asked: string[] = [];
  const app = await createHttp({
    logger: false,
    listenHost: "127.0.0.1",
    clientDir: undefined,
    api: { version: "1", description: "" },
    recognise: () => undefined,
    ping: async () => {},
  });
  installAuthorisation(app, async (_, club, action) => {
    asked.push(`${action} ${club}`);
    if (!admit) throw new Refusal("not-found", "There is no such club.");
  });
  const reached: string[] = [];
  const note = async (request: { method: string }) => {
    reached.push(request.method);
    return {};
  };
  app.get("/api/clubs/:club", note);
  app.post("/api/clubs/:club/sections", note);
  app.post("/api/clubs/:club/check", { config: { clubAction: "read" } }, note);
  app.get("/api/open", note);
  await app.ready();
  return { app, asked, reached };
}

describe("a route under a club", () => {
  it("asks whether the request may read or change that club", async () => {
    const { app, asked, reached } = await appThatNotes(true);
    await app.inject("/api/clubs/north");
    await app.inject({ method: "POST", url: "/api/clubs/north/sections", payload: {} });
    await app.inject({ method: "POST", url: "/api/clubs/south/check", payload: {} });
    await app.inject("/api/open");
    expect(asked).toEqual(["read north", "change north", "read south"]);
    expect(reached).toEqual(["GET", "POST", "POST", "GET"]);
    await app.close();
  });

  it("is not reached, nor its body read, when it may not", async () => {
    const { app, reached } = await appThatNotes(false);
    const response = await app.inject({
      method: "POST",
      url: "/api/clubs/north/sections",
      headers: { "content-type": "application/json" },
      payload: "{ not json",
    });
    expect(response.statusCode).toBe(404);
    expect(reached).toEqual([]);
    await app.close();
  });
});
