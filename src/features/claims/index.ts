import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import type { Clock } from "../../lib/clock.ts";
import { createAssignService } from "./assign-service.ts";
import { createClaimService } from "./claim-service.ts";
import type { ClaimNews, Notify } from "./notify.ts";
import { createQueueService } from "./queue-service.ts";
import { createClaimReading } from "./reading.ts";
import { registerReadingRoutes } from "./reading-routes.ts";
import { registerClaimRoutes } from "./routes.ts";
import { createNightSource } from "./source.ts";
import { registerSwapRoutes } from "./swap-routes.ts";
import { createSwapService } from "./swap-service.ts";

export type { ClaimNews, Notify };

interface InstallDeps {
  readonly database: DatabaseClient;
  readonly clock: Clock;
}

/** Who drives what: the claim board, claims, queues, swaps, assignments. `notify` hears what members should. */
export function installClaims(app: HttpApp, { database, clock }: InstallDeps, notify: Notify): void {
  const source = createNightSource(database);
  const deps = { database, clock, source, notify };
  registerReadingRoutes(app, database, createClaimReading(deps));
  registerClaimRoutes(app, {
    claims: createClaimService(deps),
    queue: createQueueService(deps),
    assignments: createAssignService(deps),
  });
  registerSwapRoutes(app, createSwapService(deps));
}
