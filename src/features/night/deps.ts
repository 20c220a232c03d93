import type { BookedNight } from "../../database/bookings.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type { PlanParts } from "../../database/records/read-plan.ts";
import type { Transaction } from "../../database/transaction.ts";
import type { Clock } from "../../lib/clock.ts";
import type { Problem } from "../../planner/problem.ts";

/** What the night needs of the app, and of other features, which the app hands in. */
export interface NightDeps {
  readonly database: DatabaseClient;
  readonly clock: Clock;
  /** Moves the booking of a locked night to running. */
  readonly beginNight: (transaction: Transaction, night: BookedNight) => Promise<void>;
  /** @throws Refusal unprocessable, where the stored plan does not fit together */
  readonly toProblem: (parts: PlanParts) => Problem;
}
