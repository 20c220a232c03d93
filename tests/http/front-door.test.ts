import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createClient } from "../../src/database/client.ts";
import { outsideConnection } from "../../src/database/open-database.ts";
import { isLoopback } from "../../src/http/security.ts";
import { testApp } from "../support/test-app.ts";
import { probeApp } from "./probe-app.ts";

let clientDir: string;
let probe: Awaited<ReturnType<typeof probeApp>>;

beforeAll(async () => {
  clientDir = mkdtempSync(path.join(tmpdir(), "client-"));
  mkdirSync(path.join(clientDir, "assets"));
  writeFileSync(path.join(clientDir, "index.html"), "<!doctype html><title>start page</title>");
  writeFileSync(path.join(clientDir, "assets/main-1a2b.js"), "export {};");
  writeFileSync(path.join(clientDir, ".secret"), "no");
  probe = await probeApp({ clientDir });
});

afterAll(async () => {
  await probe.close();
  rmSync(clientDir, { recursive: true });
});

const visit = (address: string) => probe.request.get(address).set("accept", "text/html,*/*");

describe("the client", () => {
  it.each(["/", "/index.html", "/nights/some/deep/link", "/nights?club=x"])(
    "a browser's visit to %s starts it",
    async (address) => {
      const response = await visit(address);
      expect(response.status).toBe(200);
      expect(response.text).toContain("start page");
      expect(response.headers["cache-control"]).toBe("no-cache");
    },
  );

  it("files named by their content may be kept for ever", async () => {
    expect((await visit("/assets/main-1a2b.js")).headers["cache-control"]).toContain("immutable");
  });

  it.each(["/assets/gone.js", "/api/gone", "/problems/gone"])("%s is not a page", async (address) => {
    expect((await visit(address)).status).toBe(404);
  });

  it("a program that asks for no page gets no page", async () => {
    expect((await probe.request.get("/nights")).status).toBe(404);
    expect((await probe.request.post("/nights").set("accept", "text/html")).status).toBe(404);
  });

  it.each(["/.secret", "/../package.json", "/%2e%2e/package.json", "/assets/..%2f..%2fpackage.json"])(
    "%s lets nothing out",
    async (address) => {
      const response = await probe.request.get(address);
      expect(response.status).toBeGreaterThanOrEqual(400);
    },
  );
});

describe("security", () => {
  it("pages may load nothing from elsewhere and be framed by nobody else", async () => {
    const policy = (await visit("/")).headers["content-security-policy"] ?? "";
    const directives = Object.fromEntries(
      policy.split(";").map((directive) => {
        const [name = "", ...sources] = directive.trim().split(" ");
        return [name, sources.join(" ")];
      }),
    );
    expect(directives).toMatchObject({
      "default-src": "'self'",
      "script-src": "'self'",
      "frame-ancestors": "'self'",
    });
    expect(policy).not.toMatch(/https:|upgrade-insecure-requests|unsafe-eval/);
  });

  it.each([
    ["127.0.0.1", 200],
    ["localhost:4380", 200],
    ["[::1]:4380", 200],
    ["elsewhere.example", 421],
    ["127.0.0.1.elsewhere.example", 421],
  ])("on this machine alone, a request to %s gives %d", async (host, status) => {
    expect((await probe.request.get("/healthz").set("host", host)).status).toBe(status);
  });

  it("under an address of its own choosing, any name will do", async () => {
    const open = await probeApp({ listenHost: "0.0.0.0" });
    expect((await open.request.get("/healthz").set("host", "club.example")).status).toBe(200);
    await open.close();
  });

  it.each([
    ["127.0.0.1", true],
    ["127.8.8.8", true],
    ["::1", true],
    ["localhost", true],
    ["0.0.0.0", false],
    ["::", false],
    ["192.168.0.4", false],
    ["127.example.org", false],
  ])("%s is this machine alone: %s", (host, loopback) => {
    expect(isLoopback(host)).toBe(loopback);
  });
});

describe("what is not HTTP", () => {
  // statuses: RFC 9110 section 15.5.1, RFC 6585 section 5
  it.each([
    ["nonsense\r\n\r\n", 400],
    [`GET / HTTP/1.1\r\nhost: localhost\r\nx: ${"y".repeat(20_000)}\r\n\r\n`, 431],
    [`GET /${"y".repeat(20_000)} HTTP/1.1\r\nhost: localhost\r\n\r\n`, 431],
  ])("is answered with a problem and closed", async (text, status) => {
    const app = await probeApp();
    const { port } = new URL(await app.app.listen({ port: 0, host: "127.0.0.1" }));
    const answer = await new Promise<string>((resolve) => {
      let all = "";
      const socket = connect(Number(port), "127.0.0.1", () => socket.write(text));
      socket.on("data", (chunk) => {
        all += chunk;
      });
      socket.on("close", () => resolve(all));
    });
    expect(answer).toMatch(
      new RegExp(`^HTTP/1\\.1 ${status} .*\\r\\ncontent-type: application/problem\\+json`),
    );
    await app.close();
  });

  it("or does not end in its time, is told so (RFC 9110 section 15.5.9)", async () => {
    const app = await probeApp();
    // the watch over slow connections reports them so; the two minutes themselves are not waited for here
    const late = Object.assign(new Error("Request timeout"), { code: "ERR_HTTP_REQUEST_TIMEOUT" });
    app.app.server.prependOnceListener("connection", (socket) =>
      app.app.server.emit("clientError", late, socket),
    );
    const { port } = new URL(await app.app.listen({ port: 0, host: "127.0.0.1" }));
    const answer = await new Promise<string>((resolve) => {
      let all = "";
      connect(Number(port), "127.0.0.1")
        .on("data", (chunk) => {
          all += chunk;
        })
        .on("close", () => resolve(all));
    });
    expect(answer).toMatch(/^HTTP\/1\.1 408 Request Timeout\r\n/);
    expect(answer).toContain('"code":"request-too-slow"');
    await app.close();
  });
});

describe("the whole app", () => {
  it("is healthy and ready on a database, and not ready without", async () => {
    const { request, close } = await testApp();
    expect((await request.get("/healthz")).body).toEqual({ status: "ok" });
    expect((await request.get("/readyz")).body).toEqual({ status: "ok" });
    await close();
    const nowhere = createClient(outsideConnection("postgresql://u:p@127.0.0.1:1/x"));
    const lost = await testApp({ database: nowhere });
    const response = await lost.request.get("/readyz");
    expect(response.status).toBe(503);
    expect(response.body.code).toBe("database-unavailable");
    await lost.close();
    await nowhere.$disconnect();
  });
});
