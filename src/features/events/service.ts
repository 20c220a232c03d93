import type { DatabaseClient } from "../../database/client.ts";
import { createListener, type ListenConnection } from "../../database/listener.ts";
import { reachClub } from "../../records/reach-club.ts";
import { type ClubLine, createClubLines } from "./club-line.ts";
import { readEvents } from "./store.ts";
import { createEventStream, type EventStream } from "./stream.ts";

export interface EventsDeps {
  readonly database: DatabaseClient;
  readonly connection: ListenConnection;
}

/** Whether whoever opened a stream may still have it. */
export type StillMay = () => Promise<boolean>;

// whoever missed more reads everything again
const MOST_MISSED = 2_000;
const BEAT_MS = 15_000;
// what the trail's triggers notify, with the club's id
const CHANNEL = "trail";

export type EventsService = ReturnType<typeof createEventsService>;

/** Live events of clubs: from any process on the database to every stream open in this one. */
export function createEventsService({ database, connection }: EventsDeps) {
  const lines = createClubLines(database);
  const streams = new Map<EventStream, StillMay>();
  let isEnding = false;

  // what cannot be read now is read at the next notice, at the next beat, or when the database is back
  const catchUp = (line: ClubLine | undefined) => void line?.catchUp().catch(() => {});
  const listener = createListener({
    connection,
    channel: CHANNEL,
    onNotice: (clubId) => catchUp(lines.find(clubId)),
    onGap: () => lines.all().forEach(catchUp),
  });

  const beats = setInterval(() => {
    if (streams.size > 0) void listener.probe();
    lines.all().forEach(catchUp);
    for (const [stream, stillMay] of streams) {
      stream.beat();
      void stillMay().then((may) => may || stream.end());
    }
  }, BEAT_MS).unref();

  function join(line: ClubLine, stream: EventStream, stillMay: StillMay): void {
    line.hearers.add(stream);
    streams.set(stream, stillMay);
    stream.body.once("close", () => {
      line.hearers.delete(stream);
      streams.delete(stream);
      lines.giveBack(line);
    });
  }

  /** Undefined where what was missed cannot be told. Each way out either leaves a stream that closes, or gives back the line. */
  async function openOn(line: ClubLine, after: number | undefined, stillMay: StillMay) {
    const isTold = await line.catchUp().then(
      () => after === undefined || after <= line.position,
      (error: unknown) => {
        lines.giveBack(line);
        throw error;
      },
    );
    if (!isTold) return lines.giveBack(line);
    const stream = createEventStream(after ?? line.position);
    join(line, stream, stillMay);
    try {
      const missed =
        after === undefined ? [] : await readEvents(database, line.clubId, after, MOST_MISSED + 1);
      if (missed.length <= MOST_MISSED) {
        stream.begin(missed);
        return stream;
      }
      stream.body.destroy();
    } catch (error) {
      stream.body.destroy();
      throw error;
    }
  }

  return {
    /**
     * A stream of the club's changes: after the one numbered `after`, or of those to come. Undefined where what was
     * missed since cannot be told, being too much or of another history.
     * @throws Refusal not-found
     */
    async open(clubCode: string, after: number | undefined, stillMay: StillMay) {
      const club = await reachClub(database, clubCode);
      // first listen, then read where we are: nothing can be missed in between
      await listener.start();
      const stream = (await openOn(lines.take(club.id), after, stillMay)) ?? undefined;
      if (isEnding) stream?.end();
      return stream;
    },
    endStreams(): void {
      isEnding = true;
      clearInterval(beats);
      for (const stream of streams.keys()) stream.end();
    },
    close: () => listener.close(),
  };
}
