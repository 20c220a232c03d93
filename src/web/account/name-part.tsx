import { useState } from "preact/hooks";
import { renameMe } from "../api/account.ts";
import { askMeAgain } from "../api/me.ts";
import { useMe } from "../api/use-me.ts";
import { Refused } from "../shell/refused.tsx";
import { roleList } from "../shell/role-words.ts";
import { Section } from "../shell/section.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";

/** Who one is, and what in which club. */
export function NamePart() {
  const { person, clubs } = useMe();
  const [name, setName] = useState(person.name);
  const [isSaved, setSaved] = useState(false);
  const { isBusy, problem, faultAt, submit } = useSubmit(async () => {
    setSaved(false);
    await renameMe(name);
    await askMeAgain();
    setSaved(true);
  });
  return (
    <Section heading="You" about={`You sign in as ${person.email}.`}>
      <form class="form" onSubmit={submit}>
        <TextField
          label="Name"
          autocomplete="name"
          value={name}
          onValue={setName}
          fault={faultAt("/body/name")}
        />
        <Refused problem={problem} besides={["/body/name"]} />
        <div class="form-end">
          <button type="submit" disabled={isBusy || name === person.name}>
            {isBusy ? "Saving …" : "Save the name"}
          </button>
          <span role="status">{isSaved && name === person.name && "Saved."}</span>
        </div>
      </form>
      {clubs.length > 0 && (
        <ul class="my-clubs">
          {clubs.map((club) => (
            <li key={club.code}>
              <strong>{club.name}</strong> {roleList(club.roles)}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
