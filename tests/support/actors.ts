import { permissionsOf } from "../../shared/permissions.ts";
import type { Role } from "../../shared/vocabulary.ts";
import type { Actor } from "../../src/http/actor.ts";

/** Someone who has the given roles in the given club, and belongs to no other. */
export const memberOf = (club: string, ...roles: Role[]): Actor => ({
  personId: null,
  name: "A member",
  mayWrite: true,
  membership: (code) => (code === club ? { member: "m", permissions: permissionsOf(roles) } : undefined),
});
