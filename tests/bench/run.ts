import { benchBothWays } from "./both-ways.ts";
import { benchClaims } from "./claims.ts";
import { benchClashes } from "./clashes.ts";
import { benchMoves } from "./moves.ts";
import { benchOneSection } from "./one-section.ts";
import { benchService } from "./service/run.ts";
import { benchWholeCheck } from "./whole-check.ts";

/**
 * `npm run bench` runs them all, `npm run bench -- --only clashes` one. Figures are medians, JIT warm, subjects taking
 * turns in one process on a machine that may be busy: compare ratios, not ms. Seeded, so that every run sees the same plans.
 */
const BENCHES: Readonly<Record<string, () => void | Promise<void>>> = {
  clashes: benchClashes,
  "one-section": benchOneSection,
  "whole-check": benchWholeCheck,
  moves: benchMoves,
  "both-ways": benchBothWays,
  service: benchService,
  claims: benchClaims,
};

const at = process.argv.indexOf("--only");
const only = at < 0 ? null : (process.argv[at + 1] ?? "");
const chosen = Object.entries(BENCHES).filter(([name]) => only === null || name === only);
if (chosen.length === 0) {
  console.error(`No bench ${only}: there are ${Object.keys(BENCHES).join(", ")}.`);
  process.exitCode = 1;
}
for (const [name, bench] of chosen) {
  console.log(`\n== ${name}`);
  await bench();
}
