import type { CheckReport } from "../../../shared/check.ts";
import { look } from "../plan/emphasis.ts";
import { amps, count, listed } from "../plan/figures.ts";
import { useLooking } from "./stage.ts";

type Analog = CheckReport["analog"];
type Run = Analog["runs"][number];

function statement({ status, runs, core }: Analog): string {
  switch (status) {
    case "assigned":
      return `Every one of the ${count(runs.length, "run")} has an output`;
    case "impossible":
      return `No way of sharing the outputs serves every run: the ${core.length} marked ones cannot be served together`;
    case "not-decided":
      return "Whether the outputs suffice could not be settled";
  }
}

/** Which run gets which controller output, in order of time: what the person at the panel will set. */
export function Assignments() {
  const { view } = useLooking();
  const { analog } = view.report;
  const core = new Set(analog.core);
  const ordered = analog.runs
    .map((run, i) => ({ run, isCore: core.has(i) }))
    .sort((a, b) => a.run.span.startMs - b.run.span.startMs || (a.run.train < b.run.train ? -1 : 1));
  const heading = statement(analog);
  return (
    <figure id="assignments" class="picture">
      <figcaption>
        <h3>{heading}</h3>
      </figcaption>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls has to be reachable by keyboard */}
      <section class="table-frame" tabIndex={0} aria-label={heading}>
        <table class="assignments">
          <thead>
            <tr>
              <th scope="col">Train</th>
              <th scope="col">Output</th>
              <th scope="col">Layout time</th>
              <th scope="col">Room clock</th>
              <th scope="col">Sections</th>
              <th scope="col" class="figure">
                Draws
              </th>
              <th scope="col">Could also have</th>
            </tr>
          </thead>
          <tbody>
            {ordered.map(({ run, isCore }) => (
              <RunRow key={`${run.train} ${run.span.startMs}`} run={run} isCore={isCore} />
            ))}
          </tbody>
        </table>
      </section>
      <p class="picture-note">
        <a href={`${location.pathname}/panel`}>When to turn which selector</a>
      </p>
    </figure>
  );
}

function RunRow({ run, isCore }: { readonly run: Run; readonly isCore: boolean }) {
  const { view } = useLooking();
  const { clocks } = view;
  const { span } = run;
  const moment = view.moment.value;
  const isNow = span.startMs <= moment && moment < span.endMs;
  const others = run.candidates.filter((output) => output !== run.output);
  const classes = [
    isNow && "row-now",
    isCore && "row-core",
    view.emphasis.value.trains.has(run.train) && "row-concerned",
  ];
  return (
    <tr class={classes.filter(Boolean).join(" ")} aria-current={isNow ? "time" : undefined}>
      <th scope="row">
        <span class={`train-code ${look(view.emphasis.value, run.train)}`}>{run.train}</span>
      </th>
      <td>
        {run.output ?? <strong class="none-left">none left</strong>}
        {isCore && <span class="core-mark"> not together</span>}
      </td>
      <td>
        {clocks.layoutText(span.startMs)}–{clocks.layoutText(span.endMs)}
      </td>
      <td>
        {clocks.roomText(span.startMs)}–{clocks.roomText(span.endMs)}
      </td>
      <td>{run.sections.map(({ section }) => section).join(" ")}</td>
      <td class="figure">{amps(run.runningMa)}</td>
      <td>{others.length === 0 ? "–" : listed(others)}</td>
    </tr>
  );
}
