import type pg from "pg";
import { openPostOffice } from "../../src/mail/post-office.ts";
import { createTransport } from "../../src/mail/transport.ts";

// One server process's share of the work, alone: sends until it is killed.
const { connection, url } = JSON.parse(process.argv[2] ?? "{}") as {
  connection: pg.ClientConfig;
  url: string;
};
await openPostOffice({
  connection,
  transport: createTransport(url, "Foreman <foreman@club.example>"),
  chores: [],
  warn: () => {},
});
process.on("disconnect", () => process.exit(0));
process.send?.("open");
