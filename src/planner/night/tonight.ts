/** A locomotive of the timetable, and the one that is in its place tonight. */
export interface Place {
  readonly planned: string;
  readonly tonight: string;
}

/** A locomotive that failed in a train, and what took its place there; null: nothing yet. */
export interface Replacement {
  readonly failed: string;
  readonly by: string | null;
}

/**
 * What a train has tonight, in the order in which the timetable has its locomotives: each that failed in it gives way to
 * what took its place, which may have failed in its turn. Cost: locomotives × replacements of the train.
 */
export function placesTonight(planned: readonly string[], replacements: readonly Replacement[]): Place[] {
  const instead = new Map(replacements.map(({ failed, by }) => [failed, by]));
  return planned.map((locomotive) => {
    let tonight = locomotive;
    // each replacement is followed once, so that even a circle of them would end
    for (let step = 0; step < replacements.length; step++) tonight = instead.get(tonight) ?? tonight;
    return { planned: locomotive, tonight };
  });
}
