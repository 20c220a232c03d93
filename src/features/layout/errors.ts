/** What this feature says of a record that cannot be, each with what to do. */
export const CHANGEOVER_NEEDS_BOTH =
  "A section that is changed over must be wired for both: set wiring to both, or changeover to false.";

export const joinsItself = (section: string) =>
  `A link joins two sections, and both ends are ${section}: name another one.`;

export const outputTwice = (output: string) =>
  `Output ${output} stands here a second time: give each its own code.`;

export const outputOfAnother = (output: string, controller: string) =>
  `Output ${output} belongs to controller ${controller} already: choose another code.`;

export const outputNamedTwice = (output: string) => `Output ${output} is named a second time: name it once.`;

export const sectionHasSelector = (section: string, selector: string) =>
  `Section ${section} has selector ${selector} already: change that one, or name another section.`;

export const HALF_A_POSITION =
  "A place has both coordinates, or neither: give this one too, or leave both out.";

export const walksNowhere = (place: string) => `It starts and ends at ${place}: name two places.`;

export const walkTwice = (way: string, other: string) =>
  `Walk ${other} goes from ${way} already: change that one.`;
