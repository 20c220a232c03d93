import { HeadroomTable } from "../pictures/headroom-table.tsx";
import { LoadPicture } from "../pictures/load-picture.tsx";
import { HOW_TO_MOVE } from "../pictures/plot.tsx";
import { LookingContext } from "../pictures/stage.ts";
import { allFeeds } from "../plan/feeds.ts";
import { MomentBar } from "../plan/moment-bar.tsx";
import { useLookingAt } from "../plan/use-looking-at.ts";
import { SeverityMark, VerdictMark } from "../shell/marks.tsx";
import { answerLoad, drawingFeeds, loadFindings } from "./headline.ts";
import type { SlotCodes, Start } from "./load-service.ts";
import { Surges } from "./surges.tsx";
import { triesInAddress } from "./try-address.ts";
import { TryPanel } from "./try-panel.tsx";
import { useTries } from "./use-tries.ts";
import { WhoDraws } from "./who-draws.tsx";

interface LoadViewProps {
  readonly codes: SlotCodes;
  readonly start: Start;
  readonly again: () => void;
}

/** The answer, what is tried, and every feed with its curve and who makes up its peak. */
export function LoadView({ codes, start, again }: LoadViewProps) {
  const tries = useTries(codes);
  const report = tries.answer?.report ?? start.report;
  const { looking, column } = useLookingAt(report, start.timeZone, triesInAddress(tries.steps));
  const isTried = tries.answer !== null;
  const answer = answerLoad(report);
  const findings = loadFindings(report.findings);
  const before = isTried ? allFeeds(start.report) : [];
  return (
    <LookingContext.Provider value={looking}>
      <section class="answer" aria-label="The answer">
        <p class="headline">
          <VerdictMark verdict={answer.verdict} size={30} /> <span>{answer.sentence}</span>
        </p>
        <p class="answer-facts">
          {isTried && <strong>With what is tried, not as it is.</strong>}
          <span>{answer.tightest}</span>
          <button type="button" class="quiet-button" onClick={again}>
            Add up again
          </button>
        </p>
        {findings.length > 0 && (
          <ul class="load-findings">
            {findings.map((finding) => (
              <li key={`${finding.code} ${finding.sentence}`}>
                <SeverityMark severity={finding.severity} /> {finding.sentence}{" "}
                <span class="quiet">{finding.cure}</span>
              </li>
            ))}
          </ul>
        )}
      </section>
      <div class="plan load">
        <TryPanel codes={codes} start={start} tries={tries} />
        <div class="pictures-column">
          <MomentBar />
          <div class="pictures-measure" ref={column}>
            {looking.stage.width.value > 0 && (
              <section aria-labelledby="currents-heading">
                <h2 id="currents-heading">Headroom</h2>
                <HeadroomTable />
                <p id={HOW_TO_MOVE} class="how-to-move">
                  Press anywhere in a picture to see that moment in all of them. With the keyboard: arrow keys
                  move it, + and − look closer and wider.
                </p>
                {drawingFeeds(report).map((feed) => (
                  <LoadPicture key={feed.id} feed={feed} before={before.find(({ id }) => id === feed.id)}>
                    <Surges feed={feed} />
                    <WhoDraws feed={feed} trains={start.trains} />
                  </LoadPicture>
                ))}
              </section>
            )}
          </div>
        </div>
      </div>
    </LookingContext.Provider>
  );
}
