import { fileURLToPath } from "node:url";
import { defineConfig } from "prisma/config";

// Generating the client runs on WebAssembly alone, yet the command fetches an engine binary from the network unless it
// is told where one lies: any file that exists will do, as nothing here ever runs it.
process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= fileURLToPath(import.meta.url);

export default defineConfig({ schema: "prisma" });
