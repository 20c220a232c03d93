import type { GivenRole } from "../api/members.ts";
import { CheckField } from "../shell/check-field.tsx";
import { capital, GIVEN_ROLES, ROLE_TASKS } from "../shell/role-words.ts";

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
