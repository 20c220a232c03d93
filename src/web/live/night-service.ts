import type { Candidates, Night } from "../../../shared/night.ts";
import { change, read } from "../api/ask.ts";
import { clubPath, sessionPath } from "../api/service.ts";
import { readAll } from "../nights/night-records.ts";

interface NightAddress {
  readonly club: string;
  readonly session: string;
}

interface TrainAddress extends NightAddress {
  readonly slot: string;
  readonly train: string;
}

const nightPath = ({ club, session }: NightAddress) => `${sessionPath(club, session)}/night`;

export function readNight(address: NightAddress, signal: AbortSignal): Promise<Night> {
  return read(nightPath(address), signal);
}

/** What could take a locomotive's place in a train. */
export function readCandidates(
  address: TrainAddress,
  locomotive: string,
  signal: AbortSignal,
): Promise<Candidates> {
  const train = `trains/${encodeURIComponent(address.slot)}/${encodeURIComponent(address.train)}`;
  const query = `locomotive=${encodeURIComponent(locomotive)}`;
  return read(`${nightPath(address)}/${train}/replacements?${query}`, signal);
}

interface NightChange {
  readonly method: "PUT" | "POST" | undefined;
  readonly path: string;
  readonly body: object;
  readonly version: number | undefined;
}

/** `version` goes as the ETag of what is changed; `key` makes sure that one press is done once. */
export function changeNight(
  address: NightAddress,
  { method = "POST", path, body, version }: NightChange,
  key: string,
) {
  const etag = version === undefined ? null : `"${version}"`;
  return change(method, `${nightPath(address)}/${path}`, { body, etag, key });
}

export const listDistricts = async (club: string, signal: AbortSignal) =>
  readAll<{ readonly code: string; readonly name: string }>(`${clubPath(club)}/districts`, signal);
