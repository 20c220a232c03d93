import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type DrawnTrain, placeTrainLabels } from "../../../src/web/charts/train-labels.ts";

const frame = { left: 0, right: 400, top: 0, bottom: 300 };

describe("train numbers", () => {
  it("lie along their line, beside it", () => {
    const [label] = placeTrainLabels(
      [
        {
          train: "12",
          points: [
            [50, 50],
            [250, 250],
          ],
        },
      ],
      frame,
    );
    expect(label?.angle).toBeCloseTo(45, 6);
    const offLine = Math.abs((label?.x ?? 0) - (label?.y ?? 0)) / Math.SQRT2;
    expect(offLine).toBeCloseTo(7, 6);
  });

  it("are given to the first in the list where there is room for one only", () => {
    const points = [
      [100, 100],
      [110, 140],
    ] as const;
    const labels = placeTrainLabels(
      [
        { train: "first", points },
        { train: "second", points },
      ],
      frame,
    );
    expect(labels.map(({ train }) => train)).toEqual(["first"]);
  });

  it("keep out of the way of other words", () => {
    const train: DrawnTrain = {
      train: "12",
      points: [
        [50, 150],
        [350, 150],
      ],
    };
    const middle = { left: 150, right: 250, top: 100, bottom: 200 };
    const [label] = placeTrainLabels([train], frame, [middle]);
    expect(label?.x === undefined || label.x < middle.left || label.x > middle.right).toBe(true);
    expect(label).toBeDefined();
    expect(placeTrainLabels([train], frame, [frame])).toEqual([]);
  });

  it("are left out for a line too near the frame's edge", () => {
    expect(
      placeTrainLabels(
        [
          {
            train: "1234",
            points: [
              [0, 2],
              [6, 3],
            ],
          },
        ],
        frame,
      ),
    ).toEqual([]);
  });

  it("come at most once a train, inside the frame, and level ones never cover each other", () => {
    const coordinate = (most: number) => fc.integer({ min: 0, max: most });
    const level = fc.array(fc.tuple(coordinate(340), coordinate(300)), { maxLength: 40 }).map((starts) =>
      starts.map(
        ([x, y], i): DrawnTrain => ({
          train: String(100 + i),
          points: [
            [x, y],
            [x + 60, y],
          ],
        }),
      ),
    );
    fc.assert(
      fc.property(level, (trains) => {
        const labels = placeTrainLabels(trains, frame);
        expect(new Set(labels.map(({ train }) => train)).size).toBe(labels.length);
        labels.forEach((a, i) => {
          expect(a.x).toBeGreaterThan(frame.left);
          expect(a.x).toBeLessThan(frame.right);
          // three digits take 25.5 px by 13 px
          for (const b of labels.slice(i + 1))
            expect(Math.abs(a.x - b.x) >= 25.5 || Math.abs(a.y - b.y) >= 13).toBe(true);
        });
      }),
    );
  });
});
