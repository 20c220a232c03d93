import type { Role } from "../shared/vocabulary.ts";
import { members } from "./members.ts";

/** Shown to everyone on the sign-in page of a service that shows its demo, and good for nothing elsewhere. */
const PASSWORD = "tea after the first crew";

/** One of the demo club's members for each role. */
export const demoPeople = [person("os"), person("fd"), person("tw"), person("gm"), person("rl")];

function person(code: string) {
  const member = members.find((each) => each.code === code);
  if (member === undefined) throw new Error(`the demo club has no member ${code}`);
  const roles: readonly Role[] = [...(member.roles ?? []), "member"];
  const email = `${member.name.toLowerCase().replaceAll(/[^a-z]+/g, ".")}@quennelby.example`;
  return { member: code, name: member.name, email, password: PASSWORD, roles: [...roles] };
}
