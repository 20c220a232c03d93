import { z } from "zod";
import { newSwap, swap, swapped } from "../../../shared/claims.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { retryHeaders } from "../../http/idempotency.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { askedOf, CLAIM_REFUSALS, DEED_REFUSALS, SLOT, slotParams, tags } from "./routes.ts";
import type { SwapService } from "./swap-service.ts";

const swapParams = z.strictObject({ ...slotParams.shape, swap: z.uuid() });

export function registerSwapRoutes(app: HttpApp, swaps: SwapService): void {
  app.post(
    `${SLOT}/swaps`,
    {
      config: { access: "claim" },
      schema: {
        tags,
        operationId: "offerSwap",
        summary: "Offer to trade a claim for another's",
        description:
          "One's own claim is of this slot, the other's of the same night. Offering again changes the message.",
        params: slotParams,
        headers: retryHeaders,
        body: newSwap.meta({
          examples: [
            {
              gives: "01968d52-6b4e-7a31-8d7c-1f4f6a2f9b10",
              wants: "01968d52-6b4e-7a31-8d7c-1f4f6a2f9b11",
              message: "I would rather drive early.",
            },
          ],
        }),
        response: {
          201: swap.meta({ description: "It is offered." }),
          ...refusalResponses(...DEED_REFUSALS),
        },
      },
    },
    async (request, reply) => reply.code(201).send(await swaps.offer(askedOf(request), request.body)),
  );
  app.post(
    `${SLOT}/swaps/:swap/accept`,
    {
      config: { access: "claim" },
      schema: {
        tags,
        operationId: "acceptSwap",
        summary: "Trade, as offered",
        description:
          "Both change hands in one moment, or neither: both members must be able to do what they get beside all else they have. Handsets stay with their trains. Other offers about the two end.",
        params: swapParams,
        headers: retryHeaders,
        response: {
          200: swapped.meta({ description: "It is done." }),
          ...refusalResponses(...DEED_REFUSALS, ...CLAIM_REFUSALS, "last-adult"),
        },
      },
    },
    async (request) => swaps.accept(askedOf(request), request.params.swap),
  );
  for (const end of ["refuse", "withdraw"] as const)
    app.post(
      `${SLOT}/swaps/:swap/${end}`,
      {
        config: { access: "claim" },
        schema: {
          tags,
          operationId: `${end}Swap`,
          summary: end === "refuse" ? "Turn an offer down" : "Take an offer back",
          description: end === "refuse" ? "For whom it was offered to." : "For whom it was offered by.",
          params: swapParams,
          headers: retryHeaders,
          response: {
            204: z.null().meta({ description: "The offer is gone." }),
            ...refusalResponses(...DEED_REFUSALS),
          },
        },
      },
      async (request, reply) => {
        await swaps[end](askedOf(request), request.params.swap);
        return reply.code(204).send(undefined as never);
      },
    );
}
