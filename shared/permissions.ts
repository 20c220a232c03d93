import type { Role } from "./vocabulary.ts";

/** What a member of a club may do in it. */
export const PERMISSIONS = [
  "read",
  "claim",
  "keep-layout",
  "keep-roster",
  "take-readings",
  "keep-timetables",
  "book",
  "run-night",
  "keep-members",
  "keep-club",
  "read-trail",
] as const;

export type Permission = (typeof PERMISSIONS)[number];

/** A person may hold several roles; they then may do whatever any of them may. */
export const ROLE_PERMISSIONS = {
  member: ["read", "claim"],
  "session marshal": ["read", "claim", "run-night", "take-readings"],
  "timetable clerk": ["read", "claim", "keep-timetables"],
  "layout owner": ["read", "claim", "keep-layout", "keep-roster", "take-readings"],
  secretary: PERMISSIONS,
} as const satisfies Record<Role, readonly Permission[]>;

/** All that the given roles may do together. */
export const permissionsOf = (roles: readonly Role[]): ReadonlySet<Permission> =>
  new Set(roles.flatMap((role): readonly Permission[] => ROLE_PERMISSIONS[role]));
