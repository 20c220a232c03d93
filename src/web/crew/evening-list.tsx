import { useState } from "preact/hooks";
import type { EveningItem } from "../../../shared/claims.ts";
import { endText } from "../nights/end-text.ts";
import { useWish } from "../nights/use-wish.ts";
import { titleOf, useCrew } from "./crew.ts";
import { Handsets } from "./handsets.tsx";
import { SwapForm } from "./swap-form.tsx";
import { roomTime, walkText } from "./times.ts";

/** What one has tonight, on top of the board. */
export function EveningList() {
  const { board } = useCrew();
  const { evening } = board;
  return (
    <section aria-labelledby="evening-heading" class="evening">
      <h2 id="evening-heading">{headingOf(evening)}</h2>
      {evening.length > 0 && (
        <ol>
          {evening.map((item) => (
            <EveningRow key={item.claim.id} item={item} />
          ))}
        </ol>
      )}
    </section>
  );
}

function headingOf(evening: readonly EveningItem[]): string {
  const [trains, duties] = ["train", "duty"].map(
    (kind) => evening.filter(({ claim }) => claim.kind === kind).length,
  ) as [number, number];
  const parts = [
    trains > 0 && `${trains} ${trains === 1 ? "train" : "trains"}`,
    duties > 0 && `${duties} ${duties === 1 ? "duty" : "duties"}`,
  ].filter(Boolean);
  return parts.length === 0 ? "Your evening: nothing yet" : `Your evening: ${parts.join(" and ")}`;
}

/** Locomotive with address, handset or panel. */
export function equipmentOf({ claim, locomotives, handset, control }: EveningItem): readonly string[] {
  const parts = locomotives.map(({ code, address }) =>
    address ? `locomotive ${code}, address ${address.number}` : `locomotive ${code}`,
  );
  if (claim.handset !== null) parts.push(`handset ${claim.handset}${handset ? `, ${handset.kind}` : ""}`);
  if (control === "controller") parts.push("driven from the panel");
  if (control === "both") parts.push("then from the panel");
  return parts;
}

/** Another handset for a train that one has, where others fit and are free. */
function HandsetChoice({ item }: { readonly item: EveningItem }) {
  const { board, changeHandset } = useCrew();
  const { claim } = item;
  const wish = useWish(claim.handset ?? "");
  const row = board.slot === claim.slot ? board.trains.find(({ code }) => code === claim.code) : undefined;
  const others = row?.handsets.filter((code) => code !== claim.handset) ?? [];
  if (claim.handset === null || others.length === 0 || board.state !== "open") return null;
  return (
    <Handsets
      label={`Handset for ${titleOf(claim.kind, claim.code, item.name)}`}
      codes={[claim.handset, ...others]}
      handset={wish.shown}
      choose={(handset) => void wish.set(handset, () => changeHandset(item, handset))}
    />
  );
}

function EveningRow({ item }: { readonly item: EveningItem }) {
  const { board, giveBack } = useCrew();
  const [isSwapping, setSwapping] = useState(false);
  const { claim, from, to, walkSeconds } = item;
  const title = titleOf(claim.kind, claim.code, item.name);
  const id = `swap-${claim.id}`;
  return (
    <li class="crew-row crew-row-mine">
      <p class="crew-when">
        <b>{roomTime(from.at, board.timeZone)}</b>
        <span>
          <span class="visually-hidden">layout </span>
          {from.layout}
        </span>
      </p>
      <div class="crew-what">
        <p>
          <strong>{title}</strong> {claim.kind === "train" && item.name}
          {claim.assigned && <span class="quiet"> assigned to you</span>}
        </p>
        <p>
          {endText(from)}
          {claim.kind === "train" && ` → ${endText(to)}`}, until {roomTime(to.at, board.timeZone)}
        </p>
        <p class="crew-with">{equipmentOf(item).join(" · ")}</p>
        {walkSeconds !== null && walkSeconds > 0 && <p class="crew-with">{walkText(walkSeconds)} to it</p>}
        {claim.problems.map(({ code, sentence }) => (
          <p key={code} class="missing">
            {sentence}
          </p>
        ))}
      </div>
      <div class="crew-do">
        <HandsetChoice item={item} />
        <button
          type="button"
          class="big-button"
          aria-label={`Give back ${title}`}
          onClick={() => giveBack(item)}
        >
          Give back
        </button>
        <button
          type="button"
          class="big-button"
          aria-label={`Swap ${title}`}
          aria-expanded={isSwapping}
          aria-controls={id}
          onClick={() => setSwapping(!isSwapping)}
        >
          Swap
        </button>
      </div>
      <div id={id} class="crew-refused" hidden={!isSwapping}>
        {isSwapping && <SwapForm item={item} close={() => setSwapping(false)} />}
      </div>
    </li>
  );
}
