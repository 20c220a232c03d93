import type { Night, NightTrain } from "../../../shared/night.ts";

/** Who needs a handset next, and for which train. */
export interface Proposal {
  readonly member: string;
  readonly name: string;
  readonly train: NightTrain;
}

/**
 * Into whose hands a handset goes next: the driver of the first train that is still to depart with it. Null where
 * none has claimed it.
 */
export function proposeHolder(night: Night, handset: string): Proposal | null {
  for (const { slot, train: code } of night.next) {
    const train = night.trains.find((t) => t.slot === slot && t.train === code);
    if (train?.handset === handset && train.driver)
      return { member: train.driver.member, name: train.driver.name, train };
  }
  return null;
}
