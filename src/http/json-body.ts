import type { FastifyRequest } from "fastify";
import { Refusal } from "../lib/refusal.ts";
import type { HttpApp } from "./bare-app.ts";

type ReadJson = (
  request: FastifyRequest,
  text: string,
  done: (error: Error | null, body?: unknown) => void,
) => void;

/**
 * JSON in UTF-8 (RFC 8259 section 8.1) is what routes read unless they say otherwise; text of no stated form is refused by its
 * type. Bytes that are not UTF-8 are refused, as what stands in for them would be stored in names for good.
 */
export function installJsonBody(app: HttpApp): void {
  app.removeContentTypeParser(["application/json", "text/plain"]);
  const readJson = app.getDefaultJsonParser("error", "error") as unknown as ReadJson;
  app.addContentTypeParser("application/json", { parseAs: "buffer" }, (request, bytes, done) => {
    let text: string;
    try {
      text = new TextDecoder("utf-8", { fatal: true }).decode(bytes as Buffer);
    } catch {
      return done(new Refusal("malformed-json", "The body is not in UTF-8."));
    }
    readJson(request, text, (error, body) => done(error && whyNotJson(text), body));
  });
}

function whyNotJson(text: string): Refusal {
  if (text === "") return new Refusal("malformed-json", "The body is empty.");
  try {
    JSON.parse(text);
  } catch (error) {
    return new Refusal("malformed-json", `The body is not JSON: ${(error as SyntaxError).message}.`);
  }
  return new Refusal(
    "malformed-json",
    "The body names a field __proto__ or constructor, which nothing here has.",
  );
}
