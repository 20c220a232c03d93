interface Answer {
  description?: string;
  headers?: Record<string, object>;
}

interface Operation {
  readonly summary?: string;
  readonly parameters?: readonly { readonly name: string }[];
  readonly responses: Record<string, Answer>;
}

const ETAG = {
  description: "The record's version, to be sent as If-Match with a change of it.",
  schema: { type: "string", examples: ['"3"'] },
};
const RETRY_AFTER = {
  description: "Seconds after which to try again.",
  schema: { type: "integer", examples: [5] },
};
const LOCATION = { description: "Where the record is from now on.", schema: { type: "string" } };

// what the generator says where a route says nothing
const UNSAID = "Default Response";

/**
 * Gives every good answer of an OpenAPI document a description, and each answer the headers that come with it. A record is what is read with If-None-Match, changed with If-Match, or made with 201.
 */
export function describeAnswers<Document extends object>(document: Document): Document {
  const { paths = {} } = document as { paths?: Record<string, Record<string, Operation>> };
  for (const methods of Object.values(paths))
    for (const [method, operation] of Object.entries(methods)) describe(method, operation);
  return document;
}

function describe(method: string, { summary = "", parameters = [], responses }: Operation): void {
  const takes = (name: string) => parameters.some((parameter) => parameter.name.toLowerCase() === name);
  for (const [status, answer] of Object.entries(responses)) {
    if (status === "304") answer.headers = { ETag: ETAG };
    if (status === "503") answer.headers = { "Retry-After": RETRY_AFTER };
    if (!status.startsWith("2")) continue;
    const made = status === "201";
    const ofRecord = made || (status === "200" && (takes("if-none-match") || takes("if-match")));
    if (ofRecord) answer.headers = { ETag: ETAG, ...(made && { Location: LOCATION }) };
    if (answer.description !== undefined && answer.description !== UNSAID) continue;
    if (made) answer.description = "It was made; this is it.";
    else if (method === "put") answer.description = "The record as it is now.";
    else if (ofRecord) answer.description = "The record.";
    else if (takes("cursor")) answer.description = "One page of the list.";
    else answer.description = summary;
  }
}
