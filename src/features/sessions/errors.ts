export const areaTwice = (area: string) => `Area ${area} is named a second time: say once how it is run.`;

export const slotTwice = (slot: string) => `Slot ${slot} stands here a second time: give each its own code.`;

export const ENDS_BEFORE_START = "The slot ends before it has begun: write a later end, or an earlier start.";

export const pastLayoutClock = (hours: number) =>
  `By the layout clock the slot would run past ${hours}:00: shorten it, start it earlier, or lower the clock ratio.`;

export const slotsOverlap = (slot: string, other: string, from: string, to: string) =>
  `Slot ${slot} overlaps ${other}, ${from} to ${to}, and the club has one railway: move one of them.`;
