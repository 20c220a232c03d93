import type { FastifyInstance, FastifyRequest } from "fastify";

/** What a request wants of a club's records. */
export type ClubAction = "read" | "change";

/**
 * Lets a request at a club's records, or refuses with not-found: what one may not see looks the same as what is not
 * there.
 */
export type Authorise = (request: FastifyRequest, clubCode: string, action: ClubAction) => Promise<void>;

declare module "fastify" {
  interface FastifyContextConfig {
    /** What the route does to the club's records, where its method does not say it: a POST that only computes. */
    clubAction?: ClubAction;
  }
}

const CLUB_ROUTE = /\/:club(\/|$)/;
const READING = new Set(["GET", "HEAD", "OPTIONS"]);

/** There are no accounts: whoever reaches the service, which listens only on its own machine, is its user. */
export const admitLocalUser: Authorise = async () => {};

/**
 * Asks `authorise` on every route registered after this whose address has a `:club`, before the body is even read: a
 * feature can't forget it.
 */
export function installAuthorisation(app: FastifyInstance, authorise: Authorise): void {
  app.addHook("onRoute", (route) => {
    if (!CLUB_ROUTE.test(route.url)) return;
    const ask = async (request: FastifyRequest) => {
      const { club } = request.params as { club: string };
      const action = route.config?.clubAction ?? (READING.has(request.method) ? "read" : "change");
      await authorise(request, club, action);
    };
    route.onRequest = [ask, ...[route.onRequest ?? []].flat()];
  });
}
