import { useState } from "preact/hooks";
import { endText } from "../nights/end-text.ts";
import { Why } from "../nights/said.tsx";
import { type BoardRow, rowKey } from "./board-groups.ts";
import { titleOf, useCrew, whatOf } from "./crew.ts";
import { Handsets } from "./handsets.tsx";
import { Queueing } from "./queueing.tsx";
import { roomTime, walkText } from "./times.ts";

/** A train or duty of the board: when, from where to where, with what, and what one can do about it. */
export function RowView({ it }: { readonly it: BoardRow }) {
  const { deeds } = useCrew();
  const { row } = it;
  const isRefused = deeds.refused !== null && deeds.about !== null && isAbout(deeds.about, it);
  return (
    <li class={`crew-row ${row.claim ? "crew-row-taken" : ""}`}>
      <When it={it} />
      <div class="crew-what">
        <p>
          <strong>{titleOf(it.kind, row.code, row.name)}</strong>{" "}
          {it.kind === "train" && <span>{row.name}</span>}
        </p>
        <Where it={it} />
        <With it={it} />
        {row.claim && <p class="crew-taken">Taken by {row.claim.name}.</p>}
        {!row.claim && !row.may && row.why && <p class="crew-why">{row.why.sentence}</p>}
      </div>
      {isRefused && deeds.refused && (
        <div class="said said-no crew-refused" role="alert">
          <Why problem={deeds.refused} />
        </div>
      )}
      {row.may && <Claiming it={it} />}
      {row.claim && <Queueing it={it} />}
    </li>
  );
}

/** The names of deeds tell what they are about, whatever handset was asked for. */
function isAbout(name: string, it: BoardRow): boolean {
  const what = JSON.stringify(whatOf(it)).slice(0, -1);
  return name.startsWith(`claim ${what}`) || name === `join ${rowKey(it)}` || name === `leave ${rowKey(it)}`;
}

function When({ it: { row } }: { readonly it: BoardRow }) {
  const { board } = useCrew();
  return (
    <p class="crew-when">
      <b>{roomTime(row.from.at, board.timeZone)}</b>
      <span>
        <span class="visually-hidden">layout </span>
        {row.from.layout}
      </span>
    </p>
  );
}

function Where({ it: { kind, row } }: { readonly it: BoardRow }) {
  const { board } = useCrew();
  const until = `until ${roomTime(row.to.at, board.timeZone)}`;
  if (kind === "duty")
    return (
      <p>
        {endText(row.from)} {until}
      </p>
    );
  return (
    <p>
      {endText(row.from)} → {endText(row.to)}, {until}
    </p>
  );
}

function With({ it: { kind, row } }: { readonly it: BoardRow }) {
  const facts: string[] = [];
  if (kind === "train") facts.push(...row.locomotives.map(({ code }) => `locomotive ${code}`));
  if (kind === "train" && row.control === "controller") facts.push("driven from the panel");
  if (row.walk) facts.push(`${walkText(row.walk.seconds)}${from(row.walk.fromName)}`);
  if (facts.length === 0) return null;
  return <p class="crew-with">{facts.join(" · ")}</p>;
}

const from = (name: string | null) => (name === null ? "" : ` from ${name}`);

function Claiming({ it }: { readonly it: BoardRow }) {
  const { claim } = useCrew();
  const [chosen, setChosen] = useState<string | null>(null);
  const handsets = it.kind === "train" ? it.row.handsets : [];
  // one that somebody else took since it was chosen is no choice any more
  const handset =
    chosen !== null && handsets.includes(chosen)
      ? chosen
      : (it.kind === "train" && it.row.handset) || undefined;
  const title = titleOf(it.kind, it.row.code, it.row.name);
  return (
    <div class="crew-do">
      {it.kind === "train" && handset !== undefined && (
        <Handsets
          label={`Handset for ${title}`}
          codes={it.row.handsets}
          handset={handset}
          choose={setChosen}
        />
      )}
      <button
        type="button"
        class="claim-button"
        aria-label={`Claim ${title}`}
        onClick={() => claim(it, handset)}
      >
        Claim
      </button>
    </div>
  );
}
