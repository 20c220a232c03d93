/** What a train or duty asks for that a member is not passed for, in the order in which it asks. */
export const findMissingTags = (requires: readonly string[], passedFor: readonly string[]): string[] =>
  requires.filter((tag) => !passedFor.includes(tag));
