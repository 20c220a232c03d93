import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createEventLine, type Source } from "../../../src/web/api/event-line.ts";

// readyState of an EventSource: HTML standard, section 9.2
const CONNECTING = 0;
const OPEN = 1;
const CLOSED = 2;

interface FakeSource extends Source {
  readyState: number;
}

describe("the line of events", () => {
  let sources: FakeSource[];
  let told: string[];

  function start() {
    return createEventLine({
      open: () => {
        const source: FakeSource = {
          readyState: CONNECTING,
          onopen: null,
          onerror: null,
          onmessage: null,
          close() {
            this.readyState = CLOSED;
          },
        };
        sources.push(source);
        return source;
      },
      onEvent: ({ kind, code }) => told.push(`${kind} ${code}`),
      onGap: () => told.push("gap"),
      onLost: (isLost) => told.push(isLost ? "lost" : "back"),
      onRefused: () => told.push("refused"),
    });
  }
  const last = () => sources.at(-1) as FakeSource;
  function opens(source = last()) {
    source.readyState = OPEN;
    source.onopen?.();
  }
  function breaks(readyState: number, source = last()) {
    source.readyState = readyState;
    source.onerror?.();
  }
  const says = (event: object) => last().onmessage?.({ data: JSON.stringify(event) });

  beforeEach(() => {
    vi.useFakeTimers();
    sources = [];
    told = [];
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it("passes events on, once what was read before it opened has been read again", () => {
    start();
    opens();
    says({ seq: 7, kind: "claim", code: "4711", deed: "made" });
    expect(told).toEqual(["gap", "claim 4711"]);
  });

  it("mends a blink without a word, for the browser asks for what was missed", () => {
    start();
    opens();
    breaks(CONNECTING);
    vi.advanceTimersByTime(1_000);
    opens();
    vi.advanceTimersByTime(60_000);
    expect(told).toEqual(["gap"]);
    expect(sources).toHaveLength(1);
  });

  it("says that it is lost after more than a blink, and that it is back", () => {
    start();
    opens();
    breaks(CONNECTING);
    vi.advanceTimersByTime(5_000);
    breaks(CONNECTING);
    vi.advanceTimersByTime(5_000);
    expect(told).toEqual(["gap", "lost"]);
    opens();
    expect(told).toEqual(["gap", "lost", "back"]);
  });

  it("dials anew where the browser gave up, slower each time, and tells of the gap", () => {
    start();
    opens();
    breaks(CLOSED);
    const dialled = [1, 2, 4, 5, 5, 5, 5].map((seconds) => {
      const before = sources.length;
      vi.advanceTimersByTime(seconds * 1_000 - 1);
      const early = sources.length;
      vi.advanceTimersByTime(1);
      const now = sources.length;
      breaks(CLOSED);
      return [early - before, now - before];
    });
    expect(dialled).toEqual(Array(7).fill([0, 1]));
    vi.advanceTimersByTime(5_000);
    opens();
    expect(told.filter((word) => word === "gap")).toHaveLength(2);
    expect(told.at(-1)).toBe("gap");
    expect(told.filter((word) => word === "lost")).toHaveLength(1);
  });

  it("rests without being lost, and catches up when it wakes", () => {
    const line = start();
    opens();
    line.rest();
    vi.advanceTimersByTime(600_000);
    expect([sources.length, last().readyState]).toEqual([1, CLOSED]);
    line.wake();
    line.wake();
    expect(sources).toHaveLength(2);
    opens();
    expect(told).toEqual(["gap", "gap"]);
  });

  it("dials no more once it is closed", () => {
    const line = start();
    breaks(CLOSED);
    line.close();
    vi.advanceTimersByTime(600_000);
    expect(sources).toHaveLength(1);
    expect(told).toEqual(["refused"]);
  });
});
