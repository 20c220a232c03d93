/** What one process of the crowd is told on its command line, as JSON. */
export interface CrowdPlan {
  /** Addresses of the service's processes. */
  readonly servers: readonly string[];
  /** `/api/clubs/…/sessions/…/slots/…` */
  readonly slotUrl: string;
  readonly people: readonly CrowdMember[];
  /** What lets the secretary in. */
  readonly secretary: CrowdMember["headers"];
  readonly jobs: readonly { readonly code: string; readonly kind: "train" | "duty" }[];
  readonly handsets: readonly string[];
  /** How many posts they make together. */
  readonly posts: number;
  readonly seed: number;
  /** File for its journal. */
  readonly journal: string;
}

export interface CrowdMember {
  readonly code: string;
  /** What lets them in. */
  readonly headers: Readonly<Record<string, string>>;
}

/** Sent to the parent now and then. */
export interface Progress {
  readonly posts: number;
}
