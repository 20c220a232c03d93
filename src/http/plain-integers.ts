/**
 * Takes from an OpenAPI document the bounds that only say how far JavaScript counts (2^53 - 1). They tell a reader
 * nothing, and are far beyond every figure here.
 */
export function dropSafeBounds<Document extends object>(document: Document): Document {
  return JSON.parse(JSON.stringify(document), (key, value) => {
    const isBound = key === "minimum" || key === "maximum";
    return isBound && Math.abs(value) === Number.MAX_SAFE_INTEGER ? undefined : value;
  });
}
