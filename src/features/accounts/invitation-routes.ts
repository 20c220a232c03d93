import { z } from "zod";
import { invitation, invitationBody, memberAccount } from "../../../shared/accounts.ts";
import { code } from "../../../shared/units.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { reachClub } from "../../records/reach-club.ts";
import type { InvitationService } from "./invitation-service.ts";

const TAGS = ["members"];
const config = { access: "keep-members" } as const;
const params = z.strictObject({ club: code, member: code });
const url = "/api/clubs/:club/members/:member/invitation";

/** For whoever keeps a club's members: who can sign in, and the links that let them. */
export function registerInvitationRoutes(
  app: HttpApp,
  database: DatabaseClient,
  service: InvitationService,
): void {
  const accounts = {
    tags: TAGS,
    operationId: "listAccounts",
    summary: "List who can sign in",
    description:
      "Of each member: whether they have an account, are invited, or neither; and the e-mail address.",
    params: z.strictObject({ club: code }),
    response: {
      200: z.object({ items: z.array(memberAccount) }),
      ...refusalResponses("validation-failed", "not-permitted", "not-found"),
    },
  };
  app.get("/api/clubs/:club/accounts", { schema: accounts, config }, async (request) => ({
    items: await service.listAccounts(await reachClub(database, request.params.club)),
  }));

  const invite = {
    tags: TAGS,
    operationId: "createInvitation",
    summary: "Invite a member",
    description:
      "The answer's link works once, for whoever has it, in place of one made before; it is mailed as well where the service sends mail. For a member with an account, whose address must be the same, it leads to a new password instead: only where they are in no other club.",
    params,
    body: invitationBody.meta({ examples: [{ email: "ada@example.org" }] }),
    response: {
      201: invitation,
      ...refusalResponses("validation-failed", "malformed-json", "not-permitted", "not-found", "conflict"),
    },
  };
  app.post(url, { schema: invite, config }, async ({ params, body }, reply) => {
    const club = await reachClub(database, params.club);
    return reply.code(201).send(await service.invite(club, params.member, body.email));
  });

  const revoke = {
    tags: TAGS,
    operationId: "removeInvitation",
    summary: "Take an invitation back",
    description: "Its link is good for nothing from now on. Harmless where there is none.",
    params,
    response: {
      204: z.null().meta({ description: "There is none now." }),
      ...refusalResponses("validation-failed", "not-permitted", "not-found"),
    },
  };
  app.delete(url, { schema: revoke, config }, async ({ params }, reply) => {
    await service.revoke(await reachClub(database, params.club), params.member);
    return reply.code(204).send(undefined as never);
  });
}
