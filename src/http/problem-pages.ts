import { z } from "zod";
import { REFUSAL_CODES, REFUSALS, type RefusalCode } from "../../shared/errors.ts";
import { Refusal } from "../lib/refusal.ts";
import type { HttpApp } from "./bare-app.ts";
import { refusalResponses } from "./problem-details.ts";

const kind = z
  .object({
    code: z.string(),
    status: z.int().meta({ description: "HTTP status." }),
    title: z.string(),
    remedy: z.string(),
  })
  .meta({ id: "ProblemKind" });

const describe = (code: RefusalCode) => ({ code, ...REFUSALS[code] });

/** The pages that a problem's `type` leads to: for people in a browser as HTML, for programs as JSON. */
export function installProblemPages(app: HttpApp): void {
  app.get(
    "/problems",
    {
      schema: {
        tags: ["service"],
        operationId: "listProblemKinds",
        summary: "Every kind of problem the service reports",
        response: { 200: z.object({ items: z.array(kind) }) },
      },
    },
    async () => ({ items: REFUSAL_CODES.map(describe) }),
  );
  app.get(
    "/problems/:code",
    {
      schema: {
        tags: ["service"],
        operationId: "readProblemKind",
        summary: "What a kind of problem means, and what to do about it",
        params: z.strictObject({ code: z.string().max(60).meta({ description: "Code of the problem." }) }),
        response: { 200: kind, ...refusalResponses("not-found") },
      },
    },
    async (request, reply) => {
      const code = REFUSAL_CODES.find((known) => known === request.params.code);
      if (code === undefined) throw new Refusal("not-found", "No kind of problem has this code.");
      if (!request.headers.accept?.includes("text/html")) return describe(code);
      return reply
        .type("text/html; charset=utf-8")
        .serializer(String)
        .send(toHtml(code) as never);
    },
  );
}

// the texts are our own and hold nothing that HTML would read as markup
function toHtml(code: RefusalCode): string {
  const { status, title, remedy } = REFUSALS[code];
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta name="color-scheme" content="light dark">
<title>${title}</title>
<body style="font: 1rem/1.5 system-ui; max-width: 40rem; margin: 3rem auto; padding: 0 1rem">
<h1>${title}</h1>
<p>${remedy}</p>
<p><code>${code}</code>, HTTP status ${status}. <a href="/api/docs">API reference</a></p>
</body>
</html>
`;
}
