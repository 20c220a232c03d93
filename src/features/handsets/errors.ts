export const placeNamedTwice = (place: string) => `Place ${place} is named a second time: name it once.`;
