import { batch, computed, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { CheckReport } from "../../../shared/check.ts";
import { type Clocks, createClocks } from "../charts/clocks.ts";
import type { TimeWindow } from "../charts/ticks.ts";
import { type PlanAddress, readAddress, toSearch } from "./address.ts";
import { type Emphasis, toEmphasis } from "./emphasis.ts";
import { allFeeds, strain } from "./feeds.ts";
import { type KeyedFinding, keyFindings } from "./finding-key.ts";
import { fitWindow, keepInside, wholeWindow } from "./window.ts";

/** One plan as it is being looked at: the finding, the moment and the window that all pictures share. */
export class PlanView {
  readonly report: CheckReport;
  readonly clocks: Clocks;
  readonly findings: readonly KeyedFinding[];
  readonly whole: TimeWindow;
  /** The moment shown where none was chosen. */
  readonly #firstMoment: number;

  readonly chosen: Signal<KeyedFinding | null> = signal(null);
  readonly moment: Signal<number>;
  readonly window: Signal<TimeWindow>;
  /** Whether the moment was moved by hand, so that the address has to say it. */
  readonly #isMoved = signal(false);

  readonly isZoomed: ReadonlySignal<boolean>;
  readonly emphasis: ReadonlySignal<Emphasis>;
  /** The address of this very view, as a query. */
  readonly search: ReadonlySignal<string>;

  /** `search` is the address that was opened; `timeZone` the club's; `also` is kept in the address as it is. */
  constructor(report: CheckReport, timeZone: string, search: string, also = "") {
    this.report = report;
    const { slot, clockRatio } = report;
    this.clocks = createClocks({ ...slot, clockRatio, timeZone });
    this.findings = keyFindings(report.findings);
    this.whole = wholeWindow(report, this.clocks);
    this.#firstMoment = momentThatMatters(report);
    this.moment = signal(this.#firstMoment);
    this.window = signal(this.whole);
    this.isZoomed = computed(() => this.window.value !== this.whole);
    this.emphasis = computed(() => toEmphasis(this.chosen.value));
    this.search = computed(() => withAlso(toSearch(this.#address()), also));
    this.follow(search);
  }

  /** Chooses a finding by its key and goes to its moment; null, or a key that is gone, chooses none. */
  choose(key: string | null): void {
    batch(() => {
      this.chosen.value = this.findings.find((f) => f.key === key) ?? null;
      this.#isMoved.value = false;
      this.#goTo(this.chosen.value?.finding.atMs ?? this.#firstMoment);
    });
  }

  /** Moves the moment to the nearest whole layout second inside the slot. */
  moveTo(ms: number): void {
    batch(() => {
      this.#isMoved.value = true;
      this.#goTo(this.clocks.snap(ms));
    });
  }

  /** A factor below 1 looks closer, around the moment. */
  zoom(factor: number): void {
    const { fromMs, toMs } = this.window.value;
    const half = ((toMs - fromMs) * factor) / 2;
    const middle = factor < 1 ? this.moment.value : (fromMs + toMs) / 2;
    this.#show({ fromMs: middle - half, toMs: middle + half });
  }

  /** Shifts the window by a share of its width; the moment stays where it is. */
  pan(share: number): void {
    const { fromMs, toMs } = this.window.value;
    const by = (toMs - fromMs) * share;
    this.#show({ fromMs: fromMs + by, toMs: toMs + by });
  }

  showWhole(): void {
    this.window.value = this.whole;
  }

  /** Takes over what an address says; what it does not say goes back to where it was before any choice. */
  follow(search: string): void {
    const { finding, at, from, to } = readAddress(search);
    batch(() => {
      this.choose(finding);
      if (at !== null) this.moveTo(this.clocks.toMs(at));
      // last: going to a moment would shift a window that was panned away from it
      if (from === null || to === null) this.showWhole();
      else this.#show({ fromMs: this.clocks.toMs(from), toMs: this.clocks.toMs(to) });
    });
  }

  #goTo(ms: number): void {
    this.moment.value = Math.min(this.whole.toMs, Math.max(this.whole.fromMs, ms));
    this.#show(keepInside(this.moment.value, this.window.value, this.whole));
  }

  /** The whole is always shown as the one same object, so that "is this the whole" is one comparison. */
  #show(wish: TimeWindow): void {
    const fitted = fitWindow(wish, this.whole);
    const fromMs = this.clocks.snap(fitted.fromMs);
    const toMs = this.clocks.snap(fitted.toMs);
    const isWhole = fromMs <= this.whole.fromMs && toMs >= this.whole.toMs;
    const isSame = fromMs === this.window.value.fromMs && toMs === this.window.value.toMs;
    if (isWhole) this.window.value = this.whole;
    else if (!isSame) this.window.value = { fromMs, toMs };
  }

  #address(): PlanAddress {
    const seconds = (ms: number) => Math.round(this.clocks.toLayoutSeconds(ms));
    const { fromMs, toMs } = this.window.value;
    return {
      finding: this.chosen.value?.key ?? null,
      at: this.#isMoved.value ? seconds(this.moment.value) : null,
      from: this.isZoomed.value ? seconds(fromMs) : null,
      to: this.isZoomed.value ? seconds(toMs) : null,
    };
  }
}

function withAlso(search: string, also: string): string {
  if (also === "") return search;
  return search === "" ? `?${also}` : `${search}&${also}`;
}

/** The first finding's moment, else the peak of the feed with least headroom, else the slot's start. */
function momentThatMatters(report: CheckReport): number {
  const tightest = allFeeds(report).sort((a, b) => strain(b) - strain(a))[0];
  return report.findings[0]?.atMs ?? tightest?.load.peakAtMs ?? report.slot.startMs;
}
