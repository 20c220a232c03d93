import { useLocation } from "preact-iso";
import { isBeforeSignIn, signInAddress } from "../addresses.ts";
import { signInEnded } from "../api/ask.ts";

/**
 * Says above the page that its sign-in has ended, as after a long pause or from another device. The page stays, with
 * all that was typed into it: signed in again in a window beside it, it works on.
 */
export function SignInEnded() {
  const { path } = useLocation();
  if (!signInEnded.value || isBeforeSignIn(path)) return null;
  const { pathname, search, hash } = location;
  return (
    <div class="band" role="alert">
      <p>Your sign-in has ended. What you change now is not saved.</p>
      <a href={signInAddress(`${pathname}${search}${hash}`)} target="_blank" rel="noopener">
        Sign in again, in a new tab
      </a>
    </div>
  );
}
