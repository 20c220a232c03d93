import type { FastifyRequest } from "fastify";

/** What a request wants of a club's records. */
export type ClubAction = "read" | "change";

/**
 * Lets a request at a club's records, or refuses with not-found: what one may not see looks the same as what is not
 * there. Every route under a club calls it before anything else.
 */
export type Authorise = (request: FastifyRequest, clubCode: string, action: ClubAction) => Promise<void>;

/** There are no accounts: whoever reaches the service, which listens only on its own machine, is its user. */
export const admitLocalUser: Authorise = async () => {};
