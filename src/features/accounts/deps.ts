import type { DemoSignIn } from "../../../shared/accounts.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type { Clock } from "../../lib/clock.ts";
import type { Mailer } from "../../mail/mailer.ts";
import type { PasswordCost } from "./passwords.ts";

/** What accounts need of others. */
export interface AccountDeps {
  readonly database: DatabaseClient;
  readonly clock: Clock;
  readonly mailer: Mailer;
  /** Where people reach the service, with a slash at the end. */
  readonly publicUrl: () => string;
  /** Sign-ins that anyone may try; undefined where the service shows no demo. */
  readonly demoSignIns?: readonly DemoSignIn[] | undefined;
  /** Less than OWASP asks for is for tests alone. */
  readonly passwordCost?: PasswordCost | undefined;
}
