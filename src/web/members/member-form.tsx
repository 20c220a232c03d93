import { useState } from "preact/hooks";
import type { Member } from "../../../shared/members.ts";
import { CheckField } from "../shell/check-field.tsx";
import { Refused } from "../shell/refused.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { PassedField } from "./passed-field.tsx";
import { RolesField } from "./roles-field.tsx";
import { suggestCode } from "./suggest-code.ts";

export const NEW_MEMBER: Member = {
  code: "",
  name: "",
  passedFor: [],
  junior: false,
  roles: [],
  note: "",
};

const FIELDS = ["name", "code", "note"].map((field) => `/body/${field}`);

interface MemberFormProps {
  readonly member: Member;
  /** What others in the club are passed for. */
  readonly tags: readonly string[];
  /** Codes of all members; a code is suggested until one is written. */
  readonly taken: ReadonlySet<string>;
  readonly word: string;
  readonly save: (body: Member) => Promise<void>;
}

/** What the club's list says of a member. */
export function MemberForm({ member, tags, taken, word, save }: MemberFormProps) {
  const [draft, setDraft] = useState(member);
  const [isCodeOwn, setCodeOwn] = useState(member.code !== "");
  const { isBusy, problem, faultAt, submit } = useSubmit(() => save(draft));
  const put = (part: Partial<Member>) => setDraft((before) => ({ ...before, ...part }));
  return (
    <form class="form member-form" onSubmit={submit}>
      <TextField
        label="Name"
        value={draft.name}
        onValue={(name) => put(isCodeOwn ? { name } : { name, code: suggestCode(name, taken) })}
        fault={faultAt("/body/name")}
      />
      <TextField
        label="Code"
        hint="Short, for lists and sheets: often the initials."
        value={draft.code}
        onValue={(code) => {
          setCodeOwn(code !== "");
          put({ code });
        }}
        fault={faultAt("/body/code")}
      />
      <PassedField passedFor={draft.passedFor} tags={tags} onPassed={(passedFor) => put({ passedFor })} />
      <CheckField
        label="Junior"
        hint="Drives only while a supervising adult drives or helps in the same slot."
        isChecked={draft.junior}
        onChecked={(junior) => put({ junior })}
      />
      <RolesField roles={draft.roles} onRoles={(roles) => put({ roles })} />
      <TextField
        label="Note"
        isLong
        isOptional
        value={draft.note}
        onValue={(note) => put({ note })}
        fault={faultAt("/body/note")}
      />
      <Refused problem={problem} besides={FIELDS} />
      <div class="form-end">
        <button type="submit" class="primary" disabled={isBusy}>
          {isBusy ? "Saving …" : word}
        </button>
      </div>
    </form>
  );
}
