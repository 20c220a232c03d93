import type { CheckReport } from "../../../shared/check.ts";
import { LookingContext } from "../pictures/stage.ts";
import { Answer } from "./answer.tsx";
import { FindingsList } from "./findings-list.tsx";
import { MomentBar } from "./moment-bar.tsx";
import { Pictures } from "./pictures.tsx";
import { useLookingAt } from "./use-looking-at.ts";

interface PlanProps {
  readonly report: CheckReport;
  readonly timeZone: string;
  readonly again: () => void;
}

/** The answer in a sentence, then the findings, then the pictures, all looking at one moment. */
export function Plan({ report, timeZone, again }: PlanProps) {
  const { looking, column } = useLookingAt(report, timeZone);
  return (
    <LookingContext.Provider value={looking}>
      <Answer report={report} again={again} />
      <div class="plan">
        <section class="findings-column" aria-labelledby="findings-heading">
          <h2 id="findings-heading">{report.findings.length === 0 ? "Findings: none" : "Findings"}</h2>
          <FindingsList />
        </section>
        <div class="pictures-column">
          <MomentBar />
          <div class="pictures-measure" ref={column}>
            {looking.stage.width.value > 0 && <Pictures />}
          </div>
        </div>
      </div>
    </LookingContext.Provider>
  );
}
