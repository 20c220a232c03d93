import { execFileSync } from "node:child_process";

/** The account PostgreSQL runs under; empty for an ordinary user, who runs it as themselves. */
export interface ServerAccount {
  readonly uid?: number;
  readonly gid?: number;
}

/** PostgreSQL refuses to run as root, so root hands it to the system account `postgres`, made where missing. */
export function serverAccount(): ServerAccount {
  if (process.getuid?.() !== 0) return {};
  try {
    return readAccount();
  } catch {
    execFileSync("useradd", ["--system", "--user-group", "--no-create-home", "postgres"]);
    return readAccount();
  }
}

function readAccount(): ServerAccount {
  const ask = (flag: string) =>
    Number(execFileSync("id", [flag, "postgres"], { stdio: ["ignore", "pipe", "ignore"] }));
  return { uid: ask("-u"), gid: ask("-g") };
}
