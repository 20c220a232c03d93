import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Board, Claim, EveningItem } from "../../../shared/claims.ts";
import type { Deeds } from "../nights/use-deeds.ts";
import { type BoardRow, rowKey } from "./board-groups.ts";
import {
  changeHandset,
  claimIt,
  giveBack,
  joinQueue,
  leaveQueue,
  type SlotAddress,
  type What,
} from "./crew-service.ts";

/** The claim board as one member sees it, and what they can do on it. */
export interface Crew {
  readonly address: SlotAddress;
  readonly board: Board;
  readonly deeds: Deeds;
  readonly claim: (it: BoardRow, handset: string | undefined) => void;
  readonly giveBack: (item: EveningItem) => void;
  /** Answers whether it was done. */
  readonly changeHandset: (item: EveningItem, handset: string) => Promise<boolean>;
  readonly join: (it: BoardRow) => void;
  readonly leave: (it: BoardRow) => void;
}

export const CrewContext = createContext<Crew | null>(null);

export function useCrew(): Crew {
  const crew = useContext(CrewContext);
  if (!crew) throw new Error("This part stands outside a claim board.");
  return crew;
}

export const whatOf = ({ kind, row }: BoardRow): What =>
  kind === "train" ? { train: row.code } : { duty: row.code };

/** `Train 12`; a duty goes by its name. */
export const titleOf = (kind: "train" | "duty", code: string, name: string) =>
  kind === "train" ? `Train ${code}` : name;

const withHandset = ({ handset }: Claim) => (handset === null ? "" : `, with handset ${handset}`);

export function createCrew(address: SlotAddress, board: Board, deeds: Deeds): Crew {
  const back = (at: SlotAddress, { id, handset, kind, code }: Claim, title: string): void => {
    const again = kind === "train" ? { train: code } : { duty: code };
    const body = handset === null ? again : { ...again, handset };
    void deeds.run({
      name: `give back ${id}`,
      deed: (key) => giveBack(at, id, key),
      tell: ({ next }) =>
        next
          ? { text: `${title} went to ${next.name}, who waited for it.` }
          : { text: `${title} is given back.`, undo: () => take(at, body, title) },
    });
  };
  const take = (at: SlotAddress, body: What & { handset?: string }, title: string): void =>
    void deeds.run({
      name: `claim ${JSON.stringify(body)}`,
      deed: (key) => claimIt(at, body, key),
      tell: (claim) => ({
        text: `${title} is yours${withHandset(claim)}.`,
        undo: () => back(at, claim, title),
      }),
    });
  const changeTo = (claim: Claim, handset: string, title: string): Promise<boolean> =>
    deeds.run({
      name: `handset ${claim.id} ${handset}`,
      deed: (key) => changeHandset({ ...address, slot: claim.slot }, claim.id, handset, key),
      tell: (now) => ({
        text: `${title} is driven with handset ${now.handset}.`,
        undo: claim.handset === null ? undefined : () => void changeTo(now, claim.handset ?? "", title),
      }),
    });
  const titled = ({ kind, row }: BoardRow) => titleOf(kind, row.code, row.name);
  return {
    address,
    board,
    deeds,
    claim: (it, handset) =>
      take(address, handset === undefined ? whatOf(it) : { ...whatOf(it), handset }, titled(it)),
    giveBack: ({ claim, name }) =>
      back({ ...address, slot: claim.slot }, claim, titleOf(claim.kind, claim.code, name)),
    changeHandset: ({ claim, name }, handset) =>
      changeTo(claim, handset, titleOf(claim.kind, claim.code, name)),
    join: (it) =>
      void deeds.run({
        name: `join ${rowKey(it)}`,
        deed: (key) => joinQueue(address, whatOf(it), key),
        tell: ({ place }) => ({
          text: `You wait for ${lowered(titled(it))}, ${ordinal(place)} in the queue. You get it by itself once it is given back.`,
        }),
      }),
    leave: (it) =>
      void deeds.run({
        name: `leave ${rowKey(it)}`,
        deed: (key) => leaveQueue(address, whatOf(it), key),
        tell: () => ({ text: `You no longer wait for ${lowered(titled(it))}.` }),
      }),
  };
}

const lowered = (title: string) => title.replace(/^Train /, "train ");

/** `first`, `second`, `third`, and from there in figures. */
export function ordinal(place: number): string {
  const few = ["first", "second", "third"][place - 1];
  if (few !== undefined) return few;
  const ends = ["th", "st", "nd", "rd"];
  const isTeen = place % 100 > 10 && place % 100 < 14;
  return `${place}${(isTeen ? undefined : ends[place % 10]) ?? "th"}`;
}
