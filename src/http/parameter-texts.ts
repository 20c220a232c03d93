import { code } from "../../shared/units.ts";
import { toWords } from "../lib/words.ts";

interface Parameter {
  name: string;
  readonly in: string;
  required?: boolean;
  description?: string;
  example?: unknown;
}

// what a code says of itself wherever it stands
const OF_ANY_CODE = code.meta()?.description;

/** Names of headers as RFC 9110 writes them; the framework has them in small letters. */
const HEADER_NAMES: Readonly<Record<string, string>> = {
  "if-match": "If-Match",
  "if-none-match": "If-None-Match",
};

/**
 * Says of each parameter in an address what it names, and that a change must bring its If-Match: for the validator that
 * header is optional, as its lack has a problem of its own (428).
 */
export function describeParameters<Document extends object>(document: Document): Document {
  const { paths = {} } = document as { paths?: Record<string, Record<string, Operation>> };
  for (const methods of Object.values(paths))
    for (const { parameters = [] } of Object.values(methods))
      for (const parameter of parameters) describe(parameter);
  return document;
}

interface Operation {
  readonly parameters?: readonly Parameter[];
}

function describe(parameter: Parameter): void {
  const { name, in: place } = parameter;
  if (place === "header") {
    parameter.name = HEADER_NAMES[name] ?? name;
    if (name === "if-match") parameter.required = true;
    return;
  }
  if (place === "path" && (parameter.description ?? OF_ANY_CODE) === OF_ANY_CODE) {
    parameter.description = `${name === "version" ? "Number" : "Code"} of the ${toWords(name)}.`;
    // the one of codes at large is of another kind of record
    delete parameter.example;
  }
}
