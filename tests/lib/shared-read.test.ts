import { describe, expect, it } from "vitest";
import { createSharedRead } from "../../src/lib/shared-read.ts";

/** Reads that end when they are told to. */
function heldReads() {
  const ends: ((error?: Error) => void)[] = [];
  let begun = 0;
  const read = createSharedRead<number>(async () => {
    const mine = ++begun;
    await new Promise<void>((resolve, reject) => ends.push((error) => (error ? reject(error) : resolve())));
    return mine;
  });
  const end = async (error?: Error) => {
    ends.shift()?.(error);
    for (let turn = 0; turn < 10; turn++) await Promise.resolve();
  };
  return { read, end, begun: () => begun };
}

describe("a shared read", () => {
  it("is one for all who ask while another is under way, and begins after they asked", async () => {
    const { read, end, begun } = heldReads();
    const first = read("a");
    const crowd = [read("a"), read("a"), read("a")];
    expect(begun()).toBe(1);
    await end();
    expect(begun()).toBe(2);
    const late = read("a");
    await end();
    await end();
    expect(await first).toBe(1);
    expect(await Promise.all(crowd)).toEqual([2, 2, 2]);
    expect(await late).toBe(3);
  });

  it("is not shared by those who ask for something else", async () => {
    const { read, end, begun } = heldReads();
    const both = [read("a"), read("b")];
    expect(begun()).toBe(2);
    await end();
    await end();
    expect(await Promise.all(both)).toEqual([1, 2]);
  });

  it("that fails fails for those who share it alone", async () => {
    const { read, end } = heldReads();
    const first = read("a").catch((error: Error) => error.message);
    const second = read("a");
    await end(new Error("lost"));
    await end();
    expect(await first).toBe("lost");
    expect(await second).toBe(2);
  });
});
