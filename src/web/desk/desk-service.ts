import type { Booking, BookingBody, Duty, NewBookingMove, NewComing } from "../../../shared/booking.ts";
import type { Fairness } from "../../../shared/claims.ts";
import type { Member } from "../../../shared/members.ts";
import { change, read } from "../api/ask.ts";
import { clubPath, sessionPath } from "../api/service.ts";
import { readAll } from "../nights/night-records.ts";

/** The night whose desk it is. */
export interface NightAddress {
  readonly club: string;
  readonly session: string;
}

/** A record as a list gives it: with the version that a change of it must name. */
export type Versioned<T> = T & { readonly version: number };

const bookingPath = ({ club, session }: NightAddress) => `${sessionPath(club, session)}/booking`;
const tag = (version: number) => `"${version}"`;

export const readBooking = (address: NightAddress, signal: AbortSignal): Promise<Booking> =>
  read(bookingPath(address), signal);

export const listMembers = (club: string, signal: AbortSignal) =>
  readAll<Member>(`${clubPath(club)}/members`, signal);

export const readFairness = (club: string, year: number, signal: AbortSignal): Promise<Fairness> =>
  read(`${clubPath(club)}/fairness?year=${year}`, signal);

export async function moveBooking(
  address: NightAddress,
  version: number,
  body: NewBookingMove,
  key: string,
): Promise<Booking> {
  const path = `${bookingPath(address)}/moves`;
  return (await change<Booking>("POST", path, { body, etag: tag(version), key })).value;
}

export async function saveBooking(
  address: NightAddress,
  version: number,
  body: BookingBody,
): Promise<Booking> {
  return (await change<Booking>("PUT", bookingPath(address), { body, etag: tag(version) })).value;
}

export async function sayComing(address: NightAddress, body: NewComing, key: string): Promise<Booking> {
  return (await change<Booking>("POST", `${bookingPath(address)}/coming`, { body, key })).value;
}

const dutiesPath = ({ club, session }: NightAddress, slot: string) =>
  `${sessionPath(club, session)}/slots/${encodeURIComponent(slot)}/duties`;

export const listDuties = (address: NightAddress, slot: string, signal: AbortSignal) =>
  readAll<Versioned<Duty>>(dutiesPath(address, slot), signal);

export const addDuty = (address: NightAddress, slot: string, body: Partial<Duty>, key: string) =>
  change<Duty>("POST", dutiesPath(address, slot), { body, key });

export const removeDuty = (address: NightAddress, slot: string, { code, version }: Versioned<Duty>) =>
  change("DELETE", `${dutiesPath(address, slot)}/${encodeURIComponent(code)}`, { etag: tag(version) });
