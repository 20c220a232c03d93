import { Section } from "../shell/section.tsx";
import { NewClubForm } from "./new-club-form.tsx";

/** The first page of whoever belongs to no club, as on a new installation: how to come to one. */
export function NoClub() {
  return (
    <>
      <p class="lead">Three steps lead to the first checked night: the club, its railway, and a night.</p>
      <Section heading="Make a club" about="You become its secretary, and can invite the others.">
        <NewClubForm />
      </Section>
      <Section heading="Or join one">
        <p>Is your club here already? Its secretary can invite you: open the link while you are signed in.</p>
      </Section>
    </>
  );
}
