import { z } from "zod";
import { night } from "../../../shared/night.ts";
import { createSharedRead } from "../../lib/shared-read.ts";
import { toNight } from "./board.ts";
import { type NightAddress, reachNight } from "./change-night.ts";
import type { NightDeps } from "./deps.ts";
import { readFacts } from "./facts.ts";

/**
 * The live board of a night, as the JSON text that is sent, with none but the contract's fields. It is the same for
 * everyone, and after each change everyone asks at once: they share what is read and written for them.
 * @throws Refusal not-found
 */
export function createReadNight(deps: NightDeps): (address: NightAddress) => Promise<string> {
  const read = createSharedRead(async (key) => {
    const [club = "", session = ""] = key.split(SEPARATOR);
    const facts = await readFacts(deps.database, deps, await reachNight(deps.database, { club, session }));
    return JSON.stringify(z.encode(night, toNight(facts)));
  });
  return ({ club, session }) => read(club + SEPARATOR + session);
}

// no code has one
const SEPARATOR = "/";
