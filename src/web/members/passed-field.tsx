import { useId, useState } from "preact/hooks";
import { CheckField } from "../shell/check-field.tsx";

interface PassedFieldProps {
  readonly passedFor: readonly string[];
  /** What others in the club are passed for. */
  readonly tags: readonly string[];
  readonly onPassed: (passedFor: string[]) => void;
}

/** What a member is passed for: the club's words to tick, and new ones. */
export function PassedField({ passedFor, tags, onPassed }: PassedFieldProps) {
  const id = useId();
  const [word, setWord] = useState("");
  const all = [...tags, ...passedFor.filter((tag) => !tags.includes(tag))];
  const add = () => {
    const tag = word.trim();
    if (tag !== "" && !passedFor.includes(tag)) onPassed([...passedFor, tag]);
    setWord("");
  };
  return (
    <fieldset class="fieldset">
      <legend>Passed for</legend>
      <p class="field-hint">Decides which trains and duties they may claim. The words are the club's own.</p>
      <div class="ticks">
        {all.map((tag) => (
          <CheckField
            key={tag}
            label={tag}
            isChecked={passedFor.includes(tag)}
            onChecked={(isPassed) =>
              onPassed(isPassed ? [...passedFor, tag] : passedFor.filter((other) => other !== tag))
            }
          />
        ))}
      </div>
      <div class="copy-line">
        <label class="visually-hidden" for={id}>
          Another word
        </label>
        <input
          id={id}
          class="plain"
          value={word}
          maxLength={40}
          placeholder="Another word, as: signal box"
          onInput={(event) => setWord(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== "Enter") return;
            event.preventDefault();
            add();
          }}
        />
        <button type="button" disabled={word.trim() === ""} onClick={add}>
          Add
        </button>
      </div>
    </fieldset>
  );
}
