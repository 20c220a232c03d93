/** As the service takes it: `currentMa`. */
const MOST_MA = 100_000;

/** What somebody wrote down of a meter, in whole mA; or what to write instead. */
export function readMeter(text: string): { readonly ma: number } | { readonly fault: string } {
  const written = text.trim();
  if (/^\d+$/.test(written) && Number(written) <= MOST_MA) return { ma: Number(written) };
  const amps = /^\d*[.,]\d+$/.test(written) ? ` ${written} A would be ${toMa(written)}.` : "";
  return {
    fault: `Write what the meter showed as a whole number of mA, 0 to ${MOST_MA}: 320.${amps}`,
  };
}

const toMa = (amps: string) => Math.round(Number(amps.replace(",", ".")) * 1_000);
