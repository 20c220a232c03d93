import { type ChildProcess, fork } from "node:child_process";
import path from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import { createClient, type DatabaseClient } from "../../src/database/client.ts";
import { inTransaction } from "../../src/database/transaction.ts";
import { queueingMailer, quietMailer } from "../../src/mail/mailer.ts";
import { openPostOffice, type PostOffice } from "../../src/mail/post-office.ts";
import { createTransport } from "../../src/mail/transport.ts";
import { startMailServer } from "../support/mail-server.ts";
import { runSql } from "../support/sql.ts";
import { type TestDatabase, testDatabase } from "../support/test-database.ts";

const FROM = "Foreman <foreman@club.example>";
const PATIENCE = { timeout: 30_000 };

let db: TestDatabase;
let client: DatabaseClient;
let smtp: Awaited<ReturnType<typeof startMailServer>>;
let office: PostOffice | undefined;
const workers: ChildProcess[] = [];

beforeAll(async () => {
  db = await testDatabase();
  client = createClient(db.connection);
  smtp = await startMailServer();
});
afterEach(async () => {
  await office?.close();
  office = undefined;
  for (const worker of workers.splice(0)) worker.kill("SIGKILL");
});
afterAll(async () => {
  await client.$disconnect();
  await smtp.stop();
  await db.drop();
});

const reset = (key: string, to: string, link = "http://club.example/links/x") => ({
  key,
  clubId: null,
  to,
  template: "reset" as const,
  data: { link, until: "20 March 2027, 19:00" },
});

const queue = (key: string, to: string) =>
  inTransaction(client, (transaction) => queueingMailer.queue(transaction, reset(key, to)));

const open = async (url = smtp.url) => {
  office = await openPostOffice({
    connection: db.connection,
    transport: createTransport(url, FROM),
    chores: [],
    warn: () => {},
  });
};

const rowOf = async (key: string) => {
  const { rows } = await runSql<{ id: string; state: string; text: string | null; error: string | null }>(
    db.connection,
    "select id, state, text, error from mails where key = $1",
    [key],
  );
  return rows[0];
};

const untilState = (key: string, state: string) =>
  vi.waitFor(async () => expect((await rowOf(key))?.state).toBe(state), PATIENCE);

describe("a queued mail", () => {
  it("is sent once the transaction is done, with its Message-ID, and its text is then gone", async () => {
    await queue("once", "ada@club.example");
    expect((await rowOf("once"))?.text).toContain("http://club.example/links/x");
    await open();
    await untilState("once", "sent");
    const row = await rowOf("once");
    expect(row?.text).toBeNull();
    expect(smtp.to("ada@club.example")).toHaveLength(1);
    const [letter] = smtp.to("ada@club.example");
    expect(letter?.messageId).toBe(`${row?.id}@club.example`);
    expect(letter?.raw).toMatch(/^From: Foreman <foreman@club.example>/m);
    expect(letter?.raw).toContain("http://club.example/links/x");
  });

  it("is not sent when the transaction is undone", async () => {
    await open();
    const undone = inTransaction(client, async (transaction) => {
      await queueingMailer.queue(transaction, reset("undone", "undone@club.example"));
      throw new Error("something else went wrong");
    });
    await expect(undone).rejects.toThrow("something else");
    await queue("after it", "after@club.example");
    await untilState("after it", "sent");
    expect(smtp.to("undone@club.example")).toEqual([]);
  });

  it("is sent once, however often the same is queued, also at the same instant", async () => {
    await open();
    await Promise.all(Array.from({ length: 8 }, () => queue("same", "same@club.example")));
    await untilState("same", "sent");
    await queue("same", "same@club.example");
    await queue("and another", "another@club.example");
    await untilState("and another", "sent");
    expect(smtp.to("same@club.example")).toHaveLength(1);
  });

  it("is tried again when the mail server is busy, and given up when it says no for good", async () => {
    await queue("busy", "busy@club.example");
    await queue("nobody", "nobody@club.example");
    await open();
    await untilState("nobody", "failed");
    expect(await rowOf("nobody")).toMatchObject({
      text: null,
      error: expect.stringContaining("No such mailbox"),
    });
    await untilState("busy", "sent");
    expect(smtp.to("busy@club.example")).toHaveLength(1);
  });

  it("waits, with what went wrong, while there is no mail server, and goes out once there is", async () => {
    await queue("patient", "patient@club.example");
    await open("smtp://127.0.0.1:1");
    await vi.waitFor(async () => expect((await rowOf("patient"))?.error).toContain("ECONNREFUSED"), PATIENCE);
    expect((await rowOf("patient"))?.state).toBe("waiting");
    await office?.close();
    await open();
    await untilState("patient", "sent");
  });
});

it("a service that knows no mail server queues nothing", async () => {
  await inTransaction(client, (transaction) =>
    quietMailer.queue(transaction, reset("quiet", "quiet@club.example")),
  );
  expect(await rowOf("quiet")).toBeUndefined();
  expect(quietMailer.sends).toBe(false);
});

it("several processes send each mail once, and one that is killed leaves nothing unsent", async () => {
  const slow = await startMailServer({ delayMs: 60 });
  const startWorker = async () => {
    const options = JSON.stringify({ connection: db.connection, url: slow.url });
    const worker = fork(path.join(import.meta.dirname, "worker-process.ts"), [options], {
      execArgv: ["--import", "tsx"],
    });
    workers.push(worker);
    await new Promise((resolve) => worker.once("message", resolve));
    return worker;
  };
  const addresses = Array.from({ length: 60 }, (_, at) => `member-${at}@club.example`);
  const [doomed] = await Promise.all([startWorker(), startWorker()]);
  for (const address of addresses) await queue(`many ${address}`, address);
  await vi.waitFor(() => expect(slow.letters.length).toBeGreaterThan(10), PATIENCE);
  doomed?.kill("SIGKILL");
  const { rows } = await runSql<{ id: string }>(
    db.connection,
    "select id from mails where state = 'sending' and key like 'many %'",
  );
  // what was in a process's hands when it died may have been taken by the mail server: it cannot be asked
  const inHand = new Set(rows.map(({ id }) => `${id}@club.example`));
  await vi.waitFor(
    async () => {
      const { rows: left } = await runSql(
        db.connection,
        "select 1 from mails where state <> 'sent' and key like 'many %'",
      );
      expect(left).toEqual([]);
    },
    { timeout: 60_000, interval: 250 },
  );
  for (const address of addresses) {
    const letters = slow.to(address);
    const ids = new Set(letters.map(({ messageId }) => messageId));
    expect([address, ids.size]).toEqual([address, 1]);
    const [id] = ids;
    if (!inHand.has(String(id))) expect([address, letters.length]).toEqual([address, 1]);
  }
  await slow.stop();
}, 120_000);
