import { signInAddress } from "../addresses.ts";
import { askMeAgain, forgetMe, meState } from "../api/me.ts";

/**
 * Where to go once a link was used: on to `address` where that signed one in, else to sign in on the way there.
 * @returns an address of ours
 */
export async function afterLink(address: string): Promise<string> {
  forgetMe();
  await askMeAgain();
  return meState().status === "known" ? address : signInAddress(address);
}
