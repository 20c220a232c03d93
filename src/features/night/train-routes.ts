import { z } from "zod";
import { candidates, newMending, newReplacement, nightTrain, trainReport } from "../../../shared/night.ts";
import { code } from "../../../shared/units.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { retryHeaders } from "../../http/idempotency.ts";
import { entityTag, readPrecondition } from "../../http/preconditions.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { changeHeaders } from "../../records/collection-schemas.ts";
import type { NightDeps } from "./deps.ts";
import { mendLocomotive, readCandidates, replaceLocomotive } from "./replacement-service.ts";
import { asked, CHANGE_REFUSALS, NIGHT_URL, nightParams, tags } from "./routes.ts";
import { reportTrain } from "./train-service.ts";

const URL = `${NIGHT_URL}/trains/:slot/:train`;
const params = z.strictObject({ ...nightParams.shape, slot: code, train: code });
const config = { access: "run-night" } as const;

/** What is done to the trains of a night. */
export function registerTrainRoutes(app: HttpApp, deps: NightDeps): void {
  registerReport(app, deps);
  registerCandidates(app, deps);
  registerReplacement(app, deps);
  registerMending(app, deps);
}

function registerReport(app: HttpApp, deps: NightDeps): void {
  const schema = {
    tags,
    operationId: "reportNightTrain",
    summary: "Say what became of a train",
    description:
      "Departed (`running`), arrived, left out, late by so many layout minutes, or waiting again. Its instants are those of the report that first said so.",
    params,
    headers: z.looseObject({ ...changeHeaders.shape, ...retryHeaders.shape }),
    body: trainReport.meta({ examples: [{ state: "running" }] }),
    response: {
      200: nightTrain,
      ...refusalResponses("version-mismatch", "precondition-required", ...CHANGE_REFUSALS),
    },
  };
  app.put(URL, { schema, config }, async (request, reply) => {
    const train = await reportTrain(deps, asked(request), request.body, readPrecondition(request));
    return reply.header("etag", entityTag(train.version)).send(train);
  });
}

function registerCandidates(app: HttpApp, deps: NightDeps): void {
  const schema = {
    tags,
    operationId: "listNightCandidates",
    summary: "Who could take the place of a locomotive",
    description:
      "Every other locomotive of the club, those that suit first. One suits that is whole, free until the working ends, runs on its track (analog or digital, with an address of its own), and with which the rest of the working is neither too fast nor the train too long nor a supply overloaded where it was not before.",
    params,
    querystring: z.strictObject({
      locomotive: code.meta({ description: "The one to be replaced, as the train has it tonight." }),
    }),
    response: { 200: candidates, ...refusalResponses("validation-failed", "not-found", "unprocessable") },
  };
  app.get(`${URL}/replacements`, { schema }, async ({ params: address, query }) =>
    readCandidates(deps, address, query.locomotive),
  );
}

function registerReplacement(app: HttpApp, deps: NightDeps): void {
  const schema = {
    tags,
    operationId: "replaceNightLocomotive",
    summary: "Say that a locomotive failed, and what takes its place",
    description:
      "The night uses the other one from then on; the timetable stays as it is. The failure is noted on the locomotive's record.",
    params,
    headers: retryHeaders,
    body: newReplacement.meta({
      examples: [{ locomotive: "E7", replacement: "T3", note: "Motor runs hot" }],
    }),
    response: {
      201: nightTrain,
      ...refusalResponses("locomotive-unsuitable", "unprocessable", ...CHANGE_REFUSALS),
    },
  };
  app.post(`${URL}/replacements`, { schema, config }, async (request, reply) => {
    const train = await replaceLocomotive(deps, asked(request), request.body);
    return reply.code(201).header("etag", entityTag(train.version)).send(train);
  });
}

function registerMending(app: HttpApp, deps: NightDeps): void {
  const schema = {
    tags,
    operationId: "mendNightLocomotive",
    summary: "Say that a locomotive that failed in a train runs after all",
    description:
      "It is in the train again, and what took its place is free. What was noted on its record stays.",
    params,
    headers: retryHeaders,
    body: newMending.meta({ examples: [{ locomotive: "E7" }] }),
    response: { 200: nightTrain, ...refusalResponses("unprocessable", ...CHANGE_REFUSALS) },
  };
  app.post(`${URL}/mendings`, { schema, config }, async (request) =>
    mendLocomotive(deps, asked(request), request.body.locomotive),
  );
}
