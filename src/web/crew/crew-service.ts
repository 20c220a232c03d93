import type {
  Assigned,
  Board,
  Claim,
  GivenBack,
  MyEvening,
  NewAssignment,
  NewClaim,
  NewSwap,
  QueuePlace,
  Swap,
  Swapped,
} from "../../../shared/claims.ts";
import { change, read } from "../api/ask.ts";
import { sessionPath } from "../api/service.ts";

/** The slot whose board it is. */
export interface SlotAddress {
  readonly club: string;
  readonly session: string;
  readonly slot: string;
}

/** A train or a standing duty of a slot, as requests name it. */
export type What = { readonly train: string } | { readonly duty: string };

const slotPath = ({ club, session, slot }: SlotAddress) =>
  `${sessionPath(club, session)}/slots/${encodeURIComponent(slot)}`;

export const readBoard = (address: SlotAddress, signal: AbortSignal): Promise<Board> =>
  read(`${slotPath(address)}/board`, signal);

export const readEvening = (club: string, session: string, signal: AbortSignal): Promise<MyEvening> =>
  read(`${sessionPath(club, session)}/my-evening`, signal);

/** Asks for a change and gives what it was answered with. */
async function post<T>(path: string, body: object | undefined, key: string): Promise<T> {
  return (await change<T>("POST", path, { ...(body && { body }), key })).value;
}

export const claimIt = (address: SlotAddress, body: NewClaim, key: string) =>
  post<Claim>(`${slotPath(address)}/claims`, body, key);

export async function changeHandset(address: SlotAddress, claim: string, handset: string, key: string) {
  const path = `${slotPath(address)}/claims/${claim}/handset`;
  return (await change<Claim>("PUT", path, { body: { handset }, key })).value;
}

export async function giveBack(address: SlotAddress, claim: string, key: string): Promise<GivenBack> {
  return (await change<GivenBack>("DELETE", `${slotPath(address)}/claims/${claim}`, { key })).value;
}

export const joinQueue = (address: SlotAddress, what: What, key: string) =>
  post<QueuePlace>(`${slotPath(address)}/queue`, what, key);

export const leaveQueue = (address: SlotAddress, what: What, key: string) =>
  change("DELETE", `${slotPath(address)}/queue`, { body: what, key });

export const offerSwap = (address: SlotAddress, body: NewSwap, key: string) =>
  post<Swap>(`${slotPath(address)}/swaps`, body, key);

export const answerSwap = (
  address: SlotAddress,
  swap: string,
  answer: "accept" | "refuse" | "withdraw",
  key: string,
) => post<Swapped | undefined>(`${slotPath(address)}/swaps/${swap}/${answer}`, undefined, key);

export async function assign(address: SlotAddress, body: NewAssignment, key: string): Promise<Assigned> {
  return (await change<Assigned>("PUT", `${slotPath(address)}/assignments`, { body, key })).value;
}
