import type { Me } from "../../../shared/accounts.ts";
import type { Permission } from "../../../shared/permissions.ts";
import { meState } from "./me.ts";

type MyClub = Me["clubs"][number];

const NOBODY: Me = { person: { name: "", email: "" }, clubs: [], expires: "" };

/** Who is signed in. Pages that ask for a sign-in are shown only once this is known. */
export function useMe(): Me {
  const state = meState();
  return state.status === "known" ? state.me : NOBODY;
}

/** What one is in a club; undefined in a club one does not belong to. */
export function useMembership(club: string): MyClub | undefined {
  return useMe().clubs.find(({ code }) => code === club);
}

/** Whether one may do it there. It decides what is shown; the service decides what is done. */
export function useMay(club: string, permission: Permission): boolean {
  return useMembership(club)?.permissions.includes(permission) ?? false;
}
