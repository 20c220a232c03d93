/** Where a train starts or ends, or a duty stands. */
interface End {
  readonly placeName: string | null;
  readonly roadName: string | null;
}

/** `Hesperwick, platform 1`; the place once, where the road's name begins with it. */
export function endText({ placeName, roadName }: End): string {
  if (placeName === null) return roadName ?? "";
  if (roadName === null) return placeName;
  return roadName.startsWith(placeName) ? roadName : `${placeName}, ${roadName}`;
}
