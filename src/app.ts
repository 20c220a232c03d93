import type { FastifyServerOptions } from "fastify";
import { actingAs } from "./database/acting.ts";
import { type DatabaseClient, ping } from "./database/client.ts";
import { heldSentence, isUnavailable, isWriteConflict, leavesNoSecretary } from "./database/errors.ts";
import type { ListenConnection } from "./database/listener.ts";
import { type AccountDeps, installAccounts, makeSecretary } from "./features/accounts/index.ts";
import { beginNight, installBooking } from "./features/booking/index.ts";
import { installCalendar } from "./features/calendar/index.ts";
import {
  checkParts,
  createSlotCheck,
  installCheck,
  toStoredClock,
  toStoredProblem,
} from "./features/check/index.ts";
import { installClaims } from "./features/claims/index.ts";
import { installClubs } from "./features/clubs/index.ts";
import { installCosting } from "./features/costing/index.ts";
import { installEvents } from "./features/events/index.ts";
import { handsetKind, installHandsets } from "./features/handsets/index.ts";
import { installLayout, layoutKinds } from "./features/layout/index.ts";
import { createClaimPost, createNotePost, installMails } from "./features/mails/index.ts";
import { installMembers, memberKind } from "./features/members/index.ts";
import { createStopClock, installNight } from "./features/night/index.ts";
import { installPictures } from "./features/pictures/index.ts";
import { installReadings, readingKind } from "./features/readings/index.ts";
import { installRoster, rosterKinds } from "./features/roster/index.ts";
import { installSelectors } from "./features/selectors/index.ts";
import { installSessions, sessionKind } from "./features/sessions/index.ts";
import {
  createDraftWith,
  findTrainFlaws,
  installTimetables,
  timetableKind,
  trainKind,
} from "./features/timetables/index.ts";
import { installTrail } from "./features/trail/index.ts";
import { installTransfer, writeSheet } from "./features/transfer/index.ts";
import { installWhatIf } from "./features/what-if/index.ts";
import { installWiring } from "./features/wiring/index.ts";
import type { Authenticate } from "./http/actor.ts";
import { API_GUIDE } from "./http/api-guide.ts";
import { installAuthorisation } from "./http/authorise.ts";
import { createHttp, type HttpApp } from "./http/create-http.ts";
import { installCrossSiteGuard } from "./http/csrf.ts";
import type { Clock } from "./lib/clock.ts";
import { Refusal } from "./lib/refusal.ts";
import type { Mailer } from "./mail/mailer.ts";
import { solveNonNegative } from "./solving/non-negative-least-squares.ts";

export interface AppDeps extends Pick<AccountDeps, "demoSignIns" | "passwordCost"> {
  readonly database: DatabaseClient;
  /** Of the same database: to listen on, outside the client's pool. */
  readonly connection: ListenConnection;
  readonly clock: Clock;
  readonly authenticate: Authenticate;
  readonly mailer: Mailer;
  /** Where people reach the service, with a slash at the end; known once it listens. */
  readonly publicUrl: () => string;
  readonly logger: NonNullable<FastifyServerOptions["logger"]>;
  readonly listenHost: string;
  readonly trustedProxies: readonly string[];
  readonly clientDir: string | undefined;
  readonly version: string;
}

/** What a club's document holds, gathered from the features that keep it. */
export const TRANSFER_KINDS = {
  layout: layoutKinds,
  roster: rosterKinds,
  handset: handsetKind,
  member: memberKind,
  timetable: timetableKind,
  train: trainKind,
  session: sessionKind,
  reading: readingKind,
} as const;

/** Puts the features together. Whoever calls it lets it listen, and closes it. */
export async function buildApp(deps: AppDeps): Promise<HttpApp> {
  const app = await createHttp({
    logger: deps.logger,
    listenHost: deps.listenHost,
    trustedProxies: deps.trustedProxies,
    clientDir: deps.clientDir,
    api: { version: deps.version, description: API_GUIDE },
    recognise: recogniseDatabaseFailure,
    ping: () => ping(deps.database),
  });
  installCrossSiteGuard(app);
  installAuthorisation(app, deps.authenticate);
  // after the body has come, so that all the handler starts is on behalf of whoever asks
  app.addHook("preHandler", (request, _, done) => actingAs(request.actor?.personId ?? null, done));
  installAccounts(app, deps);
  installClubs(app, { ...deps, makeSecretary });
  installLayout(app, deps);
  installRoster(app, deps);
  await installPictures(app, deps);
  installHandsets(app, deps);
  installMembers(app, deps);
  installTimetables(app, deps);
  installSessions(app, deps);
  installReadings(app, {
    ...deps,
    toProblem: toStoredProblem,
    toClock: toStoredClock,
    solve: solveNonNegative,
  });
  await installTransfer(app, deps, TRANSFER_KINDS);
  installCheck(app, deps);
  installCosting(app, { ...deps, toProblem: toStoredProblem });
  installWiring(app, { ...deps, checkParts, toProblem: toStoredProblem });
  installWhatIf(app, { ...deps, checkParts, findTrainFlaws, draftWith: createDraftWith(deps.database) });
  installSelectors(app, {
    ...deps,
    toProblem: toStoredProblem,
    toClock: toStoredClock,
    checkParts,
    writeSheet,
  });
  installBooking(app, {
    ...deps,
    stopClock: createStopClock(deps),
    tellAll: createNotePost(deps.mailer, deps.publicUrl),
    checkSlot: createSlotCheck(deps.database),
  });
  installClaims(app, deps, createClaimPost(deps.mailer, deps.publicUrl));
  installNight(app, { ...deps, beginNight, toProblem: toStoredProblem });
  installCalendar(app, deps);
  installMails(app, deps);
  installTrail(app, deps);
  installEvents(app, deps);
  return app;
}

function recogniseDatabaseFailure(cause: unknown): Refusal | undefined {
  if (isUnavailable(cause))
    return new Refusal("database-unavailable", "The database did not answer.", [], { cause });
  if (isWriteConflict(cause))
    return new Refusal("conflict", "Others were changing the same records over and over.", [], { cause });
  if (leavesNoSecretary(cause))
    return new Refusal("last-secretary", "Nobody in the club could give roles any more.", [], { cause });
  const held = heldSentence(cause);
  return held === undefined ? undefined : new Refusal("booking-holds", held, [], { cause });
}
