import type { FastifyRequest } from "fastify";
import type { Club } from "../../../shared/clubs.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type { Transaction } from "../../database/transaction.ts";
import { actorOf } from "../../http/actor.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { createCollection, type Destination } from "../../records/collection.ts";
import { installCollection } from "../../records/collection-routes.ts";
import { forOneClubAlone } from "./errors.ts";
import { clubKind } from "./kinds.ts";

// clubs themselves belong to none
const EVERYWHERE: Destination = { scope: { club: { id: "", code: "", timeZone: "UTC" }, columns: {} } };

interface ClubDeps {
  readonly database: DatabaseClient;
  /** Lets whoever makes a club be its secretary: nobody else could let anyone in. */
  readonly makeSecretary: (transaction: Transaction, clubId: string, personId: string) => Promise<void>;
}

/** Makes clubs without a request, as a start does that brings one along. */
export function createClub(database: DatabaseClient, club: Club): Promise<unknown> {
  return createCollection(database, clubKind).create(EVERYWHERE, club);
}

/** The clubs that this service keeps: each person sees those they belong to. */
export function installClubs(app: HttpApp, { database, makeSecretary }: ClubDeps): void {
  const toDestination = (request: FastifyRequest): Destination => {
    const { personId, entry } = actorOf(request);
    if (personId === null || entry === undefined) return { ...EVERYWHERE, onRemoved: removePeople };
    return {
      ...EVERYWHERE,
      where: { code: { in: entry.clubs } },
      onMade: async (transaction, code) => {
        if (entry.isForOneClub) throw forOneClubAlone();
        const { id } = await transaction.club.findUniqueOrThrow({ where: { code }, select: { id: true } });
        await makeSecretary(transaction, id, personId);
      },
      onRemoved: removePeople,
    };
  };
  installCollection(app, database, clubKind, {
    under: "/api",
    params: {},
    tag: "clubs",
    access: "signed-in",
    resolve: async (_, request) => toDestination(request),
  });
}

/** The members that stand for people who sign in go with their club; others must have been removed before. */
async function removePeople(
  transaction: Transaction,
  { id, version }: { readonly id: string; readonly version: number },
): Promise<void> {
  const locked = await transaction.$queryRaw<unknown[]>`
    select id from clubs where id = ${id}::uuid and version = ${version} for update`;
  if (locked.length > 0)
    await transaction.member.deleteMany({ where: { clubId: id, membership: { isNot: null } } });
}
