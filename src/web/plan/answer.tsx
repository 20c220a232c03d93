import type { CheckReport } from "../../../shared/check.ts";
import { VerdictMark } from "../shell/marks.tsx";
import { allFeeds, strain } from "./feeds.ts";
import { count, percent } from "./figures.ts";

interface AnswerProps {
  readonly report: CheckReport;
  readonly again: () => void;
}

/** The answer in a sentence, what was checked, and where it is tightest. */
export function Answer({ report, again }: AnswerProps) {
  return (
    <section class="answer" aria-label="The answer">
      <p class="headline">
        <VerdictMark verdict={report.verdict} size={30} /> <span>{report.headline}</span>
      </p>
      <p class="answer-facts">
        <span>{checked(report)}</span>
        <span>{leastRoom(report)}</span>
        <button type="button" class="quiet-button" onClick={() => recheck(again)}>
          Check again
        </button>
      </p>
    </section>
  );
}

/** The button goes away while the night is checked, so the focus goes to the page's heading first. */
function recheck(again: () => void): void {
  document.querySelector("h1")?.focus();
  again();
}

function checked({ trains, trainsNotInSlot }: CheckReport): string {
  const left = trainsNotInSlot.length;
  if (left === 0) return `${count(trains.length, "train")} checked.`;
  return `${count(trains.length, "train")} checked; ${left} more of the timetable ${left === 1 ? "departs" : "depart"} outside this slot.`;
}

/** The feed that comes nearest to its limit, or furthest over it. */
function leastRoom(report: CheckReport): string {
  const tightest = allFeeds(report).sort((a, b) => strain(b) - strain(a))[0];
  if (!tightest || tightest.load.peakMa === 0) return "";
  const { title, load } = tightest;
  const free = 1 - strain(tightest);
  const room = free < 0 ? `${percent(-free)} over its limit` : `${percent(free)} free`;
  return `Least room: ${title}, ${room} at ${load.peakLayout}.`;
}
