/** A train of the night. Layout times in whole seconds since the timetable's midnight; null: not known. */
export interface NightWorking {
  readonly code: string;
  /** By the timetable. */
  readonly departS: number;
  readonly arriveS: number;
  readonly state: "waiting" | "running" | "arrived" | "left out";
  readonly departedS: number | null;
  readonly arrivedS: number | null;
  /** What a person said it is late; it then holds until the clock finds more. */
  readonly statedLateS: number | null;
}

export interface Lateness {
  readonly lateS: number;
  /** When it departs and arrives, or did, as far as is known. */
  readonly departS: number;
  readonly arriveS: number;
}

/**
 * How late a train is as things stand at a layout time, never below 0. One that waits is late from its departure on; one
 * that runs keeps the lateness it left with unless told otherwise, and is late from its arrival on; one that has arrived
 * is as late as it came.
 */
export function findLateness(train: NightWorking, nowS: number): Lateness {
  const { departS, arriveS } = train;
  switch (train.state) {
    case "left out":
      return { lateS: 0, departS, arriveS };
    case "waiting": {
      const lateS = Math.max(train.statedLateS ?? 0, nowS - departS, 0);
      return { lateS, departS: departS + lateS, arriveS: arriveS + lateS };
    }
    case "running": {
      const left = train.departedS ?? departS;
      const lateS = Math.max(train.statedLateS ?? left - departS, nowS - arriveS, 0);
      return { lateS, departS: left, arriveS: arriveS + lateS };
    }
    case "arrived": {
      const came = train.arrivedS ?? arriveS;
      return { lateS: Math.max(came - arriveS, 0), departS: train.departedS ?? departS, arriveS: came };
    }
  }
}

/** The trains still to depart, soonest expected first, then by code. Cost: n log n. */
export function listDue<T extends NightWorking>(trains: readonly T[], nowS: number): T[] {
  return trains
    .filter(({ state }) => state === "waiting")
    .map((train) => ({ train, at: findLateness(train, nowS).departS }))
    .sort(
      (a, b) => a.at - b.at || a.train.departS - b.train.departS || (a.train.code < b.train.code ? -1 : 1),
    )
    .map(({ train }) => train);
}
