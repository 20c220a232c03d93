import type { DistrictWiring } from "../../../shared/wiring.ts";

type Told = Pick<DistrictWiring, "name" | "wire" | "test">;

// as many places as the table below it shows
const amps = (ma: number) => `${(ma / 1_000).toFixed(2)} A`;
const volts = (value: number) => `${value.toFixed(2)} V`;

/** How a district stands: the gravest thing first. */
export function sayDistrict({ name, wire, test }: Told): Pick<DistrictWiring, "sentence" | "isSound"> {
  const wrong: string[] = [];
  if (test?.result === "failed") wrong.push("failed its last short test");
  if (wire?.faultFails && wire.faultMa !== null)
    wrong.push(
      `would not be sure to trip on a short at its far end, which brings only ${amps(wire.faultMa)}`,
    );
  if (wire?.voltsFail)
    wrong.push(
      wire.farEndV > 0
        ? `has only ${volts(wire.farEndV)} left at its far end`
        : "has nothing left of its volts at its far end",
    );
  if (wire?.dropFails) wrong.push(`loses ${volts(wire.dropV)} in its wires`);
  if (test === null) wrong.push("has no short test on record");
  if (wrong.length > 0) return { sentence: `${name} ${listed(wrong)}.`, isSound: false };
  if (wire === null)
    return {
      sentence: `${name} passed its short test; its wiring is not written down, so nothing can be reckoned.`,
      isSound: false,
    };
  return {
    sentence: `${name} is wired so that its breaker sees a short, and passed its test on ${test?.testedOn}.`,
    isSound: true,
  };
}

export function sayWiring(districts: readonly Pick<DistrictWiring, "name" | "isSound">[]): string {
  if (districts.length === 0) return "The railway has no power districts, so there is nothing to reckon.";
  const doubtful = districts.filter(({ isSound }) => !isSound).map(({ name }) => name);
  if (doubtful.length === 0)
    return districts.length === 1
      ? "The one district is wired so that its breaker sees a short, and was tested."
      : `All ${districts.length} districts are wired so that their breakers see a short, and were tested.`;
  const many = doubtful.length === 1 ? "needs" : "need";
  return `${listed(doubtful)} ${many} looking at before anything runs there.`;
}

function listed(items: readonly string[]): string {
  if (items.length <= 1) return items[0] ?? "";
  return `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
}
