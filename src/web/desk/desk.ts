import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Booking } from "../../../shared/booking.ts";
import type { Board } from "../../../shared/claims.ts";
import type { Member } from "../../../shared/members.ts";
import type { Deeds } from "../nights/use-deeds.ts";
import type { NightAddress } from "./desk-service.ts";

/** All that the desk shows of a night. */
export interface DeskView {
  readonly booking: Booking;
  /** One a slot, in their order. */
  readonly boards: readonly Board[];
  readonly members: readonly Member[];
}

export interface Desk extends DeskView {
  readonly address: NightAddress;
  /** The club's. */
  readonly timeZone: string;
  readonly deeds: Deeds;
  /** Whether whoever looks may book: others read. */
  readonly mayBook: boolean;
  /** The booking's version as it is when a button is pressed. */
  readonly version: () => number;
}

export const DeskContext = createContext<Desk | null>(null);

export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (!desk) throw new Error("This part stands outside a desk.");
  return desk;
}
