import { isIPv6 } from "node:net";
import type { DatabaseClient } from "../../database/client.ts";
import { Refusal } from "../../lib/refusal.ts";
import { hashSecret } from "../../lib/secret.ts";

interface Patience {
  /** Wrong passwords in a row before the first pause. */
  readonly free: number;
  /** After so long without a guess they are forgotten, in seconds. */
  readonly memoryS: number;
}

/** At one account, from wherever: then at most some hundred guesses a day. */
const AT_ACCOUNT: Patience = { free: 5, memoryS: 86_400 };
/** From one address, at whomever: a club room shares one, so more are free. */
const FROM_ADDRESS: Patience = { free: 50, memoryS: 3_600 };
const REQUESTS: Patience = { free: 10, memoryS: 3_600 };
// a pause doubles from a second up to this
const LONGEST_PAUSE_S = 900;
const DOUBLINGS = 10;

/** Where a password is tried. */
export interface Attempt {
  readonly email: string;
  readonly address: string;
}

/** Too many wrong passwords; `waitS` whole seconds later another is heard. */
export class TooManyAttempts extends Refusal {
  readonly waitS: number;

  constructor(waitS: number) {
    super("too-many-attempts", `The next one is heard in ${waitS === 1 ? "a second" : `${waitS} seconds`}.`);
    this.waitS = waitS;
  }
}

/**
 * Slows guessing, alike for accounts there are and others. A guess is counted before it is looked at, so that many at
 * once count as many, in whichever process they arrive.
 */
export function createGuesses(database: DatabaseClient) {
  /** @returns seconds to wait; 0 where the guess was counted and may be looked at */
  async function count(subject: string, { free, memoryS }: Patience, now: Date): Promise<number> {
    const counted = await database.$executeRaw`
      insert into guesses as g (subject, count, last_at, next_at) values (${subject}, 1, ${now}::timestamptz, ${now}::timestamptz)
      on conflict (subject) do update set
        count = case when g.last_at < ${now}::timestamptz - make_interval(secs => ${memoryS}::int) then 1 else g.count + 1 end,
        last_at = ${now}::timestamptz,
        next_at = ${now}::timestamptz + make_interval(secs => case
          when g.last_at < ${now}::timestamptz - make_interval(secs => ${memoryS}::int) or g.count + 1 < ${free}::int then 0
          else least(power(2, least(g.count + 1 - ${free}::int, ${DOUBLINGS}::int)), ${LONGEST_PAUSE_S}::int) end)
      where g.next_at <= ${now}::timestamptz`;
    if (counted === 1) return 0;
    const found = await database.guess.findUnique({ where: { subject }, select: { nextAt: true } });
    return Math.max(1, Math.ceil(((found?.nextAt.getTime() ?? 0) - now.getTime()) / 1_000));
  }

  const forgiveAccount = (email: string) =>
    database.guess.deleteMany({ where: { subject: atAccount(email) } });

  return {
    /** Of mails that anyone may cause: few an address. @throws TooManyAttempts */
    async countRequest(address: string, now: Date): Promise<void> {
      const wait = await count(hashSecret(`request ${networkOf(address)}`), REQUESTS, now);
      if (wait > 0) throw new TooManyAttempts(wait);
    },
    /** After a new password, whoever guessed at the old one does not keep its owner out. */
    forgiveAccount,
    /** @throws TooManyAttempts */
    async begin({ email, address }: Attempt, now: Date): Promise<void> {
      const waits = [
        await count(fromAddress(address), FROM_ADDRESS, now),
        await count(atAccount(email), AT_ACCOUNT, now),
      ];
      const wait = Math.max(...waits);
      if (wait > 0) throw new TooManyAttempts(wait);
    },
    /** The password was right: what was tried before does not count any more. */
    async forgive({ email, address }: Attempt, now: Date): Promise<void> {
      await forgiveAccount(email);
      await database.guess.updateMany({
        where: { subject: fromAddress(address), count: { gt: 0 } },
        data: { count: { decrement: 1 }, nextAt: now },
      });
      const forgotten = new Date(now.getTime() - AT_ACCOUNT.memoryS * 1_000);
      await database.guess.deleteMany({ where: { lastAt: { lt: forgotten } } });
    },
  };
}

// hashed, as addresses of people who have no account here are nobody's to keep
const atAccount = (email: string) => hashSecret(`account ${email}`);
const fromAddress = (address: string) => hashSecret(`address ${networkOf(address)}`);

/** Whoever has an IPv6 address has its whole /64 to choose from. */
function networkOf(address: string): string {
  if (!isIPv6(address) || address.startsWith("::ffff:")) return address;
  const [head = "", tail] = address.split("::");
  const before = head.split(":").filter(Boolean);
  const after = tail === undefined ? [] : tail.split(":").filter(Boolean);
  const whole = [
    ...before,
    ...Array<string>(Math.max(0, 8 - before.length - after.length)).fill("0"),
    ...after,
  ];
  return whole.slice(0, 4).join(":");
}
