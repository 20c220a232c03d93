import { expect, it } from "vitest";
import { tidySchemaNames } from "../../src/http/schema-names.ts";

const to = (name: string) => ({ $ref: `#/components/schemas/${name}` });
const tidy = (paths: unknown, schemas: Readonly<Record<string, unknown>>) =>
  tidySchemaNames({ openapi: "3.1.1", paths, components: { schemas } });

it("a schema that nothing refers to is left out, however it refers to others", () => {
  expect(tidy([to("A")], { A: { of: to("B") }, B: {}, C: { of: to("B") } }).components.schemas).toEqual({
    A: { of: to("B") },
    B: {},
  });
});

it("a schema only ever taken has its plain name", () => {
  const { paths, components } = tidy([to("AInput")], { A: { sent: true }, AInput: { taken: true } });
  expect(paths).toEqual([to("A")]);
  expect(components.schemas).toEqual({ A: { taken: true } });
});

it("one that is sent and taken alike is there once, its parts included", () => {
  const schemas = { A: { of: to("B") }, AInput: { of: to("BInput") }, B: { n: 1 }, BInput: { n: 1 } };
  const { paths, components } = tidy([to("A"), to("AInput")], schemas);
  expect(paths).toEqual([to("A"), to("A")]);
  expect(components.schemas).toEqual({ A: { of: to("B") }, B: { n: 1 } });
});

it("one whose parts differ stays two", () => {
  const schemas = { A: { of: to("B") }, AInput: { of: to("BInput") }, B: { n: 1 }, BInput: { n: 2 } };
  const document = tidy([to("A"), to("AInput")], schemas);
  expect(document.paths).toEqual([to("A"), to("AInput")]);
  expect(document.components.schemas).toEqual(schemas);
});

it("schemas that refer to themselves are no trouble", () => {
  const schemas = { A: { of: to("A") }, AInput: { of: to("AInput") } };
  expect(tidy([to("A"), to("AInput")], schemas).components.schemas).toEqual({ A: { of: to("A") } });
});
