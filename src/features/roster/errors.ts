export const locomotiveHasDecoder = (locomotive: string, decoder: string) =>
  `Locomotive ${locomotive} has decoder ${decoder} already: take that one out first, or name another locomotive.`;
