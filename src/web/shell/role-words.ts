import type { Role } from "../../../shared/vocabulary.ts";

/** What each role is there for, for whoever gives it. Everyone may read all and claim. */
export const ROLE_TASKS = {
  member: "Sees everything of the club and claims trains.",
  "session marshal": "Runs the night from the live board.",
  "timetable clerk": "Keeps the timetables.",
  "layout owner": "Keeps the railway, its wiring and the roster.",
  secretary: "May do everything, keeps the members and books the nights.",
} as const satisfies Record<Role, string>;

export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** One's roles as a label: `Secretary, layout owner`; who holds none is a member. */
export function roleList(roles: readonly string[]): string {
  const given = roles.filter((role) => role !== "member");
  return capital(given.length === 0 ? "member" : given.join(", "));
}
