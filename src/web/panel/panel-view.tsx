import { planAddress } from "../addresses.ts";
import { createClocks } from "../charts/clocks.ts";
import { VerdictMark } from "../shell/marks.tsx";
import { PanelPicture } from "./panel-picture.tsx";
import { type Panel, type SlotCodes, sheetPath } from "./panel-service.ts";
import { SectionTable } from "./section-table.tsx";
import { TurnList } from "./turn-list.tsx";

interface PanelViewProps {
  readonly codes: SlotCodes;
  readonly panel: Panel;
}

/** The answer, then the turns for the person at the panel: by time, by section and as a picture. */
export function PanelView({ codes, panel }: PanelViewProps) {
  const { schedule, timeZone } = panel;
  const { slot, clockRatio } = schedule;
  const clocks = createClocks({ ...slot, clockRatio, timeZone });
  const isMade = schedule.status === "made";
  return (
    <>
      <section class="answer" aria-label="The answer">
        <p class="headline">
          <VerdictMark verdict={isMade || schedule.status === "no-analog" ? "runs" : "stopped"} size={30} />{" "}
          <span>{schedule.headline}</span>
        </p>
        {isMade ? <WhatToDo codes={codes} /> : <WhyNone codes={codes} panel={panel} />}
      </section>
      {isMade && (
        <>
          <TurnList schedule={schedule} clocks={clocks} />
          <SectionTable schedule={schedule} />
          <PanelPicture schedule={schedule} clocks={clocks} />
          <Rules />
        </>
      )}
    </>
  );
}

function WhatToDo({ codes }: { readonly codes: SlotCodes }) {
  return (
    <p class="answer-facts">
      <span>Begin with every selector off.</span>
      <button type="button" class="quiet-button" onClick={() => window.print()}>
        Print
      </button>
      <a class="panel-sheet" href={sheetPath(codes)} download>
        Download as a sheet
      </a>
    </p>
  );
}

function WhyNone({ codes, panel }: PanelViewProps) {
  const { club, session, slot } = codes;
  return (
    <>
      {panel.schedule.reasons.length > 0 && (
        <ul class="panel-reasons">
          {panel.schedule.reasons.map(({ sentence, cure }) => (
            <li key={sentence}>
              {sentence} <span class="quiet">{cure}</span>
            </li>
          ))}
        </ul>
      )}
      <p class="answer-facts">
        <a href={planAddress(club, session, slot)}>To the plan of this slot</a>
      </p>
    </>
  );
}

function Rules() {
  return (
    <section class="panel-rules" aria-labelledby="panel-rules">
      <h2 id="panel-rules">What the schedule keeps to</h2>
      <ul>
        <li>No selector is turned while anything runs in its section.</li>
        <li>Stock that stands parked stands in a section that is off.</li>
        <li>
          From one output to another a selector goes by way of off: it must break before it makes, and it
          never joins two outputs, or an output and a digital supply.
        </li>
        <li>
          Everybody knows the one switch that stops all traction supplies. Work on mains, transformers and
          earthing is for a qualified person under local rules.
        </li>
      </ul>
    </section>
  );
}
