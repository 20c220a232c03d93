import { FORGOT_PASSWORD, signInAddress } from "../addresses.ts";

/** A link that was used, has run out or was taken back; which of them is not told to whoever has it. */
export function SpentLink() {
  return (
    <section class="problem">
      <p>It was used already, has run out or was taken back, or a part of it was lost on the way.</p>
      <ul>
        <li>
          You have used it before: <a href={signInAddress("/")}>sign in</a>.
        </li>
        <li>
          It was for a new password: <a href={FORGOT_PASSWORD}>ask for another link</a>.
        </li>
        <li>It was an invitation: ask the club's secretary for a new one.</li>
      </ul>
    </section>
  );
}
