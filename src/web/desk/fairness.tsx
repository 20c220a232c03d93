import { useState } from "preact/hooks";
import type { Fairness as FairnessAnswer } from "../../../shared/claims.ts";
import { useLoad } from "../api/use-load.ts";
import { Loaded } from "../shell/loaded.tsx";
import { useDesk } from "./desk.ts";
import { readFairness } from "./desk-service.ts";

/** Who has driven how much this year, least first: whom to ask for a train that has no driver. */
export function Fairness() {
  const { booking } = useDesk();
  const [isOpen, setOpen] = useState(false);
  const year = new Date(booking.startsAt).getFullYear();
  return (
    <details class="fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Who has driven how much in {year}</summary>
      {isOpen && <FairnessOf year={year} />}
    </details>
  );
}

function FairnessOf({ year }: { readonly year: number }) {
  const { address } = useDesk();
  const load = useLoad(`${address.club} ${year}`, (signal) => readFairness(address.club, year, signal));
  return (
    <Loaded load={load} what="Adding up">
      {(fairness) => <FairnessTable fairness={fairness} />}
    </Loaded>
  );
}

const hours = (minutes: number) => `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;

function FairnessTable({ fairness }: { readonly fairness: FairnessAnswer }) {
  return (
    <div class="table-frame">
      <table>
        <caption class="visually-hidden">Driving and duties of every member, least driven first</caption>
        <thead>
          <tr>
            <th>Member</th>
            <th class="figure">Nights</th>
            <th class="figure">Trains</th>
            <th class="figure">Driven, h</th>
            <th class="figure">Duties</th>
            <th class="figure">On duty, h</th>
            <th class="figure">Still to come</th>
          </tr>
        </thead>
        <tbody>
          {fairness.items.map((item) => (
            <tr key={item.member}>
              <th scope="row">{item.name}</th>
              <td class="figure">{item.nights}</td>
              <td class="figure">{item.trains}</td>
              <td class="figure">{hours(item.drivenMinutes)}</td>
              <td class="figure">{item.duties}</td>
              <td class="figure">{hours(item.dutyMinutes)}</td>
              <td class="figure">{item.coming}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
