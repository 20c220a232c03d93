import type { EstimateRow } from "../../../shared/estimates.ts";
import type { ReadingState } from "../../../shared/readings.ts";
import type { CurrentFigure, Decoder, Locomotive, Rake } from "../../../shared/roster.ts";

/** One line of the table of what something draws. */
export interface Draw extends CurrentFigure {
  readonly when: string;
  /** What follows from readings of it; null where they are not taken of such a figure. */
  readonly estimate: EstimateRow | null;
}

/** A locomotive's figures, with what is known of each from meters. */
export function drawsOf(
  { running, standing, stall, inrush }: Locomotive,
  estimates: readonly EstimateRow[],
): readonly Draw[] {
  const estimate = (state: ReadingState) => estimates.find((row) => row.state === state) ?? null;
  return [
    { when: "Running", ...running, estimate: estimate("running") },
    { when: "Standing", ...standing, estimate: estimate("standing") },
    { when: "Stalled", ...stall, estimate: estimate("stalled") },
    { when: "As power returns", ...inrush, estimate: estimate("inrush") },
  ];
}

export const drawsOfRake = ({ lighting, inrush }: Rake): readonly Draw[] => [
  { when: "Its lights", ...lighting, estimate: null },
  { when: "As power returns", ...inrush, estimate: null },
];

/** What it draws at most and what it answers to, in a sentence. */
export function sayLocomotive(
  { running, standing, stall, inrush }: Locomotive,
  decoder: Decoder | null,
): string {
  const answers =
    decoder === null
      ? "it has no decoder and runs on analog track only"
      : `it answers to ${decoder.addressKind} address ${decoder.address}`;
  return `Draws ${running.ma} mA running and ${stall.ma} mA stalled; ${answers}. ${sayMeasured([running, standing, stall, inrush])}`;
}

export const sayRake = (rake: Rake): string =>
  `${rake.vehicles} vehicle${rake.vehicles === 1 ? "" : "s"}, lights draw ${rake.lighting.ma} mA. ${sayMeasured([rake.lighting, rake.inrush])}`;

function sayMeasured(draws: readonly CurrentFigure[]): string {
  const guessed = draws.filter(({ source }) => source !== "measured");
  if (guessed.length === 0) return "Every figure is measured.";
  if (guessed.length === draws.length) return "None of its figures is measured.";
  return `${guessed.length} of its ${draws.length} figures are not measured.`;
}
