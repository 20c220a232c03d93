import { ROLES, type Role } from "../../../shared/vocabulary.ts";
import { CheckField } from "../shell/check-field.tsx";
import { capital, ROLE_TASKS } from "../shell/role-words.ts";

type GivenRole = Exclude<Role, "member">;

/** A member is everyone in the list: that is given to nobody. */
const GIVEN_ROLES = ROLES.filter((role): role is GivenRole => role !== "member");

interface RolesFieldProps {
  readonly roles: readonly GivenRole[];
  readonly onRoles: (roles: GivenRole[]) => void;
}

/** What a member may do beside what everyone may. */
export function RolesField({ roles, onRoles }: RolesFieldProps) {
  return (
    <fieldset class="fieldset">
      <legend>Roles</legend>
      <p class="field-hint">Everyone sees all of the club and claims trains. Besides:</p>
      {GIVEN_ROLES.map((role) => (
        <CheckField
          key={role}
          label={capital(role)}
          hint={ROLE_TASKS[role]}
          isChecked={roles.includes(role)}
          onChecked={(isGiven) =>
            onRoles(GIVEN_ROLES.filter((one) => (one === role ? isGiven : roles.includes(one))))
          }
        />
      ))}
    </fieldset>
  );
}
