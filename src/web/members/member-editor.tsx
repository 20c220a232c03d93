import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { Member } from "../../../shared/members.ts";
import { memberAddress } from "../addresses.ts";
import type { Answer } from "../api/ask.ts";
import { askMeAgain } from "../api/me.ts";
import { type MemberRecord, saveMember } from "../api/members.ts";
import { Problem } from "../api/problem.ts";
import { knownTags } from "./find-members.ts";
import { MemberForm } from "./member-form.tsx";

interface MemberEditorProps {
  readonly club: string;
  readonly record: Answer<MemberRecord>;
  readonly members: readonly MemberRecord[];
  readonly onSaved: (record: Answer<MemberRecord>) => void;
  /** Reads it again, as someone else has changed it. */
  readonly again: () => void;
}

const bodyOf = ({ code, name, passedFor, junior, roles, note }: MemberRecord): Member => ({
  code,
  name,
  passedFor,
  junior,
  roles: roles ?? [],
  note,
});

/** Changes what the list says, unless someone else did so since it was read. */
export function MemberEditor({ club, record, members, onSaved, again }: MemberEditorProps) {
  const { route } = useLocation();
  const [isSaved, setSaved] = useState(false);
  const [isOvertaken, setOvertaken] = useState(false);
  const code = record.value.code;
  const save = async (body: Member) => {
    setSaved(false);
    setOvertaken(false);
    try {
      const saved = await saveMember(club, code, body, record.etag);
      onSaved(saved);
      setSaved(true);
      if (saved.value.code !== code) route(memberAddress(club, saved.value.code), true);
    } catch (error) {
      setOvertaken(error instanceof Problem && error.code === "version-mismatch");
      throw error;
    }
    // one's own roles may be among what was changed
    await askMeAgain();
  };
  return (
    <>
      <MemberForm
        member={bodyOf(record.value)}
        tags={knownTags(members)}
        taken={new Set(members.map((one) => one.code))}
        word="Save"
        save={save}
      />
      <p role="status">{isSaved && "Saved."}</p>
      {isOvertaken && (
        <p>
          <button type="button" class="tall" onClick={again}>
            Show what it is now
          </button>
        </p>
      )}
    </>
  );
}
