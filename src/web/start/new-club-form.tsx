import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { nightsAddress } from "../addresses.ts";
import { askMeAgain } from "../api/me.ts";
import { makeClub } from "../api/start.ts";
import { Refused } from "../shell/refused.tsx";
import { SelectField } from "../shell/select-field.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { clubCode } from "./club-code.ts";

const FIELDS = ["code", "name", "timeZone", "scale"].map((field) => `/body/${field}`);

/** Denominators of the scales in common use: common practice. */
const SCALES = [22.5, 32, 43.5, 45, 48, 64, 76.2, 87, 120, 148, 160, 220];
const USUAL_SCALE = "87";

/** Makes a club; whoever does is its secretary. */
export function NewClubForm() {
  const { route } = useLocation();
  const [name, setName] = useState("");
  const [code, setCode] = useState("");
  const [isCodeOwn, setCodeOwn] = useState(false);
  const [timeZone, setTimeZone] = useState(Intl.DateTimeFormat().resolvedOptions().timeZone);
  const [scale, setScale] = useState(USUAL_SCALE);
  const { isBusy, problem, faultAt, submit } = useSubmit(async () => {
    const club = await makeClub({ code, name, timeZone, scale: Number(scale) });
    await askMeAgain();
    route(nightsAddress(club.code), true);
  });
  return (
    <form class="form" onSubmit={submit}>
      <TextField
        label="Name of the club"
        value={name}
        onValue={(text) => {
          setName(text);
          if (!isCodeOwn) setCode(clubCode(text));
        }}
        fault={faultAt("/body/name")}
      />
      <TextField
        label="Short name"
        hint="Stands in the addresses of the club's pages."
        value={code}
        onValue={(text) => {
          setCodeOwn(text !== "");
          setCode(text);
        }}
        fault={faultAt("/body/code")}
      />
      <SelectField
        label="Time zone of the club room"
        value={timeZone}
        onValue={setTimeZone}
        options={zones(timeZone)}
        fault={faultAt("/body/timeZone")}
      />
      <SelectField
        label="Scale"
        value={scale}
        onValue={setScale}
        options={SCALES.map((one): [string, string] => [`${one}`, `1:${one}`])}
        fault={faultAt("/body/scale")}
      />
      <Refused problem={problem} besides={FIELDS} />
      <div class="form-end">
        <button type="submit" class="primary" disabled={isBusy}>
          {isBusy ? "Making it …" : "Make the club"}
        </button>
      </div>
    </form>
  );
}

/** Every zone that the browser knows, and the one in use even where it does not list it. */
const zones = (own: string) =>
  Object.fromEntries(
    [...new Set([...Intl.supportedValuesOf("timeZone"), own])].sort().map((zone) => [zone, zone]),
  );
