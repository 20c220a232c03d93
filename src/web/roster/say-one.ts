import type { CurrentFigure, Decoder, Locomotive, Rake } from "../../../shared/roster.ts";

/** One line of the table of what something draws. */
export interface Draw extends CurrentFigure {
  readonly when: string;
}

export const drawsOf = ({ running, standing, stall, inrush }: Locomotive): readonly Draw[] => [
  { when: "Running", ...running },
  { when: "Standing", ...standing },
  { when: "Stalled", ...stall },
  { when: "As power returns", ...inrush },
];

export const drawsOfRake = ({ lighting, inrush }: Rake): readonly Draw[] => [
  { when: "Its lights", ...lighting },
  { when: "As power returns", ...inrush },
];

/** What it draws at most and what it answers to, in a sentence. */
export function sayLocomotive(locomotive: Locomotive, decoder: Decoder | null): string {
  const { running, stall } = locomotive;
  const answers =
    decoder === null
      ? "it has no decoder and runs on analog track only"
      : `it answers to ${decoder.addressKind} address ${decoder.address}`;
  return `Draws ${running.ma} mA running and ${stall.ma} mA stalled; ${answers}. ${sayMeasured(drawsOf(locomotive))}`;
}

export const sayRake = (rake: Rake): string =>
  `${rake.vehicles} vehicle${rake.vehicles === 1 ? "" : "s"}, lights draw ${rake.lighting.ma} mA. ${sayMeasured(drawsOfRake(rake))}`;

function sayMeasured(draws: readonly Draw[]): string {
  const guessed = draws.filter(({ source }) => source !== "measured");
  if (guessed.length === 0) return "Every figure is measured.";
  if (guessed.length === draws.length) return "None of its figures is measured.";
  return `${guessed.length} of its ${draws.length} figures are not measured.`;
}
