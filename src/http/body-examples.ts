import type { z } from "zod";

interface Described {
  readonly paths?: Readonly<Record<string, Readonly<Record<string, unknown>> | undefined>>;
}

interface Operation {
  readonly requestBody?: { readonly content?: Readonly<Record<string, { example?: unknown }>> };
}

/**
 * Examples that routes say of their bodies, `schema.meta({ examples: [one] })`. The reference names such a schema by its
 * name alone and loses them on the way: collect them while it is made, and put them in when it is done.
 */
export function createBodyExamples() {
  const examples = new Map<string, unknown>();
  return {
    note(method: string | readonly string[], url: string, body: z.ZodType | undefined): void {
      const [example] = (body?.meta?.()?.examples as readonly unknown[] | undefined) ?? [];
      if (example !== undefined) examples.set(`${String(method).toLowerCase()} ${toTemplate(url)}`, example);
    },
    putInto<Document extends object>(document: Document): Document {
      for (const [path, operations = {}] of Object.entries((document as Described).paths ?? {}))
        for (const [method, operation] of Object.entries(operations)) {
          const example = examples.get(`${method} ${path}`);
          const media = (operation as Operation).requestBody?.content?.["application/json"];
          if (media && example !== undefined) media.example = example;
        }
      return document;
    },
  };
}

const toTemplate = (url: string) => url.replace(/:(\w+)/g, "{$1}");
