import type { CheckReport } from "../../../shared/check.ts";

const amps = (ma: number) => `${(ma / 1_000).toFixed(2)} A`;

/** How much of the load nearest to its limit rests on measured figures. */
export function sayMeasured(night: string, { districts, outputs }: CheckReport): string {
  const [worst] = [...districts, ...outputs]
    .filter(({ measuredMa, assumedMa }) => measuredMa + assumedMa > 0)
    .sort((a, b) => b.peakMa / b.limitMa - a.peakMa / a.limitMa);
  if (worst === undefined) return `Nothing draws any current in ${night}.`;
  const { name, peakMa, lowMa, highMa, limitMa, measuredMa, assumedMa } = worst;
  const share = Math.round((100 * measuredMa) / (measuredMa + assumedMa));
  return `${share} % of the worst peak of ${night} is measured: ${name}, ${amps(peakMa)} of ${amps(limitMa)}, which may be anything from ${amps(lowMa)} to ${amps(highMa)}.`;
}
