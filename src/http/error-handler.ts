import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import type { RefusalCode } from "../../shared/errors.ts";
import { Refusal } from "../lib/refusal.ts";
import { sendProblem, toProblem } from "./problem-details.ts";

/** Recognises a failure of something below that is nobody's mistake, such as a database that went away. */
export type Recognise = (error: unknown) => Refusal | undefined;

// what the framework and its plugins refuse by themselves, by status where the code says no more
const BY_STATUS: Readonly<Record<number, RefusalCode>> = {
  404: "not-found",
  413: "body-too-large",
  414: "address-too-long",
  415: "unsupported-media-type",
};

const BY_CODE: Readonly<Record<string, RefusalCode>> = {
  FST_ERR_CTP_EMPTY_JSON_BODY: "malformed-json",
  FST_ERR_CTP_INVALID_JSON_BODY: "malformed-json",
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: "malformed-json",
};

/** The one place where errors become responses. What is neither a refusal nor recognised is our mistake: hidden and logged. */
export function installErrorHandler(app: FastifyInstance, recognise: Recognise): void {
  app.setErrorHandler((error: FastifyError, request, reply) => answer(error, recognise, request, reply));
}

/** The same for what fails before a route is found, such as an address that can't be decoded. */
export function answer(
  error: Error,
  recognise: Recognise,
  request: FastifyRequest,
  reply: FastifyReply,
): FastifyReply {
  const refusal = error instanceof Refusal ? error : (recognise(error) ?? fromFramework(error));
  if (refusal) {
    request.log.info({ code: refusal.code, cause: refusal.cause }, refusal.message);
    return sendProblem(reply, toProblem(refusal));
  }
  request.log.error({ err: error }, "unexpected error");
  const when = new Date().toISOString();
  return sendProblem(
    reply,
    toProblem({ code: "internal", message: `Something failed that should not, at ${when}.`, faults: [] }),
  );
}

function fromFramework(error: Error): Refusal | undefined {
  const { statusCode = 500, code = "" } = error as Partial<FastifyError>;
  if (statusCode < 400 || statusCode > 499) return undefined;
  if (error instanceof SyntaxError) return new Refusal("malformed-json", sentence(error.message));
  const known = BY_CODE[code] ?? BY_STATUS[statusCode] ?? "validation-failed";
  return new Refusal(known, sentence(error.message));
}

const sentence = (text: string) => `${text.replace(/\.$/, "")}.`;
