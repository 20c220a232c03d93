import { PrismaPg } from "@prisma/adapter-pg";
import { actingPerson } from "./acting.ts";

type Adapter = Awaited<ReturnType<PrismaPg["connect"]>>;
type DriverTransaction = Awaited<ReturnType<Adapter["startTransaction"]>>;
type Statement = Parameters<Adapter["executeRaw"]>[0];

const READS_ONLY = /^\s*(?:select|show)\b/i;

/**
 * The driver, telling each transaction on whose behalf it works: triggers read `foreman.person`. It is set for one
 * transaction alone, so that a connection carries nobody over to the next who uses it; a change that comes as a single
 * statement is therefore made a transaction. Costs one short statement a transaction, nothing where there is no person.
 */
export class ActingPg extends PrismaPg {
  override async connect(): Promise<Adapter> {
    const adapter = await super.connect();
    // one handed from one user to the next has no listener for a moment: were it lost then, the process would end
    adapter.underlyingDriver().on("connect", (client) => client.on("error", () => {}));
    const start = adapter.startTransaction.bind(adapter);
    const executeRaw = adapter.executeRaw.bind(adapter);
    const queryRaw = adapter.queryRaw.bind(adapter);
    const begin: typeof start = async (isolationLevel) => introduce(await start(isolationLevel));
    return Object.assign(adapter, {
      startTransaction: begin,
      executeRaw: (statement: Statement) =>
        isAnonymous(statement)
          ? executeRaw(statement)
          : asTransaction(begin, (transaction) => transaction.executeRaw(statement)),
      queryRaw: (statement: Statement) =>
        isAnonymous(statement)
          ? queryRaw(statement)
          : asTransaction(begin, (transaction) => transaction.queryRaw(statement)),
    });
  }
}

const isAnonymous = ({ sql }: Statement) => actingPerson() === null || READS_ONLY.test(sql);

async function introduce(transaction: DriverTransaction): Promise<DriverTransaction> {
  const person = actingPerson();
  if (person === null) return transaction;
  try {
    await transaction.executeRaw({
      sql: "select set_config('foreman.person', $1, true)",
      args: [person],
      argTypes: [{ scalarType: "string", arity: "scalar" }],
    });
    return transaction;
  } catch (error) {
    await undo(transaction);
    throw error;
  }
}

async function asTransaction<T>(
  begin: () => Promise<DriverTransaction>,
  work: (transaction: DriverTransaction) => Promise<T>,
): Promise<T> {
  const transaction = await begin();
  try {
    const result = await work(transaction);
    await transaction.executeRaw(plain("commit"));
    await transaction.commit();
    return result;
  } catch (error) {
    await undo(transaction);
    throw error;
  }
}

/** Gives the connection back even where the server has undone it already, or is gone. */
async function undo(transaction: DriverTransaction): Promise<void> {
  await transaction.executeRaw(plain("rollback")).catch(() => {});
  await transaction.rollback();
}

const plain = (sql: string): Statement => ({ sql, args: [], argTypes: [] });
