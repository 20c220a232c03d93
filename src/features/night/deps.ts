import type { BookingState } from "../../../shared/booking.ts";
import type { Database, DatabaseClient } from "../../database/client.ts";
import type { PlanParts } from "../../database/records/read-plan.ts";
import type { Transaction } from "../../database/transaction.ts";
import type { Clock } from "../../lib/clock.ts";
import type { Problem } from "../../planner/problem.ts";

/** Who drives a train, and with what. */
export interface DriverOfTrain {
  readonly slot: string;
  readonly train: string;
  readonly member: string;
  readonly handset: string | null;
}

export interface Crew {
  readonly drivers: readonly DriverOfTrain[];
  /** Codes of all who have a train or a duty; some may come twice. */
  readonly expected: readonly string[];
}

/** What the night needs of other features; the app hands it in. */
export interface NightDeps {
  readonly database: DatabaseClient;
  readonly clock: Clock;
  /** The state of the night's booking; in a transaction it stays so until its end. */
  readonly readBooking: (database: Database, sessionId: string) => Promise<BookingState>;
  /** Moves a locked night to running. */
  readonly beginNight: (transaction: Transaction, sessionId: string) => Promise<void>;
  readonly readCrew: (database: Database, sessionId: string) => Promise<Crew>;
  /** @throws Refusal unprocessable, where the stored plan does not fit together */
  readonly toProblem: (parts: PlanParts) => Problem;
}
