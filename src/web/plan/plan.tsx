import { useEffect, useLayoutEffect, useMemo, useRef } from "preact/hooks";
import type { CheckReport } from "../../../shared/check.ts";
import { LookingContext, Stage } from "../pictures/stage.ts";
import { Answer } from "./answer.tsx";
import { FindingsList } from "./findings-list.tsx";
import { keepAddress } from "./keep-address.ts";
import { MomentBar } from "./moment-bar.tsx";
import { Pictures } from "./pictures.tsx";
import { PlanView } from "./plan-view.ts";

interface PlanProps {
  readonly report: CheckReport;
  readonly timeZone: string;
  readonly again: () => void;
}

/** The answer in a sentence, then the findings, then the pictures, all looking at one moment. */
export function Plan({ report, timeZone, again }: PlanProps) {
  const looking = useMemo(() => {
    const view = new PlanView(report, timeZone, location.search);
    return { view, stage: new Stage(view.window) };
  }, [report, timeZone]);
  useEffect(() => keepAddress(looking.view), [looking]);
  const column = useRef<HTMLDivElement>(null);
  const { width } = looking.stage;
  useLayoutEffect(() => {
    const element = column.current;
    if (!element) return;
    const measure = () => {
      width.value = Math.floor(element.clientWidth);
    };
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [width]);
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
            {width.value > 0 && <Pictures />}
          </div>
        </div>
      </div>
    </LookingContext.Provider>
  );
}
