import { migrate } from "../../src/database/migrate.ts";
import { MIGRATIONS } from "./database-setup.ts";
import { driftSql } from "./schema-engine/drift.ts";
import { runSql } from "./sql.ts";
import { startTestServer } from "./test-server.ts";

// Prints what a new folder under prisma/migrations must hold for the migrations to arrive at the schema.
const server = await startTestServer();
try {
  await runSql(server.connection("postgres"), "drop database if exists draft with (force)");
  await runSql(server.connection("postgres"), "create database draft");
  const connection = server.connection("draft");
  await migrate(connection, MIGRATIONS);
  console.log((await driftSql(connection)) || "-- the migrations already arrive at the schema");
} finally {
  await server.stop();
}
// the schema engine leaves a timer behind that would hold the process for ten seconds
process.exit();
