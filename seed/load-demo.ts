import type { Club } from "../shared/clubs.ts";
import type { ClubDocument } from "../shared/documents.ts";
import { demoClub } from "./club.ts";
import { demoDocument } from "./document.ts";

/** Makes the club and imports its records in one transaction: all of it or nothing. */
export type ImportClub = (club: Club, document: ClubDocument) => Promise<unknown>;

/**
 * Loads the demo club through the same import that people use. The caller sees to it that this happens once. What
 * the import refuses is thrown on.
 */
export async function loadDemo(importClub: ImportClub): Promise<void> {
  await importClub(demoClub, demoDocument);
}
