import { fieldText } from "../nights/field.tsx";
import { useCrew } from "./crew.ts";

interface HandsetsProps {
  /** What it is for, for who does not see where it stands. */
  readonly label: string;
  readonly codes: readonly string[];
  readonly handset: string;
  readonly choose: (handset: string) => void;
}

/** The handsets that fit, one chosen. */
export function Handsets({ label, codes, handset, choose }: HandsetsProps) {
  const { board } = useCrew();
  const kindOf = (code: string) => board.handsets.find((h) => h.code === code)?.kind;
  return (
    <span class="crew-handset">
      <span aria-hidden="true">Handset</span>
      <select aria-label={label} value={handset} onChange={(event) => choose(fieldText(event))}>
        {codes.map((code) => (
          <option key={code} value={code}>
            {code}
            {kindOf(code) && `, ${kindOf(code)}`}
          </option>
        ))}
      </select>
    </span>
  );
}
