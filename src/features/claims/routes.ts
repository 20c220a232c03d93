import type { FastifyRequest } from "fastify";
import { z } from "zod";
import {
  assigned,
  claim,
  givenBack,
  newAssignment,
  newClaim,
  newHandsetChoice,
  newQueuePlace,
  queuePlace,
} from "../../../shared/claims.ts";
import { code } from "../../../shared/units.ts";
import { membershipOf } from "../../http/actor.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { readRetryKey, retryHeaders } from "../../http/idempotency.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import type { AssignService } from "./assign-service.ts";
import type { ClaimService } from "./claim-service.ts";
import type { Asked, SlotAddress } from "./deeds.ts";
import type { QueueService } from "./queue-service.ts";

export const SLOT = "/api/clubs/:club/sessions/:session/slots/:slot";
export const slotParams = z.strictObject({ club: code, session: code, slot: code });
export const tags = ["claims"];

/** What every deed may answer. */
export const DEED_REFUSALS = [
  "validation-failed",
  "malformed-json",
  "unsupported-media-type",
  "not-permitted",
  "not-found",
  "conflict",
  "session-not-open",
  "unprocessable",
  "idempotency-key-reused",
] as const;

/** What can be in the way of having something. */
export const CLAIM_REFUSALS = [
  "taken",
  "not-passed",
  "junior-alone",
  "drives-another-then",
  "walk-too-short",
  "second-claim-too-early",
  "handset-not-usable",
  "handset-taken",
] as const;

export const askedOf = (request: FastifyRequest): Asked => {
  const address = request.params as SlotAddress;
  const { club, session, slot } = address;
  return {
    asker: membershipOf(request, club),
    address: { club, session, slot },
    key: readRetryKey(request),
  };
};

export interface ClaimServices {
  readonly claims: ClaimService;
  readonly queue: QueueService;
  readonly assignments: AssignService;
}

export function registerClaimRoutes(app: HttpApp, { claims, queue, assignments }: ClaimServices): void {
  registerClaims(app, claims);
  registerGivingBack(app, claims);
  registerQueue(app, queue);
  app.put(
    `${SLOT}/assignments`,
    {
      config: { access: "book" },
      schema: {
        tags,
        operationId: "assign",
        summary: "Say who has a train or a duty",
        description:
          "For the secretary, also once the night is locked. Whoever had it is taken off, and both are told; those who wait keep waiting.",
        params: slotParams,
        headers: retryHeaders,
        body: newAssignment.meta({ examples: [{ train: "101", member: "ada" }] }),
        response: { 200: assigned, ...refusalResponses(...DEED_REFUSALS, ...CLAIM_REFUSALS, "last-adult") },
      },
    },
    async (request) => assignments.assign(askedOf(request), request.body),
  );
}

function registerClaims(app: HttpApp, claims: ClaimService): void {
  app.post(
    `${SLOT}/claims`,
    {
      config: { access: "claim" },
      schema: {
        tags,
        operationId: "claim",
        summary: "Claim a train or a duty",
        description:
          "For oneself; the secretary for anyone. Without a handset named, the service chooses one that fits all along the run.",
        params: slotParams,
        headers: retryHeaders,
        body: newClaim.meta({ examples: [{ train: "101" }] }),
        response: {
          201: claim.meta({ description: "It is theirs." }),
          ...refusalResponses(...DEED_REFUSALS, ...CLAIM_REFUSALS),
        },
      },
    },
    async (request, reply) => {
      const made = await claims.claim(askedOf(request), request.body);
      const path = request.url.split("?", 1)[0] ?? "";
      return reply.code(201).header("location", `${path}/${made.id}`).send(made);
    },
  );
  app.put(
    `${SLOT}/claims/:claim/handset`,
    {
      config: { access: "claim" },
      schema: {
        tags,
        operationId: "changeHandset",
        summary: "Choose another handset for one's train",
        description: "The claim stays as it is otherwise.",
        params: z.strictObject({ ...slotParams.shape, claim: z.uuid() }),
        headers: retryHeaders,
        body: newHandsetChoice.meta({ examples: [{ handset: "H1" }] }),
        response: {
          200: claim,
          ...refusalResponses(...DEED_REFUSALS, "handset-not-usable", "handset-taken"),
        },
      },
    },
    async (request) => claims.changeHandset(askedOf(request), request.params.claim, request.body.handset),
  );
}

function registerGivingBack(app: HttpApp, claims: ClaimService): void {
  app.delete(
    `${SLOT}/claims/:claim`,
    {
      config: { access: "claim" },
      schema: {
        tags,
        operationId: "giveBack",
        summary: "Give a claim back",
        description:
          "The first who waits for it and may have it has it from the same moment on, with a fitting handset. Once the night is locked only the secretary gives claims back. Refused while a junior of the slot would be left without an adult.",
        params: z.strictObject({ ...slotParams.shape, claim: z.uuid() }),
        headers: retryHeaders,
        response: {
          200: givenBack.meta({ description: "It is given back." }),
          ...refusalResponses(...DEED_REFUSALS, "last-adult"),
        },
      },
    },
    async (request) => claims.giveBack(askedOf(request), request.params.claim),
  );
}

function registerQueue(app: HttpApp, queue: QueueService): void {
  app.post(
    `${SLOT}/queue`,
    {
      config: { access: "claim" },
      schema: {
        tags,
        operationId: "joinQueue",
        summary: "Wait for what is taken",
        description: "Whoever waits first, and may have it by then, gets it once it is given back.",
        params: slotParams,
        headers: retryHeaders,
        body: newQueuePlace.meta({ examples: [{ train: "101" }] }),
        response: {
          201: queuePlace.meta({ description: "One waits." }),
          ...refusalResponses(...DEED_REFUSALS, "already-done", "not-passed"),
        },
      },
    },
    async (request, reply) => reply.code(201).send(await queue.join(askedOf(request), request.body)),
  );
  app.delete(
    `${SLOT}/queue`,
    {
      config: { access: "claim" },
      schema: {
        tags,
        operationId: "leaveQueue",
        summary: "Wait no more",
        description: "The body names what one waits for.",
        params: slotParams,
        headers: retryHeaders,
        body: newQueuePlace.meta({ examples: [{ train: "101" }] }),
        response: {
          204: z.null().meta({ description: "One waits no more." }),
          ...refusalResponses(...DEED_REFUSALS),
        },
      },
    },
    async (request, reply) => {
      await queue.leave(askedOf(request), request.body);
      return reply.code(204).send(undefined as never);
    },
  );
}
