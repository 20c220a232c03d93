import type { HttpApp } from "../../http/bare-app.ts";
import type { AccountDeps } from "./deps.ts";
import { registerInvitationRoutes } from "./invitation-routes.ts";
import { createInvitationService } from "./invitation-service.ts";
import { registerLinkRoutes } from "./link-routes.ts";
import { createLinkService } from "./link-service.ts";
import { registerMeRoutes } from "./me-routes.ts";
import { createMeService } from "./me-service.ts";
import { createPasswords, PASSWORD_COST } from "./passwords.ts";
import { createResetService } from "./reset-service.ts";
import { registerSignInRoutes } from "./sign-in-routes.ts";
import { createSignInService } from "./sign-in-service.ts";
import { registerTokenRoutes } from "./token-routes.ts";
import { createTokenService } from "./token-service.ts";

export { createAuthenticate } from "./authenticate.ts";
export type { AccountDeps } from "./deps.ts";
export { type DemoPerson, letDemoPeopleIn, makeFirstLink } from "./first-people.ts";
export { linkAddress } from "./reset-service.ts";
export { makeSecretary } from "./secretaries.ts";
export { startSignIn } from "./sign-ins.ts";

/** People, how they come in, and what they do with their accounts. */
export function installAccounts(app: HttpApp, deps: AccountDeps): void {
  const passwords = createPasswords(deps.passwordCost ?? PASSWORD_COST);
  registerSignInRoutes(app, createSignInService(deps, passwords), deps);
  registerMeRoutes(app, createMeService(deps, passwords));
  registerTokenRoutes(app, createTokenService(deps.database, deps.clock));
  registerLinkRoutes(app, createLinkService(deps, passwords), createResetService(deps));
  registerInvitationRoutes(app, deps.database, createInvitationService(deps));
}
