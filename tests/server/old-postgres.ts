import { createServer } from "node:net";

// PostgreSQL manual, chapter "Frontend/Backend Protocol", section "Message Formats"
const message = (kind: string, ...parts: readonly Buffer[]) => {
  const body = Buffer.concat(parts);
  return Buffer.concat([Buffer.from(kind), int32(body.length + 4), body]);
};

const int16 = (value: number) => {
  const bytes = Buffer.alloc(2);
  bytes.writeInt16BE(value);
  return bytes;
};

const int32 = (value: number) => {
  const bytes = Buffer.alloc(4);
  bytes.writeInt32BE(value);
  return bytes;
};

const AUTHENTICATION_OK = message("R", int32(0));
const READY = message("Z", Buffer.from("I"));
const INT4_OID = 23;

function oneNumber(name: string, value: number): Buffer {
  const text = Buffer.from(String(value));
  const column = [
    Buffer.from(`${name}\0`),
    int32(0),
    int16(0),
    int32(INT4_OID),
    int16(4),
    int32(-1),
    int16(0),
  ];
  return Buffer.concat([
    message("T", int16(1), ...column),
    message("D", int16(1), int32(text.length), text),
    message("C", Buffer.from("SELECT 1\0")),
  ]);
}

/** Speaks just enough of the protocol to say which release it is, whatever it is asked. */
export function oldPostgres(release: number) {
  return createServer((socket) => {
    socket.on("error", () => {}); // the client leaves without a word
    socket.once("data", () => {
      socket.write(Buffer.concat([AUTHENTICATION_OK, READY]));
      socket.on("data", () => socket.write(Buffer.concat([oneNumber("version", release), READY])));
    });
  });
}
