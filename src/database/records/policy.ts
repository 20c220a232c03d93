import type { Policy } from "../../../shared/policy.ts";

/** The columns of a policy, whole milliseconds; a session's are null where it has none of its own. */
export interface PolicyColumns {
  readonly setUpMs: number;
  readonly releaseMs: number;
  readonly releaseDwellMs: number;
  readonly pickUpMs: number;
  readonly handInMs: number;
  readonly reserve: number;
  readonly inrushMs: number;
  readonly faultMargin: number;
  readonly dropShare: number;
  readonly busyShare: number;
  readonly walkingDetour: number;
  readonly walkingMmPerSecond: number;
}

// the wire's seconds have at most three decimals
const toMs = (seconds: number) => Math.round(seconds * 1_000);

export const toPolicyColumns = (policy: Policy): PolicyColumns => ({
  setUpMs: toMs(policy.setUpSeconds),
  releaseMs: toMs(policy.releaseSeconds),
  releaseDwellMs: toMs(policy.releaseDwellSeconds),
  pickUpMs: toMs(policy.pickUpSeconds),
  handInMs: toMs(policy.handInSeconds),
  reserve: policy.reserve,
  inrushMs: toMs(policy.inrushSeconds),
  faultMargin: policy.faultMargin,
  dropShare: policy.dropShare,
  busyShare: policy.busyShare,
  walkingDetour: policy.walkingDetour,
  walkingMmPerSecond: policy.walkingMmPerSecond,
});

export const NO_POLICY = {
  setUpMs: null,
  releaseMs: null,
  releaseDwellMs: null,
  pickUpMs: null,
  handInMs: null,
  reserve: null,
  inrushMs: null,
  faultMargin: null,
  dropShare: null,
  busyShare: null,
  walkingDetour: null,
  walkingMmPerSecond: null,
} as const satisfies Record<keyof PolicyColumns, null>;

export const toPolicy = (row: PolicyColumns): Policy => ({
  setUpSeconds: row.setUpMs / 1_000,
  releaseSeconds: row.releaseMs / 1_000,
  releaseDwellSeconds: row.releaseDwellMs / 1_000,
  pickUpSeconds: row.pickUpMs / 1_000,
  handInSeconds: row.handInMs / 1_000,
  reserve: row.reserve,
  inrushSeconds: row.inrushMs / 1_000,
  faultMargin: row.faultMargin,
  dropShare: row.dropShare,
  busyShare: row.busyShare,
  walkingDetour: row.walkingDetour,
  walkingMmPerSecond: row.walkingMmPerSecond,
});

/** A policy is there whole or not at all: the database sees to that. */
export const hasPolicy = <Row extends { readonly [K in keyof PolicyColumns]: number | null }>(
  row: Row,
): row is Row & PolicyColumns => row.setUpMs !== null;
