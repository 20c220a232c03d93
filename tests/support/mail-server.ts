import { fork } from "node:child_process";
import path from "node:path";

export interface Letter {
  readonly to: readonly string[];
  readonly raw: string;
  readonly messageId: string;
}

/** A real SMTP server in a process of its own. Stop it in the end. */
export async function startMailServer({ delayMs = 0 } = {}) {
  const child = fork(path.join(import.meta.dirname, "smtp-process.ts"), [String(delayMs)], {
    execArgv: ["--import", "tsx"],
  });
  const letters: Letter[] = [];
  const port = await new Promise<number>((resolve, reject) => {
    child.once("exit", (code) => reject(new Error(`the mail server ended with ${code}`)));
    child.on("message", (message: { port?: number; took?: { to: string[]; raw: string } }) => {
      if (message.port !== undefined) resolve(message.port);
      if (message.took) letters.push({ ...message.took, messageId: messageIdOf(message.took.raw) });
    });
  });
  return {
    url: `smtp://127.0.0.1:${port}`,
    letters,
    to: (address: string) => letters.filter((letter) => letter.to.includes(address)),
    stop: () =>
      new Promise<void>((resolve) => {
        child.once("exit", () => resolve());
        child.kill("SIGKILL");
      }),
  };
}

const messageIdOf = (raw: string) => /^message-id: <([^>]+)>/im.exec(raw)?.[1] ?? "";
