import type { Fault, RefusalCode } from "../../shared/errors.ts";

/**
 * The service says no, for a reason in the catalogue. Thrown by services and by what they call; the error handler alone
 * turns it into a response. `detail` is one sentence about this case; the catalogue adds what to do.
 */
export class Refusal extends Error {
  override readonly name = "Refusal";
  readonly code: RefusalCode;
  readonly faults: readonly Fault[];

  constructor(code: RefusalCode, detail: string, faults: readonly Fault[] = [], options?: ErrorOptions) {
    super(detail, options);
    this.code = code;
    this.faults = faults;
  }
}
