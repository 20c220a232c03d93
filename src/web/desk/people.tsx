import type { Member } from "../../../shared/members.ts";
import { useWish } from "../nights/use-wish.ts";
import { useDesk } from "./desk.ts";
import { sayComing } from "./desk-service.ts";

interface Part {
  readonly member: Member;
  readonly trains: number;
  readonly duties: number;
  readonly isComing: boolean;
}

/** Everybody, those without anything first: who has not claimed, and who will be there nevertheless. */
export function People() {
  const parts = useParts();
  const without = parts.filter(({ trains, duties }) => trains + duties === 0);
  const withSome = parts.filter(({ trains, duties }) => trains + duties > 0);
  return (
    <section aria-labelledby="people-heading">
      <h2 id="people-heading">
        {without.length === 0 ? "Everybody has something" : `Nothing claimed yet: ${without.length}`}
      </h2>
      <ul class="parts">
        {without.map((part) => (
          <PartRow key={part.member.code} part={part} />
        ))}
      </ul>
      {withSome.length > 0 && (
        <details class="fold">
          <summary>{withSome.length} with something</summary>
          <ul class="parts">
            {withSome.map((part) => (
              <PartRow key={part.member.code} part={part} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function useParts(): readonly Part[] {
  const { members, boards, booking } = useDesk();
  const count = (code: string, kind: "trains" | "duties") =>
    boards.reduce((sum, board) => sum + board[kind].filter(({ claim }) => claim?.member === code).length, 0);
  return members.map((member) => ({
    member,
    trains: count(member.code, "trains"),
    duties: count(member.code, "duties"),
    isComing: booking.attending.includes(member.code),
  }));
}

const counted = (n: number, one: string, many: string) => (n === 0 ? null : `${n} ${n === 1 ? one : many}`);

function PartRow({ part }: { readonly part: Part }) {
  const { address, deeds, mayBook } = useDesk();
  const { member, trains, duties, isComing } = part;
  const has = [counted(trains, "train", "trains"), counted(duties, "duty", "duties")].filter(Boolean);
  const wish = useWish(isComing);
  const say = () =>
    deeds.run({
      name: `coming ${member.code} ${!isComing}`,
      deed: (key) => sayComing(address, { member: member.code, coming: !isComing }, key),
      tell: () => ({
        text: isComing ? `${member.name} is not expected.` : `${member.name} will be there.`,
      }),
    });
  const isThere = isComing || has.length > 0;
  return (
    <li>
      <span>
        {member.name}
        {member.junior && <span class="quiet"> junior</span>}
        {has.length > 0 && <span class="quiet"> {has.join(", ")}</span>}
      </span>
      {mayBook && has.length === 0 ? (
        <label class="coming">
          <input type="checkbox" checked={wish.shown} onChange={() => void wish.set(!isComing, say)} /> will
          be there
          <span class="visually-hidden">: {member.name}</span>
        </label>
      ) : (
        <span class="quiet">{isThere ? "will be there" : ""}</span>
      )}
    </li>
  );
}
