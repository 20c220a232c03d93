import type { FastifyReply } from "fastify";
import { type Problem, problem, REFUSALS, type RefusalCode } from "../../shared/errors.ts";
import type { Refusal } from "../lib/refusal.ts";

const PROBLEM_TYPE = "application/problem+json";
const RETRY_AFTER_S = 5;

/** The refusal as problem details, RFC 9457: what happened here, then what can be done about it. */
export function toProblem({ code, message, faults }: Pick<Refusal, "code" | "message" | "faults">): Problem {
  const { status, title, remedy } = REFUSALS[code];
  return {
    type: `/problems/${code}`,
    title,
    status,
    detail: `${message} ${remedy}`,
    code,
    ...(faults.length > 0 && { errors: [...faults] }),
  };
}

/**
 * Sends it with its own serializer: the route's response schema for the status would drop fields, or turn a body that
 * does not match into a bare 500.
 */
export function sendProblem(reply: FastifyReply, body: Problem): FastifyReply {
  if (body.status === 503) reply.header("retry-after", RETRY_AFTER_S);
  // the framework closes the connection on a body too large, which can destroy this very answer on its way: let the
  // rest of the body come and be thrown away instead
  if (body.status === 413) reply.removeHeader("connection");
  return reply.code(body.status).type(PROBLEM_TYPE).serializer(JSON.stringify).send(body);
}

/** For a route's `schema.response`: the refusals it may give, so that the API reference names them. */
export function refusalResponses(...codes: readonly RefusalCode[]) {
  const byStatus = new Map<number, RefusalCode[]>();
  for (const code of codes)
    byStatus.set(REFUSALS[code].status, [...(byStatus.get(REFUSALS[code].status) ?? []), code]);
  const responses = [...byStatus].map(([status, at]) => [
    status,
    {
      description: at.map((code) => `${code}: ${REFUSALS[code].title}.`).join(" "),
      content: { [PROBLEM_TYPE]: { schema: problem } },
    },
  ]);
  return Object.fromEntries(responses) as Record<number, ProblemResponse>;
}

interface ProblemResponse {
  readonly description: string;
  readonly content: { readonly [PROBLEM_TYPE]: { readonly schema: typeof problem } };
}
