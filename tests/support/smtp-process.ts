import { SMTPServer } from "smtp-server";

// A mail server as a process of its own: tells its parent what it took, and is moody for some addresses.
const seen = new Set<string>();

const server = new SMTPServer({
  authOptional: true,
  disabledCommands: ["STARTTLS"],
  onRcptTo({ address }, _session, done) {
    const again = seen.has(address);
    seen.add(address);
    if (address.startsWith("nobody@")) return done(reply(550, "No such mailbox"));
    if (address.startsWith("busy@") && !again) return done(reply(451, "Try again later"));
    done();
  },
  onData(stream, session, done) {
    const chunks: Buffer[] = [];
    stream.on("data", (chunk: Buffer) => chunks.push(chunk));
    stream.on("end", () => {
      const raw = Buffer.concat(chunks).toString("utf8");
      const to = session.envelope.rcptTo.map(({ address }) => address);
      process.send?.({ took: { to, raw } });
      // so that whoever is killed is likely to be in the middle of it
      setTimeout(done, Number(process.argv[2] ?? 0));
    });
  },
});

server.listen(0, "127.0.0.1", () => {
  const address = server.server.address();
  process.send?.({ port: typeof address === "object" && address ? address.port : 0 });
});
process.on("disconnect", () => process.exit(0));

function reply(code: number, text: string): Error {
  return Object.assign(new Error(text), { responseCode: code });
}
